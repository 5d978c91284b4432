"""What the lines of her legends have to do with each thread: estimated, and what of it is to come."""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field
from uuid import UUID

from sqlalchemy import select

from webapp.db import db
from webapp.projects.models import Project
from webapp.threads import lasting, spending
from webapp.threads.called import Thread, alike
from webapp.threads.estimate import Estimate, Own, Range
from webapp.threads.legend_kept import ground, legend, line_of
from webapp.threads.legend_needs import Need, needs
from webapp.threads.models import LegendLine
from webapp.threads.own_figure import own_of
from webapp.threads.tables import kinds

Who = tuple[UUID, int]  # the id of a line, and which of its parts
Sums = dict[str, tuple[int, int]]  # by pass: laid, spent


@dataclass(frozen=True)
class Use:
    """One thread of one line: what it takes, whole, and what of that is still to come."""

    project: Project
    line: LegendLine
    part: int
    name: str  # what she uses
    printed: str  # what the pattern says
    kind: str
    lots: tuple[str, ...]
    takes: Estimate
    each: Range  # mm of one cross, as it is sold
    worth: dict[str, float]  # by pass, in crosses, whole
    still: dict[str, float]  # by pass, the share to come
    spent: Sums = field(default_factory=dict)

    @property
    def who(self) -> Who:
        """Tell it from every other."""
        return self.line.id, self.part

    @property
    def of(self) -> spending.Of:
        """Name its line as the journal does."""
        return self.project.id, self.line.key

    @property
    def thread(self) -> Thread:
        """Name its thread, so that those are the same which are meant to be."""
        return alike(self.name), self.kind

    @property
    def line_counts(self) -> dict[str, int]:
        """Count the stitches of its line by pass."""
        return {one: sum(getattr(self.line, what) for what in named) for one, named in lasting.PASSES.items()}

    @property
    def rates(self) -> dict[str, float]:
        """Give for each pass how many crosses one of its stitches comes to."""
        many = self.line_counts
        return {one: self.worth[one] / many[one] if many[one] else 1.0 for one in self.worth}

    @property
    def gone(self) -> float:
        """Give how many crosses all that it was spent on comes to."""
        return sum(self.rates[one] * max(0, spent) for one, (_laid, spent) in self.spent.items())

    @property
    def used(self) -> Range:
        """Give how much of it is used, mm as it is sold."""
        return Range(*(mm * self.gone for mm in self.each))

    @property
    def left(self) -> float:
        """Give how many crosses all that is still to be laid comes to."""
        return sum(self.worth[one] * self.still[one] for one in self.worth)

    @property
    def others(self) -> float:
        """Give the part of ``left`` that is no crosses."""
        return self.left - self.worth["cross"] * self.still["cross"]

    @property
    def to_come(self) -> tuple[float, float]:
        """Give what is still needed, mm as it is sold, least and most."""
        share = lasting.to_come(self.worth, self.still)
        return self.takes.sold.low * share, self.takes.sold.high * share


def uses(
    stitcher: UUID,
    sums: Mapping[spending.Of, Sums],
    of: Collection[UUID] | None = None,
    named: Collection[str] | None = None,
) -> list[Use]:
    """List what lines of her projects use: of some of them alone, or of threads of some names (``alike``)."""
    query = (
        select(LegendLine, Project)
        .join(Project, (Project.stitcher == LegendLine.stitcher) & (Project.id == LegendLine.project))
        .where(LegendLine.stitcher == stitcher)
        .order_by(Project.created, Project.id, LegendLine.position, LegendLine.id)
    )
    if of is not None:
        query = query.where(Project.id.in_(list(of)))
    owns: dict[UUID, Own | None] = {}
    found: list[Use] = []
    for row, project in db.session.execute(query):
        line = line_of(row)
        if named is None or {alike(part.used) for part in line.parts} & set(named):
            if project.id not in owns:
                owns[project.id] = own_of(project)
            found += of_line(project, row, sums.get((project.id, row.key), {}), owns[project.id])
    return found


def together(stitcher: UUID, of: Collection[UUID]) -> tuple[list[Use], list[Use]]:
    """List what some projects use, and all that has to do with the same threads, theirs included."""
    sums = spending.laid_and_spent(stitcher)
    theirs = uses(stitcher, sums, of)
    same = uses(stitcher, sums, named={use.thread[0] for use in theirs})
    threads = {use.thread for use in theirs}
    return theirs, [use for use in same if use.thread in threads]


def using(stitcher: UUID, names: Iterable[str]) -> list[Project]:
    """List her projects that use threads of these names, whatever their case."""
    wanted = {alike(name) for name in names}
    query = (
        select(Project, LegendLine.parts)
        .join(Project, (Project.stitcher == LegendLine.stitcher) & (Project.id == LegendLine.project))
        .where(LegendLine.stitcher == stitcher, Project.put_away.is_(None))
        .order_by(Project.created, Project.id)
    )
    rows = db.session.execute(query)
    found = [
        project for project, parts in rows if {alike(p["instead"] or p["thread"]) for p in parts} & wanted
    ]
    return list(dict.fromkeys(found))


def sharing(project: Project) -> list[Project]:
    """List her other projects that use a thread of this one's."""
    names = {part.used for row in legend(project) for part in line_of(row).parts}
    return [one for one in using(project.stitcher, names) if one.id != project.id]


def of_line(project: Project, row: LegendLine, sums: Sums, own: Own | None = None) -> list[Use]:
    """Give what one line uses of each of its threads; nothing where it cannot be estimated."""
    line, on = line_of(row), ground(project)
    try:
        found = needs(line, on, kinds(), own)
    except ValueError:
        return []
    still = lasting.still(line.counts, {one: laid for one, (laid, _spent) in sums.items()})
    return [
        Use(
            project=project,
            line=row,
            part=n,
            name=one.part.used,
            printed=one.part.thread,
            kind=one.part.kind,
            lots=one.part.lots,
            takes=one.takes,
            each=_as_sold(one),
            worth=lasting.worth(line.counts, on, one.worked, kinds()[one.part.kind]["sold"]),
            still=still,
            spent=sums,
        )
        for n, one in enumerate(found)
    ]


def _as_sold(one: Need) -> Range:
    takes, kind = one.takes, kinds()[one.part.kind]
    if kind["sold"] == "bead":
        return Range(1.0, 1.0, max(1.0, takes.sold.high / takes.sold.usual) if takes.sold.usual else 1.0)
    return Range(*(mm * one.worked.strands / kind["strands"] for mm in takes.each))
