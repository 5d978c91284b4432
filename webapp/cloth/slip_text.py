"""A slip as text that travels in a link or a code: it carries all of its own data, and nothing is stored.

Version 1, its fields parted by "~", those that do not apply left empty:

    1~3f2a~140~168~28~~2~fhn~~i~~Quince tree
    | |    |   |   |   | |  | | |  title, to the end: it alone may hold a "~"
    | |    |   |   |   | |  | | how far the count may be off, per inch
    | |    |   |   |   | |  | unit: i inches, c centimetres
    | |    |   |   |   | |  a margin of her own, mm a side
    | |    |   |   |   | finish (f framed, u usual, s small, o ornament), how it is held (h hoop, c clamps,
    | |    |   |   |   | s scroll frame, t stretched, n in the hand), whether it frays (y, n)
    | |    |   |   |   threads a stitch is over
    | |    |   |   count per inch along the width, then along the height where that differs
    | |    width and height in stitches
    | check: CRC-16 of all that follows it (polynomial 0x1021, from 0), four hexadecimal digits
    version

Version 2 is written where the slip has threads: they stand before the title, as slip_threads.py describes.

    2~81d4~140~168~28~~2~fhn~~i~~1~●~2cRed 321~1234h12~Quince tree

In an address it stands in the query, not behind a "#", so that the page can be drawn, printed and made a
project where no script runs. The same in static/js/cloth/slip_text.js. Lengths in mm, counts per inch.
"""

import re
from binascii import crc_hqx
from dataclasses import dataclass, replace
from math import floor

from webapp.cloth import bounds, slip_threads
from webapp.cloth.slip_threads import Unsound
from webapp.cloth.words import plain
from webapp.lines import can_be_seen, is_one_line
from webapp.threads.legend import Line

FINISHES = {"framed": "f", "usual": "u", "small": "s", "ornament": "o"}
HELD = {"hoop": "h", "clamps": "c", "scroll": "s", "stretched": "t", "hand": "n"}
LONGEST = 60  # characters of a title
MOST_CODED = 1400  # bytes in an address: with a house before it, a code of 76.5 mm at most (ISO/IEC 18004)
MOST_LINKED = 7600  # bytes in an address, which servers take up to 8,190 of
FOREIGN = "That is no slip of ours. Scan the code again, or ask for the link again."
DAMAGED = "This slip was damaged on the way. Scan the code again, or ask for the whole link."
NEWER = "This slip is of a newer kind than can be read here. Open it where it was made."
ONE_LINE = "Keep the name to one line, without tabs or control characters."
UNSEEN = "Give a name that can be seen, or none."
NUMBER = r"([0-9]{1,4}(?:\.[0-9]{1,3})?)"
PLAIN = frozenset(b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_.-~ ")
SHAPE = re.compile(
    rf"([0-9]{{1,5}})~([0-9]{{1,5}})~{NUMBER}~{NUMBER}?~([12])~([fuso])([hcstn])([yn])~{NUMBER}?~([ic])~{NUMBER}?~(.*)"
)


class Unreadable(ValueError):
    """No slip can be made of that text; the message is the sentence to show."""


@dataclass(frozen=True)
class Slip:
    """What a slip carries; all else on it is worked out from this."""

    width: int
    height: int
    count: float
    across: float | None = None
    over: int = 1
    finish: str = "usual"
    held: str = "hoop"
    frays: bool = False
    own: float | None = None
    unit: str = "in"
    error: float | None = None
    title: str = ""
    threads: tuple[Line, ...] = ()


def fault(title: str) -> str | None:
    """Tell what is wrong with a title, if anything is; it may be empty."""
    if not is_one_line(title):
        return ONE_LINE
    if len(title) > LONGEST:
        return f"Shorten the name: it has {len(title)} characters, and {LONGEST} fit."
    return UNSEEN if title and not can_be_seen(title) else None


def write(slip: Slip) -> str:
    """Write a slip, its figures to a thousandth."""
    ways = FINISHES[slip.finish] + HELD[slip.held] + ("y" if slip.frays else "n")
    fields = [str(slip.width), str(slip.height), _number(slip.count), _number(slip.across), str(slip.over)]
    fields += [ways, _number(slip.own), slip.unit[0], _number(slip.error)]
    threads = [slip_threads.write(slip.threads)] if slip.threads else []
    body = "~".join([*fields, *threads, slip.title])
    return f"{2 if threads else 1}~{_check(body)}~{body}"


def without_threads(slip: Slip) -> Slip:
    """Give a slip without its threads: so it was written before there were any."""
    return replace(slip, threads=())


def coded(slip: Slip) -> str:
    """Write a slip as its code carries it: without its threads where they are too many for one."""
    text = write(slip)
    return text if weight(text) <= MOST_CODED else write(without_threads(slip))


def weight(text: str) -> int:
    """Count the bytes of a text in an address: a letter or figure is one, of any other each byte is three."""
    return sum(1 if byte in PLAIN else 3 for byte in text.encode(errors="replace"))


def read(text: str) -> Slip:
    """Read a slip, or raise Unreadable."""
    version, check, body = ([*text.split("~", 2), "", ""])[:3]
    if not re.fullmatch("[1-9][0-9]{0,2} [0-9a-f]{4}", f"{version} {check}"):
        raise Unreadable(FOREIGN)
    if version not in ("1", "2"):
        raise Unreadable(NEWER)
    found = SHAPE.fullmatch(body)
    if check != _check(body) or found is None:
        raise Unreadable(DAMAGED)
    slip = _made(found)
    return _sound(_with_threads(slip) if version == "2" else slip)


def _made(found: re.Match[str]) -> Slip:
    width, height, count, across, over, finish, held, frays, own, unit, error, title = found.groups()
    return Slip(
        *(int(width), int(height), float(count), _or_none(across), int(over)),
        finish=next(name for name, letter in FINISHES.items() if letter == finish),
        held=next(name for name, letter in HELD.items() if letter == held),
        frays=frays == "y",
        own=_or_none(own),
        unit="in" if unit == "i" else "cm",
        error=_or_none(error),
        title=title,
    )


def _with_threads(slip: Slip) -> Slip:
    """Part what stands before the title from the title."""
    try:
        threads, title = slip_threads.begin(slip.title)
    except Unsound:
        raise Unreadable(DAMAGED) from None
    return replace(slip, threads=threads, title=title)


def _sound(slip: Slip) -> Slip:
    """Let a slip through whose figures can be."""
    try:
        bounds.stitched(slip.width, slip.height)
        bounds.counted(slip.count)
        bounds.counted(slip.count if slip.across is None else slip.across)
        bounds.edged(slip.own or 0)
    except ValueError:
        raise Unreadable(DAMAGED) from None
    if fault(slip.title) or (slip.error or 0) > slip.count / 4 or slip.count < slip.over:
        raise Unreadable(DAMAGED)
    return slip


def _check(body: str) -> str:
    return f"{crc_hqx(body.encode(errors='replace'), 0):04x}"


def _number(value: float | None) -> str:
    return "" if value is None else plain(floor(value * 1000 + 0.5) / 1000)


def _or_none(text: str | None) -> float | None:
    return None if text is None else float(text)
