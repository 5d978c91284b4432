"""Size and cut for scripts: the same figures as the page, unrounded, units in the keys."""

from typing import Any

from webapp.cloth.bounds import INCH
from webapp.cloth.size_answer import Answer
from webapp.cloth.size_saying import slots
from webapp.cloth.sizing import Cloth, Sized


def figures(found: Answer) -> dict[str, Any]:
    """Lay an answer out for JSON; hoops and needles by the sizes they are sold in."""
    sized, cloth = found.sized, found.cloth
    return {
        "unit": found.unit,
        "width_stitches": sized.width,
        "height_stitches": sized.height,
        **counts(cloth),
        **measures(sized),
        **lengths("first_in", sized.first_in),
        **lengths("first_down", sized.first_down),
        "first_in_threads": sized.threads_in,
        "first_down_threads": sized.threads_down,
        "middle_across_stitches": sized.middle[0],
        "middle_down_stitches": sized.middle[1],
        "margin": {"decided": found.margin.decided, "sources": found.margin.sources},
        "needle": vars(found.needle),
        "strands": vars(found.strands),
        "hoop": {
            "diameter_in": found.hoop.diameter,
            "frame": found.hoop.frame,
            "needed_mm": found.hoop.needed,
            "cut_at_least_mm": found.least or None,
            "sources": found.hoop.sources,
        },
        "side_by_side": [
            counts(Cloth(on.count, on.count, on.over)) | measures(on.sized) for on in found.sides
        ],
        "sentences": {name: text for name, text in slots(found).items() if not name.startswith("side-")},
    }


def counts(cloth: Cloth) -> dict[str, float]:
    """Lay a cloth's counts out, along the design's width and down its height."""
    return {
        "count_per_inch": cloth.across,
        "count_down_per_inch": cloth.down,
        "over": cloth.over,
        "stitches_per_inch": cloth.across / cloth.over,
    }


def measures(sized: Sized) -> dict[str, float]:
    """Lay finished size, margin a side and cut out; the exact cut is the one before it is rounded up."""
    return {
        **lengths("finished_width", sized.finished_width),
        **lengths("finished_height", sized.finished_height),
        **lengths("margin", sized.margin),
        **lengths("exact_width", sized.exact_width),
        **lengths("exact_height", sized.exact_height),
        **lengths("cut_width", sized.cut_width),
        **lengths("cut_height", sized.cut_height),
    }


def lengths(name: str, mm: float) -> dict[str, float]:
    """Give one length in mm, cm and inches."""
    return {f"{name}_mm": mm, f"{name}_cm": mm / 10, f"{name}_in": mm / INCH}
