"""What sizing and packing take: whatever lies outside is a slip, and is refused with a sentence."""

INCH = 25.4  # mm, exact
FORGIVEN = 1e-6  # mm: what arithmetic may lose; no cloth is cut so finely
COUNTS = (1, 100)  # per inch
STITCHES = (1, 10_000)  # along a side
MARGINS = (0, 1_000)  # mm a side
LENGTHS = (10, 100_000)  # mm: a piece, a cut, a bolt's width
CUTS = (1, 200)  # in a class


def counted(count: float) -> None:
    """Refuse a count per inch that no cloth has."""
    _within(count, *COUNTS, "A count is a number from 1 to 100 an inch.")


def spanned(over: int) -> None:
    """Refuse a stitch over more threads, or parts of one, than stitches are made over."""
    _within(over, 1, 3, "A stitch is made over 1, 2 or 3 threads.", whole=True)


def stitched(width: int, height: int) -> None:
    """Refuse a design that is not so many whole stitches wide and high."""
    for side in (width, height):
        _within(side, *STITCHES, "A design is from 1 to 10,000 whole stitches a side.", whole=True)


def edged(margin: float) -> None:
    """Refuse a margin (mm a side) below nothing or beyond a metre."""
    _within(margin, *MARGINS, "A margin is from nothing to 1 m a side.")


def drawn(*sides: float) -> None:
    """Refuse a finished design (mm) that has no size, or more than any design has."""
    for side in sides:
        _within(side, 0.1, 1_000_000, "A finished design measures something each way.")


def measured(*lengths: float) -> None:
    """Refuse cloth (mm) under a centimetre or over a hundred metres."""
    for length in lengths:
        _within(length, *LENGTHS, "Cloth is measured from 1 cm to 100 m.")


def numbered(cuts: int) -> None:
    """Refuse a class of none, or of more than two hundred."""
    _within(cuts, *CUTS, "A class is from 1 to 200 cuts.", whole=True)


def _within(value: float, low: float, high: float, sentence: str, whole: bool = False) -> None:
    if not low <= value <= high or (whole and value % 1 != 0):
        raise ValueError(sentence)
