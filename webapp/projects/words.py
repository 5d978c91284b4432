"""What a project's plan says, in words."""

from typing import Protocol

from webapp.numbers import counted, number

STATES = (("planned", "Planned"), ("in hand", "In hand"), ("resting", "Resting"), ("finished", "Finished"))
OVERS = (("1", "One"), ("2", "Two"))
WORKINGS = (("rows", "By rows"), ("blocks", "By blocks of ten"))
DIRECTIONS = (
    ("top", "Down from the top"),
    ("bottom", "Up from the bottom"),
    ("middle", "Both ways from the middle"),
)
WAYS = (("right", "Right"), ("left", "Left"))
CORNERS = (
    ("top-left", "Top left"),
    ("top-right", "Top right"),
    ("bottom-left", "Bottom left"),
    ("bottom-right", "Bottom right"),
    ("middle", "Middle"),
)
BLOCK_WAYS = (("across", "Across"), ("down", "Down"))
STEPS = (("1", "1"), ("2", "2"), ("5", "5"), ("10", "10"), ("ten", "To the ten-line"), ("row", "The row"))
FRAMES = (
    ("hoop", "Hoop"),
    ("clamps", "Clamps"),
    ("scroll", "Scroll frame"),
    ("stretched", "Stretched"),
    ("hand", "In hand"),
)
HELD = {
    "hoop": "In a hoop",
    "clamps": "In clamps",
    "scroll": "On a scroll frame",
    "stretched": "Stretched",
    "hand": "In hand",
}


class Plan(Protocol):
    """What the words are about."""

    count: float
    across: float | None
    over: int
    working: str
    direction: str
    first_row: int
    start_column: int
    start_way: str
    expected: int | None
    block_from: str
    block_way: str
    step: str


def way_of_working(plan: Plan) -> list[str]:
    """Say how she goes through the chart, as sentences."""
    if plan.working == "blocks":
        start = "the middle" if plan.block_from == "middle" else f"the {plan.block_from.replace('-', ' ')}"
        return [f"Blocks of ten, from {start}, {plan.block_way} first."]
    going = {"top": "down from row", "bottom": "up from the bottom, from row", "middle": "both ways from row"}
    sentences = [
        f"Rows, {going[plan.direction]} {number(plan.first_row)}.",
        f"Each begins at column {number(plan.start_column)} and goes {plan.start_way}.",
    ]
    if plan.expected is not None:
        sentences.append(f"{counted(plan.expected, 'stitch', 'stitches')} in each.")
    return sentences


def what_a_tap_lays(plan: Plan) -> str:
    """Say what one tap lays."""
    if plan.step in ("ten", "row"):
        return "up to the ten-line" if plan.step == "ten" else "the rest of the row"
    return counted(int(plan.step), "stitch", "stitches")


def cloth_in_words(plan: Plan) -> str:
    """Say what the cloth is and how many of its threads a stitch spans."""
    count = f"{count_in_words(plan.count)} count"
    if plan.across is not None:
        count = f"{count} across, {count_in_words(plan.across)} down"
    return f"{count}, over {'two' if plan.over == 2 else 'one'}"


def count_in_words(count: float) -> str:
    """Write a count without needless decimals: 14, 13.72."""
    return repr(float(count)).removesuffix(".0")
