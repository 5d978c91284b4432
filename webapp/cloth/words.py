"""Figures of the gauge in words, rounded only here, and alike in both languages."""

from math import ceil, floor

from webapp.cloth.gauge import INCH, Measured

CLOTHS = {"squares": "Aida", "threads": "linen or evenweave"}


def tenth(value: float) -> str:
    """Write a count to a tenth: "13.6", "14"."""
    return plain(floor(value * 10 + 0.5) / 10)


def plain(value: float) -> str:
    """Write a number as it is, without an idle ".0"."""
    return str(int(value)) if value == int(value) else str(value)


def interval(measured: Measured) -> tuple[str, str]:
    """Write the ends of the 95 % interval, rounded outward to a tenth."""
    return plain(floor(measured.low * 10 + 1e-9) / 10), plain(ceil(measured.high * 10 - 1e-9) / 10)


def metric(measured: Measured) -> tuple[str, str]:
    """Write the ends of the 95 % interval per 10 cm, rounded outward to a whole one."""
    return str(floor(measured.low * 100 / INCH + 1e-9)), str(ceil(measured.high * 100 / INCH - 1e-9))


def per_cent(share: float) -> str:
    """Write a likelihood, never as certain as 0 or 100."""
    if share < 0.01:
        return "less than 1\u00a0%"
    return "more than 99\u00a0%" if share > 0.99 else f"{floor(share * 100 + 0.5)}\u00a0%"


def length(mm: float, unit: str) -> str:
    """Write a length to measure, rounded up to what a tape shows: half inches to 4, whole centimetres."""
    if unit == "cm":
        return f"{ceil(mm / 10 - 1e-9)} cm"
    halves = ceil(mm / INCH * 2 - 1e-9) if mm <= 4 * INCH else 2 * ceil(mm / INCH - 1e-9)
    whole, half = divmod(halves, 2)
    return f"{whole} 1/2 in" if half and whole else f"{whole} in" if whole else "1/2 in"


def join(words: list[str], last: str = "and") -> str:
    """Join words as a sentence does."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} {last} {words[-1]}"
