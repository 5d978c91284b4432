"""What goes into the bag before she leaves the house with a project, drawn from its cloth and its legend.

Pure. None of it has a published source but the needles, whose size follows shared/tables/needles.json, and
the larger eye for metallic thread (stitchnz.co.nz); the rest is common practice.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from webapp.threads import sheet
from webapp.threads.sheet import Item, Line, Thread

SPARE = 2  # needles: one bends, one is lost (common practice, no source)
FRAMES = {"clamps": "Frame with its clamps", "scroll": "Scroll frame", "stretched": "Work on its stretcher"}
EYES = {
    "wool": ("A needle a size larger, with a wide eye", "For wool.", sheet.PRACTICE),
    "metallic": ("A needle with a larger eye", "For metallic thread.", "stitchnz.co.nz"),
    "filament": ("A needle with a larger eye", "For blending filament.", "stitchnz.co.nz"),
}
LIKED = (
    Item("our:light", "Light", liked=True),
    Item("our:magnifier", "Magnifier", liked=True),
    Item("our:grid", "Pen or thread for the grid", "Water-erasable: only on what may be rinsed.", liked=True),
    Item(
        "our:minder",
        "Needle minder",
        "A magnet: away from children and pets; 15 cm (6 in) from a pacemaker.",
        ("suddencardiacarrestuk.org", "poison.org"),
        liked=True,
    ),
)


@dataclass(frozen=True)
class Packed:
    """What the bag must know of a project: its cloth, cut and hoop in words, how it is held, its needle."""

    cloth: str
    held: str
    cut: str = ""
    hoop: str = ""  # none where no hoop goes round the design
    needle: str = ""
    sources: tuple[str, ...] = ()  # of the needle's size


def items(packed: Packed, lines: Sequence[Line], kinds: Mapping[str, Any]) -> list[Item]:
    """List what goes in, the pattern first, what is only liked last."""
    return [
        Item("our:pattern", "Pattern", "And a pen to mark it."),
        Item("our:cloth", "Cloth", f"{packed.cloth}{f'; cut {packed.cut}' if packed.cut else ''}."),
        *_held(packed),
        *(_thread(one, kinds) for one in sheet.threads(lines)),
        *([] if lines else [Item("our:threads", "Threads", "The legend is empty: see the pattern.")]),
        *_needles(packed, lines),
        Item("our:scissors", "Scissors", "Sheathed, and out of small hands."),
        Item(
            "our:ends",
            "A tin for thread ends",
            "Cats and dogs swallow them.",
            ("vin.com", "dvsc.com/2020/02"),
        ),
        *LIKED,
    ]


def _held(packed: Packed) -> list[Item]:
    if packed.held == "hoop":
        return [Item("our:frame", packed.hoop or "Hoop", "Off the work for the way.")]
    return [Item("our:frame", FRAMES[packed.held])] if packed.held in FRAMES else []


def _thread(thread: Thread, kinds: Mapping[str, Any]) -> Item:
    said = [" ".join(thread.symbols), sheet.kind_in_words(kinds, thread.kind)]
    return Item(f"thread:{thread.kind}:{thread.name}", thread.name, ", ".join(one for one in said if one))


def _needles(packed: Packed, lines: Sequence[Line]) -> list[Item]:
    """Give the needles: by the count, with two to spare; a larger eye for what frays; one for beads."""
    size = f"Size {packed.needle}. " if packed.needle else ""
    spare = f"{size}One to stitch with, two to spare."
    sources = (*packed.sources, sheet.PRACTICE)
    found = [Item("our:needles", f"{1 + SPARE} tapestry needles", spare, sources)]
    used = dict.fromkeys(part["kind"] for _, part in sheet.each_part(lines))
    for kind in (kind for kind in used if kind in EYES):
        text, more, source = EYES[kind]
        found.append(Item(f"needle:{kind}", text, more, (source,)))
    if sheet.has_beads(lines):
        more = "Or one that passes the bead; the beads in a box that shuts."
        found.append(Item("needle:beads", "A beading needle", more))
    return found
