"""The snapshot of one project, by a few indexed statements: what ``whole.py`` says of all its entries."""

from collections.abc import Callable
from typing import Any
from uuid import UUID

from sqlalchemy import ColumnElement, Select, Uuid, and_, case, func, literal, select, text, tuple_

from webapp.db import UTCDateTime, db
from webapp.house import house_id
from webapp.journal import fold, keys, moments, whole
from webapp.journal.models import Entry, Latest, Sitting, Standing, Total
from webapp.journal.rows import as_entry
from webapp.projects.models import Project

PLAN = (
    "title", "width", "height", "count", "over", "state", "working", "direction", "first_row", "start_column",
    "start_way", "expected", "block_from", "block_way", "step", "frame",
)  # fmt: skip


def plan_of(project: Project) -> dict[str, Any]:
    """Give what the phone must know of a project to go on with it."""
    return {"revision": project.plan_revision, **{name: getattr(project, name) for name in PLAN}}


def revision_of(stitcher: UUID, project: UUID) -> int:
    """Count the project's entries."""
    standing = db.session.get(Standing, (stitcher, project))
    return standing.revision if standing else 0


def snapshot_of(stitcher: UUID, project_id: UUID, known: int = 0) -> dict[str, Any]:
    """Draw up the snapshot of her project; with ``known``, only the places changed since that revision."""
    project = db.session.get(Project, (stitcher, project_id))
    if project is None:
        raise LookupError("no such project of hers")
    revision = revision_of(stitcher, project_id)
    return Snapshot(project, revision, known if 0 < known <= revision else 0).draw()


class Snapshot:
    """One drawing of a snapshot."""

    def __init__(self, project: Project, revision: int, since: int) -> None:
        self.project, self.revision, self.since = project, revision, since

    def of(self, table: type[Entry] | type[Total] | type[Latest] | type[Sitting]) -> ColumnElement[bool]:
        """Name the rows of this project."""
        return and_(table.stitcher == self.project.stitcher, table.project == self.project.id)

    def draw(self) -> dict[str, Any]:
        """Draw it up."""
        tail = self.tail()
        first = (moments.read(tail[0]["at"]), UUID(tail[0]["id"])) if tail else None
        hand, frames = self.hand_before(first), self.frames_before(first)
        plan = plan_of(self.project)
        hands = fold.latest_hands(hand, tail)
        row, block = fold.in_hand(plan, hands, self.is_done())
        totals, sittings = self.totals(), self.sittings(tail)
        return {
            "project": str(self.project.id),
            "house": str(house_id()),
            "revision": self.revision,
            "since": self.since,
            "row": row,
            "row_stitches": None if row is None else self.stitches_at(str(row)),
            "block": block,
            "block_stitches": None if block is None else self.stitches_at("{}.{}".format(*block)),
            **self.counts(),
            "rows": places(totals, block=False),
            "blocks": places(totals, block=True),
            "frame": fold.frame([*frames, *fold.frame_marks(tail)]),
            "sitting": fold.open_sitting(sittings),
            "note": self.note(),
            "plan": plan,
            "sums": {t.tally: [t.stitches, t.bare, t.touches] if t.touches else None for t in totals},
            "latest": self.latest(),
            "tail": self.with_replaced(tail),
            "hand": hand,
            "frames": frames,
            "sittings": sittings,
            "partial": self.partial(tail),
        }

    def tail(self) -> list[dict[str, Any]]:
        """List the last live entries, oldest first, and the whole of the last one's act."""
        live = select(Entry).where(self.of(Entry), ~Entry.cancelled, Entry.kind != "undo")
        newest_first = live.order_by(Entry.at.desc(), Entry.id.desc())
        rows = list(db.session.scalars(newest_first.limit(whole.TAIL)))
        if rows and rows[0].act:
            of_act = live.where(Entry.act == rows[0].act).order_by(Entry.at, Entry.id).limit(1)
            first = db.session.scalars(of_act).one()
            longer = newest_first.where(tuple_(Entry.at, Entry.id) >= as_mark((first.at, first.id)))
            longer_rows = list(db.session.scalars(longer.limit(whole.LONGEST_TAIL + 1)))
            if len(rows) < len(longer_rows) <= whole.LONGEST_TAIL:
                rows = longer_rows
        return [as_entry(row) for row in reversed(rows)]

    def hand_before(self, first: tuple[Any, UUID] | None) -> dict[str, Any]:
        """Find the latest row and block she worked before the tail."""
        if first is None:
            return dict(fold.NOTHING["hand"])
        found = [
            db.session.scalars(self.latest_before(first).where(Entry.hand == which).limit(1)).first()
            for which in ("row", "block")
        ]
        return fold.latest_hands(fold.NOTHING["hand"], [as_entry(row) for row in found if row])

    def latest_before(self, first: tuple[Any, UUID]) -> Select[Entry]:
        """Select what is live before the tail, latest first."""
        before = tuple_(Entry.at, Entry.id) < as_mark(first)
        return (
            select(Entry)
            .where(self.of(Entry), ~Entry.cancelled, before)
            .order_by(Entry.at.desc(), Entry.id.desc())
        )

    def frames_before(self, first: tuple[Any, UUID] | None) -> list[Any]:
        """List the frame entries before the tail that can still decide: see ``whole.last_run``."""
        if first is None:
            return []
        frames = self.latest_before(first).where(Entry.kind == "frame")
        state = Entry.fields["state"].as_string()
        rows = list(db.session.scalars(frames.limit(whole.LONGEST_RUN + 1)))
        if not rows:
            return []
        other = state != "off" if rows[0].fields["state"] == "off" else state == "off"
        turn = db.session.scalars(frames.where(other).limit(1)).first()
        run = select(Entry).where(self.of(Entry), ~Entry.cancelled, Entry.kind == "frame")
        if turn is not None:
            run = run.where(tuple_(Entry.at, Entry.id) > as_mark((turn.at, turn.id)))
            rows = [row for row in rows if (row.at, row.id) > (turn.at, turn.id)]
        begun = db.session.scalars(run.order_by(Entry.at, Entry.id).limit(1)).one()
        later = [row for row in reversed(rows) if row.id != begun.id][-whole.LONGEST_RUN :]
        return fold.frame_marks(as_entry(row) for row in ([turn] if turn else []) + [begun, *later])

    def is_done(self) -> Callable[[str], bool]:
        """Tell of a place whether it is done; all are read at once if more than one is asked for."""
        asked: dict[str, bool] = {}

        def ask(place: str) -> bool:
            if not asked:
                one = select(Total.done).where(self.of(Total), Total.tally == f"cross {place}")
                asked[place] = bool(db.session.scalar(one))
            elif place not in asked and "" not in asked:
                done = select(Total.tally).where(self.of(Total), Total.done, Total.tally.startswith("cross "))
                asked.update({"": True} | {tally[6:]: True for tally in db.session.scalars(done)})
            return asked.get(place, False)

        return ask

    def stitches_at(self, place: str) -> int:
        """Sum the crosses at one place."""
        at = select(Total.stitches).where(self.of(Total), Total.tally == f"cross {place}")
        return db.session.scalar(at) or 0

    def counts(self) -> dict[str, Any]:
        """Count what is laid and done, over all places, by pass."""
        done = func.coalesce(func.sum(case((Total.done, 1), else_=0)), 0)
        summed = select(Total.pass_, Total.kind, func.sum(Total.stitches), done).where(
            self.of(Total), Total.touches > 0
        )
        found = {
            (row[0], row[1]): (int(row[2]), int(row[3]))
            for row in db.session.execute(summed.group_by(Total.pass_, Total.kind))
        }
        passes: dict[str, Any] = {}
        for (name, kind), (stitches, ticked) in found.items():
            one = passes.setdefault(name, {"stitches": 0, "done": False})
            one["stitches"] += stitches
            one["done"] = one["done"] or (kind == "whole" and ticked > 0)
        return {
            "stitches": passes.pop("cross", {"stitches": 0})["stitches"],
            "rows_done": found.get(("cross", "row"), (0, 0))[1],
            "blocks_done": found.get(("cross", "block"), (0, 0))[1],
            "passes": passes,
        }

    def totals(self) -> list[Total]:
        """List the totals of every place touched, or of those that changed since."""
        changed = Total.revision > self.since if self.since else Total.touches > 0
        return list(db.session.scalars(select(Total).where(self.of(Total), changed)))

    def latest(self) -> dict[str, Any]:
        """List what holds, or what of it changed since."""
        changed = Latest.revision > self.since if self.since else Latest.at.is_not(None)
        rows = db.session.scalars(select(Latest).where(self.of(Latest), changed))
        return {
            row.register: [moments.write(row.at), str(row.entry), row.value] if row.at else None
            for row in rows
        }

    def note(self) -> dict[str, str] | None:
        """Give the line on where she stopped."""
        held = db.session.get(Latest, (self.project.stitcher, self.project.id, "note"))
        return {"text": held.value, "at": moments.write(held.at)} if held and held.at else None

    def sittings(self, tail: list[dict[str, Any]]) -> dict[str, Any]:
        """List the sittings that are open, or not begun as far as is known, or in the tail."""
        named = {
            UUID(e["id"] if e["kind"] == "begin" else e["sitting"])
            for e in tail
            if e["kind"] in ("begin", "end", "amend")
        }
        query = select(Sitting.id, Sitting.begun, Sitting.closers)
        open_ones = text("(begun IS NULL) != (closers = 0)")
        rows = list(db.session.execute(query.where(self.of(Sitting), open_ones)))
        if named:
            rows += db.session.execute(query.where(self.of(Sitting), Sitting.id.in_(named)))
        return {str(row.id): [moments.write(row.begun) if row.begun else None, row.closers] for row in rows}

    def with_replaced(self, tail: list[dict[str, Any]]) -> list[dict[str, Any]]:
        """Give the tail, each entry with what held before it of the thing it decides."""
        held: dict[str, Any] = {}
        shown = []
        for entry in tail:
            found = keys.register(entry)
            if found and found[0] not in held:
                held[found[0]] = self.before(found[0], entry)
            replaced = held[found[0]] if found else None
            shown.append({**entry, "replaced": replaced} if replaced else entry)
            if found:
                held[found[0]] = [*keys.mark(entry), found[1]]
        return shown

    def before(self, register: str, entry: dict[str, Any]) -> list[Any] | None:
        """Find what held of one thing before an entry of the tail."""
        named = self.latest_before((moments.read(entry["at"]), UUID(entry["id"])))
        row = db.session.scalars(named.where(Entry.register == register).limit(1)).first()
        says = keys.register(as_entry(row)) if row else None
        return [*keys.mark(as_entry(row)), says[1]] if row and says else None

    def partial(self, tail: list[dict[str, Any]]) -> list[str]:
        """List the acts of the tail that reach back beyond it."""
        counted: dict[str, int] = {}
        for entry in tail:
            if "act" in entry:
                counted[entry["act"]] = counted.get(entry["act"], 0) + 1
        if not counted:
            return []
        live = select(Entry.act, func.count()).where(self.of(Entry), ~Entry.cancelled, Entry.kind != "undo")
        of_acts = live.where(Entry.act.in_([UUID(act) for act in counted])).group_by(Entry.act)
        return sorted(str(act) for act, number in db.session.execute(of_acts) if number > counted[str(act)])


def places(totals: list[Total], *, block: bool) -> dict[str, Any]:
    """Give the crosses of rows, or of blocks, by place; none for a place that is no longer touched."""
    kind = "block" if block else "row"
    return {
        t.tally[6:]: {"stitches": t.stitches, "done": t.done} if t.touches else None
        for t in totals
        if t.pass_ == "cross" and t.kind == kind
    }


def as_mark(mark: tuple[Any, UUID]) -> Any:
    """Write a mark so that it can stand beside the columns (at, id)."""
    return tuple_(literal(mark[0], UTCDateTime()), literal(mark[1], Uuid()))
