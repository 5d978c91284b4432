"""What she typed: numbers with a decimal point or comma, fractions as on a tape, units."""

import re
from fractions import Fraction

from webapp.cloth.gauge import INCH

MM = {"in": INCH, "cm": 10.0, "mm": 1.0}
UNITS = {
    "in": ("in", "inch", "inches", '"', "''", "″", "”"),
    "cm": ("cm", "centimetre", "centimetres", "centimeter", "centimeters"),
    "mm": ("mm", "millimetre", "millimetres", "millimeter", "millimeters"),
}
SIGNS = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
PARTS = tuple(str(Fraction(sixteenths, 16)) for sixteenths in range(1, 16))
DASHES = re.compile("[\u2010-\u2014\u2212]")
TWICE = "The fraction is there twice: type it or choose it, not both."
OF_AN_INCH = "The fraction beside it is of an inch: write inches, or choose no fraction."
DIVIDED = (2, 4, 8, 16, 32)
THOUSANDS = re.compile(r"([1-9])[,. '’]([0-9]{3})")
LEAST_COUNTED, MOST_COUNTED = 4, 2000
SHORTEST, LONGEST = INCH / 2, 40 * INCH  # mm

WHOLE = r"([0-9]{1,6}[.,]?|[0-9]{0,6}[.,][0-9]{1,6})"
FRACTION = r"([0-9]{1,3}) ?/ ?([0-9]{1,3})"
SHAPE = re.compile(rf"(-)? ?(?:{WHOLE}(?: ?[ -] ?{FRACTION})?|{FRACTION}) ?([^0-9]*)")


class Mistyped(ValueError):
    """What was typed cannot be meant; the message is the sentence to show."""


def amount(text: str, example: str) -> tuple[float, str | None, int]:
    """Read a number: gives it, its unit (in, cm, mm or None), and what its fraction is divided in or 1."""
    found = SHAPE.fullmatch(_plain(text))
    if found is None:
        raise Mistyped(f"Write a number, like {example}.")
    minus, whole, top, bottom, alone_top, alone_bottom, name = found.groups()
    unit = next((unit for unit, names in UNITS.items() if name in names), None)
    number = float((whole or "0").replace(",", ".").rstrip("."))
    if (name and unit is None) or (top and number != int(number)):
        raise Mistyped(f"Write a number, like {example}.")
    share, divided = _fraction(top or alone_top, bottom or alone_bottom, beside=top is not None)
    return (number + share) * (-1 if minus else 1), unit, divided


def _plain(text: str) -> str:
    for sign, fraction in SIGNS.items():
        text = text.replace(sign, f" {fraction}")
    return " ".join(DASHES.sub("-", text.replace("⁄", "/")).lower().split())


def _fraction(top: str | None, bottom: str | None, beside: bool) -> tuple[float, int]:
    """Read a fraction, ``beside`` a whole number or alone: alone it may be more than one, like 9/4."""
    if top is None or bottom is None:
        return 0.0, 1
    if int(top) == 0 or int(bottom) == 0 or (beside and int(top) >= int(bottom)):
        raise Mistyped("Write a fraction like 1 3/4.")
    if int(bottom) not in DIVIDED:
        raise Mistyped("A tape has halves, quarters, eighths and sixteenths: write it like 1 3/4.")
    return int(top) / int(bottom), int(bottom)


def read_back(text: str) -> str:
    """Say how a fraction of more than one is read, since the whole number may have been left out of it."""
    found = SHAPE.fullmatch(_plain(text))
    top, bottom = (int(part or 0) for part in found.group(5, 6)) if found else (0, 0)
    if bottom not in DIVIDED or top <= bottom:
        return ""
    whole, rest = divmod(Fraction(top, bottom), 1)
    return f"{top}/{bottom} is read as {whole}{f' {rest}' if rest else ''}."


def together(text: str) -> str:
    """Write a count without the sign that parts its thousands: "1,000", "1.000", "1 000"."""
    return THOUSANDS.sub(r"\1\2", text) if THOUSANDS.fullmatch(text := _plain(text)) else text


def counted(text: str, kind: str) -> float:
    """Read how many squares or threads were counted."""
    if not text.strip():
        raise Mistyped(f"Write how many {kind} you counted.")
    number, unit, _divided = amount(together(text), "28 or 27.5")
    if unit:
        raise Mistyped("Write the number alone here, like 28; the length goes beside it.")
    if number < LEAST_COUNTED:
        raise Mistyped(f"Count at least {LEAST_COUNTED} {kind}; more is surer.")
    if number > MOST_COUNTED:
        raise Mistyped(f"Count {MOST_COUNTED} {kind} at most.")
    return number


def length(text: str, part: str, unit: str) -> tuple[float, str]:
    """Read the length measured, with the fraction ``part`` chosen beside it; gives mm, and the unit.

    A unit that was typed goes before the one that was chosen.
    """
    if not text.strip() and not (part and unit == "in"):
        raise Mistyped("Write the length you measured.")
    number, named, divided = amount(text, "2, 1 3/4 or 4.5") if text.strip() else (0.0, None, 1)
    used = named or unit
    if part in PARTS and unit == "in" and used != "in":
        raise Mistyped(OF_AN_INCH)
    if part in PARTS and used == "in":
        if number != int(number):
            raise Mistyped(TWICE)
        top, bottom = part.split("/")
        number += int(top) / int(bottom)
    if used != "in" and divided > 2:
        raise Mistyped("Centimetres are read in tenths: write it like 4.5, or choose inches.")
    mm = number * MM[used]
    if mm < SHORTEST:
        raise Mistyped("Measure at least half an inch (1.3 cm); four inches (10 cm) is better.")
    if mm > LONGEST:
        raise Mistyped("Measure 40 in (1 m) at most.")
    return mm, "in" if used == "in" else "cm"
