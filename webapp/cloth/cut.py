"""How big to cut: the margin round a design, and the hoop that is to hold all of it.

A hoop that goes round a design closes on no stitch, but the ring must have cloth all round it as well: the
cut is never less, either way, than its diameter with the ring itself and an inch to pull on both sides
(common practice, no source), and what frays beyond that. A design that no hoop goes round has its margin
alone. All lengths in mm. The same in static/js/cloth/cut.js.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from webapp.cloth import advice
from webapp.cloth.advice import Advice
from webapp.cloth.bounds import INCH
from webapp.cloth.margins import Margin, margin
from webapp.cloth.sizing import STEPS, Cloth, Ground, Sized, finished, size


@dataclass(frozen=True)
class Cut:
    """A design with its cut.

    least: what the hoop asks of the cut each way, 0 where none is used; grown: whether that is more than
    design and margins.
    """

    sized: Sized
    margin: Margin
    hoop: Advice
    least: float

    @property
    def grown(self) -> bool:
        """Tell whether the hoop asks for more than design and margins."""
        sized, around = self.sized, 2 * self.margin.mm
        return self.least > min(sized.finished_width, sized.finished_height) + around


def cut(cloth: Cloth, values: Mapping[str, Any], tables: Mapping[str, Any]) -> Cut:
    """Cut for a question that was read."""
    design, frays = (values["width"], values["height"]), values["frays"] == "yes"
    around = margin(values["finish"], values["held"], frays, values["own"], tables["margins"])
    hoop = advice.hoop(*finished(cloth, *design), tables["hoops"])
    least = asked_by(hoop, values, tables["margins"])
    return Cut(size(cloth, *design, around.mm, STEPS[values["unit"]], least), around, hoop, least)


def asked_by(hoop: Advice, values: Mapping[str, Any], table: Mapping[str, Any]) -> float:
    """Give what a hoop asks of the cut each way; 0 where none is used."""
    if values["held"] != "hoop" or hoop.diameter is None:
        return 0.0
    beyond: float = table["frames"]["hoop"]["beyond"]["inches"]
    if values["frays"] == "yes":
        beyond += table["frays"]["inches"]
    return (hoop.diameter + 2 * beyond) * INCH


def side_by_side(
    values: Mapping[str, Any], tables: Mapping[str, Any], grounds: Sequence[tuple[float, int]]
) -> list[Ground]:
    """Cut for the same design on several even cloths, each (count, over)."""
    return [
        Ground(count, over, cut(Cloth(count, count, over), values, tables).sized) for count, over in grounds
    ]
