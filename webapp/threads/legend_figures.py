"""A legend for scripts: the same figures as its page, unrounded, units in the keys. Pure."""

from collections.abc import Mapping, Sequence
from typing import Any

from webapp.threads.estimate import Own, Range
from webapp.threads.geometry import Ground
from webapp.threads.legend import Line, Totals
from webapp.threads.legend_needs import Bought, Need
from webapp.threads.legend_saying import rests, sums

INCH, YARD = 25.4, 914.4  # mm


def figures(
    lines: Sequence[tuple[str, Line, Sequence[Need]]],
    ground: Ground,
    own: Own | None,
    totals: Totals,
    bought: Sequence[Bought],
    kinds: Mapping[str, Mapping[str, Any]],
) -> dict[str, Any]:
    """Lay a legend out for JSON; of its lines the key, what they say, and what each thread takes."""
    return {
        **lengths("pitch_across", ground.across),
        **lengths("pitch_down", ground.down),
        **lengths("cloth_thickness", ground.thick),
        "legend_full_stitches": totals.legend,
        "chart_full_stitches": totals.chart,
        "agree": totals.agree,
        "own": None if own is None else own._asdict(),
        "to_buy": [one._asdict() for one in bought],
        "lines": [_line(key, line, found, kinds) for key, line, found in lines],
        "sentences": {"totals": sums(totals), "rests_on": rests(own)},
    }


def _line(key: str, line: Line, found: Sequence[Need], kinds: Mapping[str, Any]) -> dict[str, Any]:
    counts = {f"{name}_stitches": many for name, many in line.counts._asdict().items()}
    counts["knots"], counts["beads"] = counts.pop("knots_stitches"), counts.pop("beads_stitches")
    counts["back_stitch_lengths"] = counts.pop("back_stitches")
    return {
        "key": key,
        "symbol": line.symbol,
        "name": line.used,
        "printed": line.printed,
        "colour": line.colour,
        **counts,
        "scatter": line.scatter,
        "patches": line.patches,
        "note": line.note,
        "threads": [_thread(one, kinds[one.part.kind]) for one in found],
    }


def _thread(need: Need, kind: Mapping[str, Any]) -> dict[str, Any]:
    takes, part, beads = need.takes, need.part, kind["sold"] == "bead"
    return {
        "thread": part.thread,
        "instead": part.instead or None,
        "kind": part.kind,
        "strands": part.strands,
        "strands_together": need.worked.together,
        "lots": list(part.lots),
        "method": need.worked.method,
        "loop": need.worked.loop,
        **lengths("working_length", need.worked.working),
        **_range("each", takes.each),
        **_range("laid", takes.laid),
        **{f"working_lengths_{name}": many for name, many in takes.lengths._asdict().items()},
        **(_beads(takes.sold) if beads else _range("sold", takes.sold)),
        "sold_in": kind["sold"],
        "units_least": takes.units[0],
        "units_most": takes.units[1],
        "rests_on": takes.rests_on,
    }


def _beads(found: Range) -> dict[str, float]:
    return {f"sold_{end}_beads": many for end, many in found._asdict().items()}


def _range(name: str, found: Range) -> dict[str, float]:
    return {key: v for end, mm in found._asdict().items() for key, v in lengths(f"{name}_{end}", mm).items()}


def lengths(name: str, mm: float) -> dict[str, float]:
    """Give one length in mm, m, inches and yards."""
    return {f"{name}_mm": mm, f"{name}_m": mm / 1000, f"{name}_in": mm / INCH, f"{name}_yd": mm / YARD}
