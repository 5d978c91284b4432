"""How far the thread at hand reaches for a project: gathered from her stash, her readings and the journal.

A thread is shared between the lines of the project and of her other projects in hand or resting; one that is
only planned has no claim yet (the shopping list sees to it), one that is finished none any more.
"""

from collections import defaultdict
from dataclasses import dataclass
from uuid import UUID

from sqlalchemy import select

from webapp.db import db
from webapp.projects.models import Project
from webapp.threads import amounts, lasting, spending, stash
from webapp.threads.called import Thread, goes_to
from webapp.threads.lasting import Kept, Lasting, Said, User
from webapp.threads.models import KeptThread, LegendLine, ThreadReading
from webapp.threads.tables import kinds
from webapp.threads.uses import Use, Who, together

CLAIMING = ("in hand", "resting")


@dataclass(frozen=True)
class AtHand:
    """What there is of one thread: what was said of it, what it comes to now, in mm as sold, and its lots."""

    said: list[Said]
    now: tuple[float, float]
    users: dict[Who, User]
    lots: tuple[str, ...]

    @property
    def short(self) -> float:
        """Give how much more makes it sure for all that use it, mm."""
        return lasting.short(self.now, self.users.values())


@dataclass(frozen=True)
class Reach:
    """How far a line comes, in all and by its threads."""

    line: LegendLine
    lasts: Lasting | None
    parts: list[tuple[Use, Lasting | None, AtHand | None]]
    others: list[str]  # what else uses its thread: symbols or names of lines here, titles of projects


def of(project: Project) -> dict[str, list[int]]:
    """Give for each line, by its key, to how many spent crosses its thread reaches: surely, perhaps."""
    found = {one.line.key: one.lasts for one in reaching(project) if one.line.full}
    return {key: list(lasts.crosses) for key, lasts in found.items() if lasts}


def reaching(project: Project) -> list[Reach]:
    """Tell of each line of a project how far its thread reaches."""
    mine, everything = together(project.stitcher, {project.id})
    hands = at_hand(project.stitcher, everything, project.id)
    shares: dict[Who, Lasting] = {}
    for hand in hands.values():
        shares |= lasting.shared(hand.now, list(hand.users.values()))
    caps = _caps(project, mine)
    by_line: dict[UUID, list[Use]] = defaultdict(list)
    for use in mine:
        by_line[use.line.id].append(use)
    return [_reach(of_line, hands, shares, caps, everything) for of_line in by_line.values()]


def _reach(
    of_line: list[Use],
    hands: dict[Thread, AtHand],
    shares: dict[Who, Lasting],
    caps: dict[Who, Lasting],
    everything: list[Use],
) -> Reach:
    parts = []
    for use in of_line:
        known = [one for one in (shares.get(use.who), caps.get(use.who)) if one]
        parts.append((use, min(known, key=lambda one: one.crosses, default=None), hands.get(use.thread)))
    line = of_line[0].line
    threads = {use.thread for use in of_line}
    rest = [use for use in everything if use.thread in threads and use.line.id != line.id and use.left]
    claims = [use for use in rest if _claims(use, line.project)]
    names = [_named(use, line) for use in claims]
    lasts = lasting.shortest([one for _use, one, _hand in parts])
    return Reach(line, lasts, parts, list(dict.fromkeys(names)))


def _claims(use: Use, project: UUID | None) -> bool:
    """Tell whether a line has a claim on its thread, ``project`` being asked about."""
    return use.project.id == project or (use.project.state in CLAIMING and use.project.put_away is None)


def _named(use: Use, beside: LegendLine) -> str:
    if use.project.id == beside.project:
        return use.line.symbol or use.line.key
    return use.project.title


def at_hand(stitcher: UUID, using: list[Use], project: UUID | None = None) -> dict[Thread, AtHand]:
    """Give what there is of each thread of which anything was said.

    project: claims a share though it may only be planned.
    """
    kept, lots = _kept(stitcher, {use.thread for use in using})
    readings = _readings(stitcher, using)
    of_thread: dict[Thread, list[Use]] = defaultdict(list)
    for use in using:
        of_thread[use.thread].append(use)
    said = {one: lasting.said(kept[one], readings[one]) for one in of_thread if kept[one] or readings[one]}
    first = min((one.at for all_said in said.values() for one in all_said), default=None)
    spent = spending.since(stitcher, first, {use.of for one in said for use in of_thread[one]})
    found = {}
    for thread, all_said in said.items():
        users = {use.who: _user(use, all_said, spent[use.of], project) for use in of_thread[thread]}
        now = lasting.at_hand(all_said, list(users.values()))
        marks = lots[thread].union(*(use.lots for use in of_thread[thread]))
        found[thread] = AtHand(all_said, now, users, tuple(sorted(marks)))
    return found


def _user(use: Use, all_said: list[Said], spent: list[spending.Spent], project: UUID | None) -> User:
    since = tuple(sum(use.rates[e.pass_] * e.by for e in spent if e.at > one.at) for one in all_said)
    claims = _claims(use, project)
    crosses = use.spent.get("cross", (0, 0))[1]
    return User(use.who, use.each, use.left if claims else 0.0, use.others if claims else 0.0, crosses, since)


def _kept(stitcher: UUID, wanted: set[Thread]) -> tuple[dict[Thread, list[Kept]], dict[Thread, set[str]]]:
    found: dict[Thread, list[Kept]] = defaultdict(list)
    lots: dict[Thread, set[str]] = defaultdict(set)
    for one in stash.kept(stitcher):
        thread = goes_to(one.thread, one.kind, wanted, kinds())
        if thread:
            found[thread].append(Kept(one.created, one.counted, mm_of(one)))
            lots[thread] |= {one.lot} - {""}
    return found, lots


def mm_of(one: KeptThread) -> float:
    """Give all there is of a thread of the stash in mm as it is sold; of beads their number."""
    return amounts.as_sold(one.skeins, one.lengths, kinds()[one.kind])


def _readings(stitcher: UUID, using: list[Use]) -> dict[Thread, list[Said]]:
    """Give what she said is left, by thread; of a blend it is said of that line alone: see ``_caps``."""
    lone = {use.line.id: use.thread for use in using if len(use.line.parts) == 1}
    found: dict[Thread, list[Said]] = defaultdict(list)
    query = select(ThreadReading).where(ThreadReading.stitcher == stitcher, ThreadReading.what == "left")
    for one in db.session.scalars(query):
        if one.line in lone:
            found[lone[one.line]].append(Said(one.made, one.length))
    return found


def _caps(project: Project, mine: list[Use]) -> dict[Who, Lasting]:
    """Say how far blends come by what she said is left of them: of the part that is shortest, so of each."""
    last: dict[UUID | None, Said] = {}
    query = select(ThreadReading).where(
        ThreadReading.stitcher == project.stitcher,
        ThreadReading.project == project.id,
        ThreadReading.what == "left",
    )
    for one in db.session.scalars(query):
        last[one.line] = max(last.get(one.line, Said(one.made, one.length)), Said(one.made, one.length))
    blends = [use for use in mine if len(use.line.parts) > 1 and use.line.id in last]
    first = min((last[use.line.id].at for use in blends), default=None)
    spent = spending.since(project.stitcher, first, {use.of for use in blends})
    found = {}
    for use in blends:
        said = [last[use.line.id]]
        user = _user(use, said, spent[use.of], project.id)
        found[use.who] = lasting.lasting(lasting.at_hand(said, [user]), user)
    return found
