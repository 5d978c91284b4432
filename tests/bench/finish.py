"""How often the range of dates holds the true finish, for simulated stitchers of known habit."""

from collections.abc import Iterator
from itertools import count

from tests.hours.simulated import Case, case

STITCHERS = 500


def figures() -> Iterator[str]:
    cases = []
    for seed in count():
        if len(cases) == STITCHERS:
            break
        if (one := case(seed)) is not None:
            cases.append(one)
    yield f"finish: {line(cases)} of {STITCHERS} stitchers"
    short, long = [c for c in cases if c.weeks < 12], [c for c in cases if c.weeks >= 12]
    yield f"finish: {line(short)} of the {len(short)} with under 12 weeks behind them"
    yield f"finish: {line(long)} of the {len(long)} with more"
    early = sum(c.done < c.forecast.early for c in cases) / STITCHERS
    late = sum(c.done > c.forecast.late for c in cases) / STITCHERS
    yield f"finish: done before the range {early:.1%}, after it {late:.1%}"


def line(cases: list[Case]) -> str:
    held = sum(c.forecast.early <= c.done <= c.forecast.late for c in cases)
    return f"the 10-90 % range holds the true finish for {held} ({held / len(cases):.1%})"
