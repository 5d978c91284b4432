"""Lengths of thread in words: yards where her unit is inches, else metres.

Pure, and the same in static/js/threads/in_words.js.
"""

from math import ceil, floor

PER = {"in": 914.4, "cm": 1000.0}  # mm
NAMES = {"in": "yd", "cm": "m"}
OTHER = {"in": "cm", "cm": "in"}
HAIR = 1e-9  # so that a half, which arithmetic made a little less than one, is rounded up
WHOLE = 100  # from so many on no tenths are written


def figure(mm: float, unit: str, way: str = "near") -> str:
    """Write a length of thread without its unit: "9.4"; rounded ``way``: near, up or down."""
    value = mm / PER[unit]
    parts = 1 if value >= WHOLE else 10
    rounded = {"near": floor(value * parts + 0.5 + HAIR), "up": ceil(value * parts - HAIR)}
    found = rounded.get(way, floor(value * parts + HAIR)) / parts
    if not found and mm and way == "near":
        return "under 0.1"
    return f"{int(found) if found == int(found) else found:,}"


def run(mm: float, unit: str, way: str = "near") -> str:
    """Write a length of thread, which no line may part: "9.4 yd"."""
    return f"{figure(mm, unit, way)}\u00a0{NAMES[unit]}"


def both(mm: float, unit: str) -> str:
    """Write a length of thread in her unit and in the other: "9.4 yd (8.6 m)"."""
    return f"{run(mm, unit)} ({run(mm, OTHER[unit])})"


def ranged(least: int, most: int) -> str:
    """Write a range of whole things: "2 to 3", or "2"."""
    return f"{least:,}" if least == most else f"{least:,} to {most:,}"
