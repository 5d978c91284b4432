"""Everything that size and cut answer, from what was read and the tables of the trade.

Figures only, unrounded. The same in static/js/cloth/size_answer.js.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from webapp.cloth import advice
from webapp.cloth.advice import Advice, Needles, Strands
from webapp.cloth.bounds import INCH
from webapp.cloth.cut import cut, side_by_side
from webapp.cloth.margins import Margin
from webapp.cloth.sizing import Cloth, Ground, Sized

# The counts side by side: (count, over), and what else comes to the same size.
SIDES = (
    *((11.0, 1, ""), (25.0, 2, ""), (14.0, 1, "28 over two"), (16.0, 1, "32 over two")),
    *((18.0, 1, "36 over two"), (20.0, 1, "40 over two")),
)


@dataclass(frozen=True)
class Answer:
    """Everything that is answered, mm and counts per inch.

    beside: what some sources add on needles, or say otherwise.
    least: what the hoop asks of the cut each way where that is more than design and margins, else 0; unheld:
    the same design in the hand; grip: what the frame takes on each side; widest: the widest bolt; cited:
    where margin, needle and strands come from.
    """

    unit: str
    finish: str
    held: str
    cloth: Cloth
    sized: Sized
    margin: Margin
    needle: Needles
    beside: str
    strands: Strands
    hoop: Advice
    least: float
    unheld: Sized
    grip: float
    sides: list[Ground]
    widest: float
    cited: dict[str, list[str]]


def answer(values: Mapping[str, Any], tables: Mapping[str, Any]) -> Answer:
    """Answer a question that was read, from the tables of the trade."""
    unit, held = values["unit"], values["held"]
    cloth = Cloth(values["count"], values["across"] or values["count"], int(values["over"]))
    found = cut(cloth, values, tables)
    per_inch = cloth.across / cloth.over
    needle = advice.needles(per_inch, tables["needles"])
    strand = advice.strands(per_inch, tables["strands"])
    beside, more = advice.beside_needles(strand, tables["needles"])
    return Answer(
        unit=unit,
        finish=values["finish"],
        held=held,
        cloth=cloth,
        sized=found.sized,
        margin=found.margin,
        needle=needle,
        beside=beside,
        strands=strand,
        hoop=found.hoop,
        least=found.least if found.grown else 0.0,
        unheld=cut(cloth, {**values, "held": "hand"}, tables).sized,
        grip=tables["margins"]["frames"][held]["inches"] * INCH,
        sides=side_by_side(values, tables, [(c, over) for c, over, _ in SIDES]),
        widest=max(tables["pieces"]["bolts"]["inches"]) * INCH,
        cited={
            "Margin": cited(found.margin.sources, tables["margins"]),
            "needle": cited(list(dict.fromkeys([*needle.sources, *more])), tables["needles"]),
            "strands": cited(strand.sources, tables["strands"]),
        },
    )


def cited(keys: list[str], table: Mapping[str, Any]) -> list[str]:
    """Name sources by their addresses, or say that there is none."""
    return [table["sources"].get(key, f"{key}, no source") for key in keys]


def ring(found: Answer) -> float:
    """Give the diameter of the hoop that is used, mm; 0 where there is none."""
    return found.hoop.diameter * INCH if found.held == "hoop" and found.hoop.diameter else 0.0


def yours(found: Answer) -> int | None:
    """Tell which of the counts side by side is as hers, if one is."""
    per = found.cloth.across / found.cloth.over
    square = found.cloth.across == found.cloth.down
    rows = [row for row, ground in enumerate(found.sides) if ground.count / ground.over == per and square]
    return rows[0] if rows else None
