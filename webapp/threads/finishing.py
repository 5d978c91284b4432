"""How a project is finished safely, step by step, drawn from what it is made of.

Pure. Sources stand beside each rule; where there is none, it is common practice, and says so. What can hurt
someone has the usual caution, and the vet or doctor with it.
"""

from collections.abc import Mapping, Sequence
from typing import Any

from webapp.threads import sheet
from webapp.threads.sheet import Item, Line

PEN = ("thesprucecrafts.com", "quiltersreview.com/index.php/1063")
WASHING = "anniescatalog.com (cleaning)"
DYE = (WASHING, "anniescatalog.com (getting started)")
LABEL = "mystitchworld.com (hand-dyed floss)"
ENDS = ("vin.com", "dvsc.com/2020/02", "wausaudailyherald.com")
MAGNETS = ("suddencardiacarrestuk.org", "wisconsinpoison.org", "poison.org")
COOL = ("satin", "metallic", "filament")  # common practice, no source
NAMED = 4  # threads called by name in one sentence; of more, their kinds
OFF = {
    "hoop": "Take it out of the hoop",
    "clamps": "Take the clamps off",
    "scroll": "Take it off the scroll frame",
    "stretched": "Take it off the stretcher",
}


def items(held: str, planned: str, lines: Sequence[Line], kinds: Mapping[str, Any]) -> list[Item]:
    """List the steps, in order; ``planned``: the size it should have come out at, in words."""
    unsure = unwashed(lines, kinds)
    return [
        *_off(held),
        Item(
            "our:back",
            "Look it over",
            "A stitch left out, a loose end, a needle still in it: count your needles.",
        ),
        _marks(unsure),
        _colours(unsure),
        _wash(unsure),
        Item("our:roll", "Wet? Roll it in a towel", "Never wring it."),
        _press(lines, kinds),
        Item(
            "our:measure",
            "Measure it again",
            f"Both ways, for the framer{f'; it was planned {planned}' if planned else ''}.",
        ),
        _magnets(),
        _ends(),
    ]


def unwashed(lines: Sequence[Line], kinds: Mapping[str, Any]) -> str:
    """Name the thread that must not be washed without asking its label; nothing where all may be.

    A kind we do not know, and a legend with nothing in it, are unknown thread.
    """
    if not lines:
        return "unknown thread"
    found = [one for one in sheet.threads(lines) if not kinds.get(one.kind, {}).get("wash")]
    if len(found) <= NAMED:
        return ", ".join(f"{one.name}{_kind(one.kind, kinds)}" for one in found)
    return ", ".join(dict.fromkeys(sheet.kind_in_words(kinds, one.kind).lower() for one in found))


def _kind(kind: str, kinds: Mapping[str, Any]) -> str:
    said = sheet.kind_in_words(kinds, kind).lower()
    return f" ({said})" if said else ""


def _off(held: str) -> list[Item]:
    return [Item("our:off", OFF[held], "What grips it marks it.")] if held in OFF else []


def _marks(unsure: str) -> Item:
    """Before any heat or detergent, which set them."""
    text = "Marks out in cold water"
    more = "Water-erasable pen: rinse it out fully, before any soap, iron or other heat, which set it."
    if unsure:
        more += " First read the thread's label: it may not bear water."
    return Item("our:marks", text, more, (*PEN, LABEL) if unsure else PEN)


def _colours(unsure: str) -> Item:
    more = "Press a damp white cloth on the back, reds first. If colour comes, "
    if unsure:
        more += "keep it from water and ask who made the thread; if it is wet, rinse until clear"
        return Item("our:colours", "Test the colours", f"{more} and do not let it dry.", (*DYE, LABEL))
    more += "rinse in cold water until clear, and do not let it dry before."
    return Item("our:colours", "Test the colours", more, DYE)


def _wash(unsure: str) -> Item:
    if unsure:
        more = f"{_first_capital(unsure)}: only if its label says it may be washed, and then as it says."
        return Item("our:wash", "Do not wash it", more, (LABEL, sheet.PRACTICE))
    more = "By hand, cool water, a little mild soap; rinse until clear. Before pressing: heat sets marks."
    return Item("our:wash", "Wash it", more, (WASHING, sheet.PRACTICE))


def _press(lines: Sequence[Line], kinds: Mapping[str, Any]) -> Item:
    used = dict.fromkeys(part["kind"] for _, part in sheet.each_part(lines))
    cool = [sheet.kind_in_words(kinds, kind).lower() for kind in used if kind in COOL]
    beads = sheet.has_beads(lines)
    more = "On a towel, from the back, once no mark is left: heat sets marks."
    if cool or beads:
        named = ", ".join([*cool, *(["beads"] if beads else [])])
        more += f" A cool iron, for {named}{'; never on the beads themselves' if beads else ''}."
    elif not lines or any(kind not in kinds for kind in used):
        more += " Unknown thread: a cool iron."
    return Item("our:press", "Press it face down", more, (WASHING, sheet.PRACTICE))


def _magnets() -> Item:
    more = (
        "Needle minder off, and counted. Away from children and pets; 15 cm (6 in) from a pacemaker."
        " Two swallowed: emergency care at once, even if all seems well."
    )
    return Item("our:magnets", "Put the magnets away", more, MAGNETS)


def _ends() -> Item:
    more = (
        "Not where cats, dogs or small children find them, and not out for birds' nests."
        " Swallowed: to the vet or doctor at once; never pull an end that shows."
    )
    return Item("our:thread-ends", "Thread ends into the bin", more, ENDS)


def _first_capital(text: str) -> str:
    return text[:1].upper() + text[1:]
