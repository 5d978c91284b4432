"""The gauge's answer for scripts: the same figures as the page, unrounded, units in the keys."""

from typing import Any

from webapp.cloth.answer import Answer
from webapp.cloth.gauge import Measured
from webapp.cloth.saying import sentences


def figures(answer: Answer) -> dict[str, Any]:
    """Lay an answer out for JSON."""
    return {
        "counted": answer.kind,
        **measured(answer.measured),
        "along": measured(answer.along),
        "across": measured(answer.across) if answer.across else None,
        "square": square(answer),
        "sure_per_inch": answer.judged.sure,
        "standards": [
            {
                "count_per_inch": n.count,
                "verdict": n.verdict,
                "likelihood": n.likelihood,
                "off_uncertainties": n.off,
            }
            for n in answer.judged.names
        ],
        "none_of_these_likelihood": answer.judged.none,
        "if_holes": {"count_per_inch": answer.holes, "likeliest_per_inch": answer.holes_name},
        "over_two_stitches_per_inch": answer.over_two,
        "perhaps_changed": [
            {"count_per_inch": one.count, "how": one.how, "per_10cm": one.figure} for one in answer.changed
        ],
        "asked_length_mm": answer.asked_length,
        "settling_length_mm": answer.settling,
        "if_other_unit_per_inch": answer.other_unit,
        "if_other_kind_per_inch": answer.other_kind,
        "sentences": dict(sentences(answer)),
    }


def measured(of: Measured) -> dict[str, Any]:
    """Lay one measured count out: coverage 95 % from low to high, 99.9 % from surely low to surely high."""
    return {
        "count_per_inch": of.count,
        "low_per_inch": of.low,
        "high_per_inch": of.high,
        "surely_low_per_inch": of.surely_low,
        "surely_high_per_inch": of.surely_high,
        "count_per_10cm": of.count * 100 / 25.4,
        "uncertainty_per_inch": of.uncertainty,
        "part_uncertainty_per_inch": of.part,
        "tape_uncertainty_per_inch": of.tape,
        "spread_uncertainty_per_inch": of.spread,
        "short_per_inch": of.short,
        "coverage_factor": of.factor,
        "degrees_of_freedom": of.freedom,
        "longest_mm": of.length,
        "places": of.places,
    }


def square(answer: Answer) -> dict[str, Any] | None:
    """Lay along against across out."""
    of = answer.square
    if of is None:
        return None
    return {
        "verdict": of.verdict,
        "hundred_along_mm": of.along_mm,
        "hundred_across_mm": of.across_mm,
        "across_longer_percent": of.percent,
    }
