"""What the lines of her legends have to do with each thread: estimated, and what of it is to come."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass, field
from typing import Any
from uuid import UUID

from sqlalchemy import select

from webapp.db import db
from webapp.projects.models import Project
from webapp.threads import lasting, spending
from webapp.threads.called import Thread, alike
from webapp.threads.estimate import Counts, Estimate, Own, Range, Worked, estimate
from webapp.threads.geometry import Ground, ground_of
from webapp.threads.kinds import worked
from webapp.threads.models import LegendLine
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
    stitcher: UUID, of: Collection[UUID] | None = None, named: Collection[str] | None = None
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
    sums = spending.laid_and_spent(stitcher)
    return [
        use
        for line, project in db.session.execute(query)
        if named is None or {alike(part.get("instead") or part["thread"]) for part in line.parts} & set(named)
        for use in of_line(project, line, sums.get((project.id, line.key), {}))
    ]


def together(stitcher: UUID, of: Collection[UUID]) -> tuple[list[Use], list[Use]]:
    """List what some projects use, and all that has to do with the same threads, theirs included."""
    theirs = uses(stitcher, of)
    same = uses(stitcher, named={use.thread[0] for use in theirs})
    threads = {use.thread for use in theirs}
    return theirs, [use for use in same if use.thread in threads]


def of_line(project: Project, line: LegendLine, sums: Sums, own: Own | None = None) -> Iterator[Use]:
    """Give what one line uses of each of its parts; nothing where it cannot be estimated."""
    ground = ground_of(project.count, project.over, project.across)
    counts = Counts(**{name: getattr(line, name) for name in Counts._fields})
    try:
        hows = worked(kinds(), [(p["kind"], p["strands"]) for p in line.parts], line.method, line.working)
        for n, (part, how) in enumerate(zip(line.parts, hows, strict=True)):
            yield _use(project, line, n, part, how, (ground, counts, own), sums)
    except ValueError:
        return


def _use(
    project: Project,
    line: LegendLine,
    n: int,
    part: dict[str, Any],
    how: Worked,
    on: tuple[Ground, Counts, Own | None],
    sums: Sums,
) -> Use:
    ground, counts, own = on
    kind = kinds()[part["kind"]]
    takes = estimate(ground, counts, how, kind, line.patches, line.scatter, own)
    return Use(
        project=project,
        line=line,
        part=n,
        name=part.get("instead") or part["thread"],
        printed=part["thread"],
        kind=part["kind"],
        lots=tuple(part.get("lots") or ()),
        takes=takes,
        each=_as_sold(takes, how, kind),
        worth=lasting.worth(counts, ground, how, kind["sold"]),
        still=lasting.still(counts, {one: laid for one, (laid, _spent) in sums.items()}),
        spent=sums,
    )


def _as_sold(takes: Estimate, how: Worked, kind: dict[str, Any]) -> Range:
    if kind["sold"] == "bead":
        return Range(1.0, 1.0, max(1.0, takes.sold.high / takes.sold.usual) if takes.sold.usual else 1.0)
    return Range(*(mm * how.strands / kind["strands"] for mm in takes.each))
