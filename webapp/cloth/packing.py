"""Equal cuts from one piece of cloth, or from a length off the bolt, so that the least of it is used.

Cuts lie in strips from edge to edge, as scissors go: rows of cuts one way, then rows of cuts turned by a
quarter; or columns likewise. Of all such layouts the one that uses the shortest length of the piece is
taken; of those alike, rows before columns, and the fewest turned. A turned cut may have a size of its own:
on cloth that is not square a design comes out otherwise along it than across. A mixture of rows and columns
would hold a cut or two more on one small piece in twenty-five (``python -m tests.bench size``): None means
not in strips.

All lengths in mm; x from the left, y from the top; a strip is (x, y, width, height). What ``bounds``
refuses raises ValueError with a sentence. The same in static/js/cloth/packing.js.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, floor
from typing import NamedTuple

from webapp.cloth import bounds
from webapp.cloth.bounds import FORGIVEN

Strip = tuple[float, float, float, float]
Side = tuple[float, float]


@dataclass(frozen=True)
class Cutting:
    """Where to cut.

    length: mm of the piece's height that is used; left: the strips left over, that below the cuts last; most:
    how many such cuts the piece, or this length of the bolt, gives at most; rows: laid in rows, else in
    columns; turned: how many of the cuts are turned, the last ones.
    """

    cuts: list[Strip]
    length: float
    left: list[Strip]
    most: int
    rows: bool
    turned: int


class Plan(NamedTuple):
    """A layout before it is drawn: so many strips of cuts as they are, then so many of turned ones."""

    rows: bool
    straight: int
    turned: int
    length: float


class Given(NamedTuple):
    """What is to be cut: n cuts of a width and a height, from so wide a piece, turned or not.

    wide, high: a turned cut as it lies on the piece.
    """

    n: int
    width: float
    height: float
    across: float
    turn: bool
    wide: float
    high: float


def many(length: float, each: float) -> int:
    """Tell how many lengths of ``each`` a length holds."""
    return max(0, floor((length + FORGIVEN) / each))


def class_cuts(
    n: int,
    cut_width: float,
    cut_height: float,
    piece_width: float,
    piece_height: float,
    turn: bool = True,
    turned: Side | None = None,
) -> Cutting | None:
    """Lay n equal cuts on a piece; None where it does not give so many.

    turn: cuts may be turned; turned: the width and height of a turned one as it lies on the piece, where they
    are not the cut's height and width.
    """
    bounds.measured(piece_height)
    given = _given(n, (cut_width, cut_height), piece_width, turn, turned)
    best = _best(given)
    if best is None or best.length > piece_height + FORGIVEN:
        return None
    return _drawn(given, best, piece_height)


def off_the_bolt(
    n: int,
    cut_width: float,
    cut_height: float,
    bolt_width: float,
    turn: bool = True,
    turned: Side | None = None,
) -> Cutting:
    """Give the shortest length off a bolt for n equal cuts, not rounded; ``turned`` as in ``class_cuts``.

    ValueError where the bolt is narrower than a cut.
    """
    given = _given(n, (cut_width, cut_height), bolt_width, turn, turned)
    best = _best(given)
    if best is None:
        raise ValueError("The bolt is narrower than one cut.")
    return _drawn(given, best, best.length)


def most_of(given: Given, length: float) -> int:
    """Tell how many cuts a length of the piece gives at most, however many are asked for."""
    abreast, abreast_turned = _abreast(given)
    rows = [
        (a * abreast + many(length - a * given.height, given.high) * abreast_turned)
        for a in range(many(length, given.height) + 1)
    ]
    return max(*rows, *(_held(given, a, b, length) for a, b in _columns(given, None)))


def _given(n: int, cut: Side, across: float, turn: bool, turned: Side | None) -> Given:
    wide, high = turned or (cut[1], cut[0])
    bounds.numbered(n)
    bounds.measured(*cut, across, wide, high)
    return Given(n, *cut, across, turn and cut != (wide, high), wide, high)


def _abreast(given: Given) -> tuple[int, int]:
    return many(given.across, given.width), many(given.across, given.wide) if given.turn else 0


def _best(given: Given) -> Plan | None:
    best: Plan | None = None
    for plan in (*_in_rows(given), *_in_columns(given)):
        if best is None or plan.length < best.length - FORGIVEN:
            best = plan
    return best


def _in_rows(given: Given) -> Iterator[Plan]:
    """Try every number of rows of turned cuts, with as few as will do of the others."""
    abreast, abreast_turned = _abreast(given)
    for turned in range(ceil(given.n / abreast_turned) + 1 if abreast_turned else 1):
        wanted = max(0, given.n - turned * abreast_turned)
        if wanted and not abreast:
            continue
        straight = ceil(wanted / abreast) if wanted else 0
        yield Plan(True, straight, turned, straight * given.height + turned * given.high)


def _columns(given: Given, n: int | None) -> Iterator[tuple[int, int]]:
    """Try every number of columns of cuts as they are, beside as many of turned ones as there is room for."""
    full = many(given.across, given.width)
    for straight in range(full if n is None else min(full, n), -1, -1):
        room = many(given.across - straight * given.width, given.wide) if given.turn else 0
        yield straight, room if n is None else min(room, n)


def _held(given: Given, straight: int, turned: int, length: float) -> int:
    return straight * many(length, given.height) + turned * many(length, given.high)


def _in_columns(given: Given) -> Iterator[Plan]:
    """Find for every such pair of numbers the shortest length that holds the cuts."""
    for straight, turned in _columns(given, given.n):
        lengths = [i * given.height for i in range(1, ceil(given.n / straight) + 1)] if straight else []
        lengths += [i * given.high for i in range(1, ceil(given.n / turned) + 1)] if turned else []
        enough = [each for each in lengths if _held(given, straight, turned, each) >= given.n]
        if enough:
            yield Plan(False, straight, turned, min(enough))


def _drawn(given: Given, plan: Plan, piece_height: float) -> Cutting:
    if plan.rows:
        cuts, left, turned = _laid(given, plan)
    else:
        on_its_side = given._replace(
            width=given.height, height=given.width, across=plan.length, wide=given.high, high=given.wide
        )
        *strips, turned = _laid(on_its_side, plan)
        cuts, left = map(_swapped, strips)
        used = plan.straight * given.width + plan.turned * given.wide
        left.append((used, 0.0, given.across - used, plan.length))
    left.append((0.0, plan.length, given.across, piece_height - plan.length))
    return Cutting(cuts, plan.length, _joined(left), most_of(given, piece_height), plan.rows, turned)


def _laid(given: Given, plan: Plan) -> tuple[list[Strip], list[Strip], int]:
    """Lay rows from the top, each from the left; give what is left at the right, and how many are turned."""
    cuts: list[Strip] = []
    left: list[Strip] = []
    turned = 0
    for i in range(plan.straight + plan.turned):
        as_is = i < plan.straight
        width, height = (given.width, given.height) if as_is else (given.wide, given.high)
        y = min(i, plan.straight) * given.height + max(0, i - plan.straight) * given.high
        here = min(many(given.across, width), given.n - len(cuts))
        cuts += [(k * width, y, width, height) for k in range(here)]
        left.append((here * width, y, given.across - here * width, height))
        turned += 0 if as_is else here
    return cuts, left, turned


def _swapped(strips: list[Strip]) -> list[Strip]:
    return [(y, x, height, width) for x, y, width, height in strips]


def _joined(strips: list[Strip]) -> list[Strip]:
    """Leave out strips of no width, and join two, one after the other, that share a whole edge."""
    joined: list[Strip] = []
    for strip in strips:
        if strip[2] > FORGIVEN and strip[3] > FORGIVEN:
            whole = _whole(joined[-1], strip) if joined else None
            joined[-1:] = [whole] if whole else [*joined[-1:], strip]
    return joined


def _whole(one: Strip, other: Strip) -> Strip | None:
    (x, y, width, height), (x2, y2, width2, height2) = one, other
    if _alike(x, x2) and _alike(width, width2) and _alike(y + height, y2):
        return x, y, width, height + height2
    if _alike(y, y2) and _alike(height, height2) and _alike(x + width, x2):
        return x, y, width + width2, height
    return None


def _alike(one: float, other: float) -> bool:
    return abs(one - other) < FORGIVEN
