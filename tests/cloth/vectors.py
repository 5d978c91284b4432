"""The vectors of the gauge, and what the gauge gives for one."""

import json
from dataclasses import asdict
from typing import Any

from webapp.cloth.answer import answer
from webapp.cloth.gauge import Reading
from webapp.cloth.onward import onward
from webapp.cloth.saying import sentences
from webapp.cloth.scale import scale
from webapp.cloth.standards import table
from webapp.cloth.words import interval, metric
from webapp.places import SHARED

VECTORS = json.loads((SHARED / "vectors" / "gauge.json").read_text(encoding="utf-8"))
MEASURED = (
    "count",
    "uncertainty",
    "part",
    "tape",
    "spread",
    "short",
    "freedom",
    "low",
    "high",
    "surely_low",
    "surely_high",
)


def named(case: dict[str, Any]) -> str:
    return case["description"]


def figures_of(given: dict[str, Any]) -> dict[str, Any]:
    """Answer one case, laid out as JSON gives it back."""
    found = answer([Reading(**r) for r in given["readings"]], given["kind"], given["unit"], table())
    measured = asdict(found.measured)
    names = [[n.count, n.verdict, n.likelihood] for n in found.judged.names if n.verdict != "ruled out"]
    laid = {
        **{name: measured[name] for name in MEASURED},
        "sure": found.judged.sure,
        "none": found.judged.none,
        "names": names,
        "square": asdict(found.square) if found.square else None,
        "onward": onward(found),
        "holes": found.holes,
        "over_two_name": found.over_two_name,
        "changed": [asdict(one) for one in found.changed],
        "asked_length": found.asked_length,
        "settling": found.settling,
        "shown": [*interval(found.measured), *metric(found.measured)],
        "sentences": sentences(found),
        "scale": asdict(scale(found.measured, found.judged, found.across if found.ways else None)),
    }
    return json.loads(json.dumps(laid))
