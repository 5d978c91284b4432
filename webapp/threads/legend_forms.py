"""A line of a legend as its form has it, and several things packed into one field. Pure."""

from collections.abc import Mapping
from urllib.parse import parse_qsl, urlencode

from webapp.cloth.lengths import typed
from webapp.threads.legend import Line
from webapp.threads.legend_reads import ENDS, FIELDS, OF_PART

NO_COLOUR = "#808080"  # a field for colours always has one: this one means that none was picked


def form_of(line: Line, unit: str) -> dict[str, str]:
    """Write a line as its form has it, the working length in ``unit``."""
    said = dict.fromkeys(FIELDS, "")
    for end, part in zip(ENDS, line.parts, strict=False):
        values = (part.thread, part.kind, str(part.strands), part.instead, ", ".join(part.lots))
        said |= {f"{name}{end}": text for name, text in zip(OF_PART, values, strict=True)}
    said |= {name: str(many or "") for name, many in line.counts._asdict().items()}
    return said | {
        "symbol": line.symbol,
        "colour": line.colour or NO_COLOUR,
        "method": line.method or "",
        "scatter": line.scatter,
        "patches": str(line.patches or ""),
        "working": "" if line.working is None else typed(line.working, unit),
        "note": line.note,
    }


def blank(name: str = "") -> dict[str, str]:
    """Give the form of a new line."""
    return {**dict.fromkeys(FIELDS, ""), "thread": name, "colour": NO_COLOUR, "scatter": "mixed"}


def changed(form: Mapping[str, str], was: Mapping[str, str]) -> dict[str, str]:
    """Give the fields that she changed since the form was drawn; what she did not touch is not sent along."""
    sent = {name: form[name].replace("\r\n", "\n") for name in FIELDS if name in form}
    return {name: text for name, text in sent.items() if text.strip() != was.get(name, "\0").strip()}


def picked(typed: Mapping[str, str]) -> dict[str, str]:
    """Take the colour out that means that none was picked."""
    return {**typed, "colour": "" if typed.get("colour", "") == NO_COLOUR else typed.get("colour", "")}


def pack(fields: Mapping[str, str]) -> str:
    """Put several fields into one, those that are empty left out."""
    return urlencode({name: text for name, text in fields.items() if text})


def unpack(text: str, names: tuple[str, ...] = FIELDS) -> dict[str, str]:
    """Take fields out again; what is none of ``names`` is left."""
    try:
        found = parse_qsl(text, max_num_fields=100)
    except ValueError:
        return {}
    return {name: value for name, value in found if name in names}
