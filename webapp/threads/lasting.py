"""How far the thread at hand reaches: against what is still to be laid, as a range. Pure.

All thread in mm as it is sold. Stitches other than crosses are reckoned as the crosses they come to: their
*worth*. What she said there was (her stash, counted; a reading of what is left) holds from that moment on,
less what was spent since: at the most a cross takes where it must be sure, at the least where it may be.

A thread that several lines or projects use is shared by what each of them may still need at most; so all of
them have enough, or all are warned.
"""

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from math import ceil, floor, fsum
from typing import Any, NamedTuple

from webapp.threads.estimate import Counts, Range, Worked
from webapp.threads.geometry import STITCHES, Ground, bundle, stitch

PASSES = {
    "cross": ("full",),
    "part": ("half", "quarter", "three_quarter"),
    "back": ("back",),
    "knot": ("knots", "beads"),
}
HAIR = 1e-6


class Said(NamedTuple):
    """How much there was at a moment: all there is, or what came to it then."""

    at: datetime
    mm: float


class Kept(NamedTuple):
    """A thread of the stash: when it was first kept, when it was counted last, and how much there was."""

    created: datetime
    counted: datetime
    mm: float


class User(NamedTuple):
    """What one line has to do with one thread.

    each: mm of one cross; left: worth of crosses still to be laid, none where it has no claim any more;
    others: of these, what are no crosses; spent: crosses spent from the beginning; since: worth spent since
    each of what was said.
    """

    who: Any
    each: Range
    left: float
    others: float
    spent: int
    since: tuple[float, ...]


class Lasting(NamedTuple):
    """How far one line comes.

    has: mm, surely and perhaps; needs: mm, least and most; crosses: spent ones, from the beginning, that it
    surely and perhaps reaches to; verdict: surely, perhaps or not.
    """

    has: tuple[float, float]
    needs: tuple[float, float]
    crosses: tuple[int, int]
    verdict: str


def worth(counts: Counts, ground: Ground, worked: Worked, sold: str = "skein") -> dict[str, float]:
    """Give for each pass how many crosses its stitches come to; of beads, how many they are."""
    many = counts._asdict()
    if sold == "bead":
        return {
            one: float(sum(many[what] for what in named if what != "back")) for one, named in PASSES.items()
        }
    thread = bundle(worked.together, worked.diameter)
    takes = {what: stitch(what, ground, worked.method, thread) for what in STITCHES}
    return {
        one: fsum(many[what] * takes[what] for what in named) / takes["full"] for one, named in PASSES.items()
    }


def still(counts: Counts, laid: Mapping[str, int]) -> dict[str, float]:
    """Give for each pass what share of its stitches is still to be laid."""
    many = counts._asdict()
    planned = {one: sum(many[what] for what in named) for one, named in PASSES.items()}
    return {
        one: max(0.0, 1 - max(0, laid.get(one, 0)) / number) if number else 0.0
        for one, number in planned.items()
    }


def to_come(worth: Mapping[str, float], still: Mapping[str, float]) -> float:
    """Give what share of a line's thread is still to be laid."""
    whole = fsum(worth.values())
    return min(1.0, fsum(worth[one] * still[one] for one in worth) / whole) if whole else 0.0


def said(kept: Iterable[Kept], readings: Iterable[Said]) -> list[Said]:
    """Put in order what holds of a thread: a later reading over what was counted before it.

    What was kept after the reading came to it; what was there and was counted again holds over the reading.
    """
    kept = list(kept)
    last = max(readings, default=None)
    if last and not any(one.created <= last.at < one.counted for one in kept):
        return [last, *sorted(Said(one.counted, one.mm) for one in kept if one.created > last.at)]
    return sorted(Said(one.counted, one.mm) for one in kept)


def at_hand(amounts: Sequence[Said], users: Sequence[User]) -> tuple[float, float]:
    """Give how much there is now, surely and perhaps."""
    sure, perhaps = 0.0, 0.0
    for n, one in enumerate(amounts):
        spent = [(user.each, _between(user, n)) for user in users]
        sure = max(0.0, sure + one.mm - fsum(each.high * worth for each, worth in spent))
        perhaps = max(0.0, perhaps + one.mm - fsum(each.low * worth for each, worth in spent))
    return sure, perhaps


def _between(user: User, n: int) -> float:
    """Give the worth a line spent between one thing said and the next; more cannot come back."""
    later = user.since[n + 1] if n + 1 < len(user.since) else 0.0
    return max(0.0, user.since[n] - later)


def shared(hand: tuple[float, float], users: Sequence[User]) -> dict[Any, Lasting]:
    """Share what there is between the lines that use it, and say of each how far it comes."""
    whole = fsum(user.left * user.each.high for user in users)
    shares = {user.who: user.left * user.each.high / whole if whole else 1 / len(users) for user in users}
    return {
        user.who: lasting((hand[0] * shares[user.who], hand[1] * shares[user.who]), user) for user in users
    }


def lasting(has: tuple[float, float], user: User) -> Lasting:
    """Say how far a line comes with its own share of a thread."""
    needs = user.left * user.each.low, user.left * user.each.high
    reach = (
        user.spent + floor(has[0] / user.each.high - user.others + HAIR),
        user.spent + floor(has[1] / user.each.low - user.others + HAIR),
    )
    sure = max(0, reach[0])
    verdict = "surely" if has[0] >= needs[1] - HAIR else "not" if has[1] < needs[0] - HAIR else "perhaps"
    return Lasting(has, needs, (sure, max(sure, reach[1])), verdict)


def shortest(parts: Sequence[Lasting | None]) -> Lasting | None:
    """Give how far a blend comes: as far as its shortest part; None where nothing is known of one."""
    known = [part for part in parts if part is not None]
    if not known or len(known) < len(parts):
        return None
    worst = min(known, key=lambda one: (RANK[one.verdict], one.crosses))
    crosses = min(one.crosses[0] for one in known), min(one.crosses[1] for one in known)
    return worst._replace(crosses=crosses)


RANK = {"not": 0, "perhaps": 1, "surely": 2}


def short(hand: tuple[float, float], users: Iterable[User]) -> float:
    """Give how much more makes it sure for all that use a thread, mm."""
    return max(0.0, fsum(user.left * user.each.high for user in users) - hand[0])


def units(mm: float, kind: Mapping[str, Any]) -> int:
    """Give how many whole skeins (spools, beads) that is."""
    return ceil(mm / (kind["length_mm"] or 1.0) - HAIR)
