"""What the gauge says of cloth that is not square, or perhaps not: both counts, neither for the whole."""

from math import floor

from webapp.cloth.answer import Answer
from webapp.cloth.words import interval, plain, tenth


def counts(one: float, other: float) -> tuple[str, str]:
    """Write two counts that differ so that it shows."""
    if tenth(one) != tenth(other):
        return tenth(one), tenth(other)
    return plain(floor(one * 100 + 0.5) / 100), plain(floor(other * 100 + 0.5) / 100)


def headline(answer: Answer) -> tuple[str, str]:
    """Give both counts, by their names where each has one and they differ, else as measured."""
    named = [[n.count for n in way.names if n.verdict == "could be"] for way in answer.ways or ()]
    if all(len(fits) == 1 for fits in named) and named[0] != named[1]:
        return " and ".join(plain(fits[0]) for fits in named), "count, along and across"
    one, other = _measured(answer)
    return f"{one} and {other}", "an inch, along and across"


def _measured(answer: Answer) -> tuple[str, str]:
    return counts(answer.along.count, (answer.across or answer.along).count)


def verdict(answer: Answer) -> str:
    """Say how far it is from square."""
    return "Not square." if answer.square and answer.square.verdict == "uneven" else "Perhaps not square."


def across(answer: Answer) -> str:
    """Write the count across with its interval, to stand beside that along."""
    of = answer.across or answer.along
    return f"across {tenth(of.count)} ({' to '.join(interval(of))})"


def squareness(answer: Answer) -> str:
    """Say what that does to a design, or how to be sure."""
    square = answer.square
    if square is None or square.verdict == "perhaps":
        return "Count again, further, both ways."
    off = f"{tenth(abs(square.across_mm - square.along_mm))} mm ({tenth(abs(square.percent))}\u00a0%)"
    way = "longer" if square.percent > 0 else "shorter"
    return f"100 {answer.kind} come out {off} {way} across."


def over_two(answer: Answer) -> str:
    """Say what threads come to over two, each way."""
    one, other = counts(answer.along.count / 2, (answer.across or answer.along).count / 2)
    return f"Over two, {one} along, {other} across."


def holes(answer: Answer) -> str:
    """Say what it would be if holes had been counted, each way."""
    one, other = counts(answer.holes, answer.holes_across or answer.holes)
    return f"Counted holes? Then {one} along, {other} across."
