"""Who stitches in the demonstration, and what: all of it invented."""

from dataclasses import dataclass
from typing import Any

NAME = "Wren"
PASSPHRASE = "linen and lamplight"
ZONE = "Europe/London"
MONTHS = 7 * 30  # days the story goes back


@dataclass(frozen=True)
class Story:
    """One project, and when she worked at it: days before today, and how many of ten evenings it got."""

    title: str
    plan: dict[str, Any]
    state: str
    first_day: int = 0
    last_day: int = 0
    evenings: float = 0  # of ten
    pace: int = 70  # stitches an hour, on a good evening
    fullness: float = 1.0  # how much of a row or block is stitched
    most_places: int | None = None  # rows or blocks she got done
    note: str = "at the corner, heading right"
    put_away: bool = False


STORIES = (
    Story(
        "Rook at the window",
        {"width": 56, "height": 48, "count": 16, "direction": "top", "frame": "hoop"},
        "finished",
        first_day=205,
        last_day=120,
        evenings=5,
        pace=88,
        fullness=0.96,
    ),
    Story(
        "Harbour lanterns",
        {"width": 140, "height": 98, "count": 14, "direction": "top", "frame": "hoop", "expected": 140},
        "in hand",
        first_day=118,
        last_day=0,
        evenings=5.5,
        pace=76,
        note="end of the quay, lamp next",
    ),
    Story(
        "Quince tree",
        {
            "width": 120,
            "height": 150,
            "count": 32,
            "over": 2,
            "working": "blocks",
            "block_from": "top-left",
            "frame": "scroll",
            "step": "5",
        },
        "in hand",
        first_day=75,
        last_day=2,
        evenings=3,
        pace=92,
        most_places=60,
        note="third bough, leaves left",
    ),
    Story(
        "Winter hedge",
        {
            "width": 84,
            "height": 84,
            "count": 28,
            "over": 2,
            "direction": "middle",
            "first_row": 42,
            "frame": "clamps",
        },
        "resting",
        first_day=190,
        last_day=140,
        evenings=2.5,
        pace=64,
        fullness=0.7,
        note="berries wait for the red",
    ),
    Story(
        "Tide table",
        {"width": 100, "height": 60, "count": 18, "direction": "bottom", "frame": "stretched"},
        "resting",
        first_day=180,
        last_day=165,
        evenings=2,
        pace=52,
        fullness=0.8,
        put_away=True,
    ),
    Story(
        "Ferry at first light",
        {"width": 160, "height": 110, "count": 36, "over": 2, "frame": "scroll"},
        "planned",
    ),
)
