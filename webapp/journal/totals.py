"""Work out anew what entries touched: each sum, each latest and each sitting by one indexed statement.

Nothing is ever incremented, so what is worked out cannot drift from the entries.
"""

from collections.abc import Iterable
from typing import Any, NamedTuple
from uuid import UUID

from sqlalchemy import ColumnElement, and_, case, func, insert, select, update

from webapp.db import Base, db
from webapp.journal import keys, moments
from webapp.journal.models import Entry, Latest, Sitting, Total
from webapp.journal.rows import Row, as_entry
from webapp.journal.sittings import counted


class Touched(NamedTuple):
    """What an entry is part of."""

    register: str | None
    tally: str | None
    sitting: UUID | None

    @classmethod
    def of(cls, row: Row) -> "Touched":
        """Tell what a new row is part of."""
        return cls(row["register"], row["tally"], row["sitting"])


class Totals:
    """The totals of one project, at the revision now being written."""

    def __init__(self, stitcher: UUID, project: UUID, revision: int) -> None:
        self.stitcher, self.project, self.revision = stitcher, project, revision

    def work_out(self, rows: Iterable[Touched], undone: Iterable[str] = ()) -> None:
        """Work out anew everything that these entries are part of, and what undos named of them."""
        rows = list(rows)
        for register in sorted({row.register for row in rows if row.register} | set(undone)):
            self._latest(register)
        for key in sorted({row.tally for row in rows if row.tally}):
            self._total(key)
        for sitting in {row.sitting for row in rows if row.sitting}:
            self._sitting(sitting)

    def _of(self, table: type[Entry] | type[Total] | type[Latest] | type[Sitting]) -> ColumnElement[bool]:
        return and_(table.stitcher == self.stitcher, table.project == self.project)

    def _latest(self, register: str) -> None:
        named = (self._of(Entry), Entry.register == register, ~Entry.cancelled)
        found = db.session.execute(
            select(Entry).where(*named).order_by(Entry.at.desc(), Entry.id.desc()).limit(1)
        ).scalar_one_or_none()
        if found is not None and register.startswith("undone entry ") and self._has(register):
            found = None
        says = keys.register(as_entry(found)) if found is not None else None
        self._put(
            Latest,
            {"register": register},
            at=found.at if found else None,
            entry=found.id if found else None,
            value=says[1] if says else True,
            revision=self.revision,
        )

    def _has(self, register: str) -> bool:
        named = UUID(register.rsplit(" ", 1)[1])
        return db.session.scalar(select(Entry.id).where(self._of(Entry), Entry.id == named)) is not None

    def _total(self, key: str) -> None:
        def by(kind: str) -> ColumnElement[int]:
            return func.coalesce(func.sum(case((Entry.kind == kind, Entry.by))), 0)

        named = (self._of(Entry), Entry.tally == key, ~Entry.cancelled)
        sums = db.session.execute(select(by("stitches"), by("bare"), func.count()).where(*named)).one()
        done = db.session.scalar(
            select(Latest.value).where(
                self._of(Latest), Latest.register == f"done {key}", Latest.at.is_not(None)
            )
        )
        self._put(
            Total,
            {"tally": key},
            pass_=key.split(" ")[0],
            kind=keys.kind_of_place(key.split(" ")[1]),
            stitches=int(sums[0]),
            bare=int(sums[1]),
            touches=sums[2],
            done=bool(done),
            revision=self.revision,
        )

    def _sitting(self, sitting: UUID) -> None:
        rows = db.session.scalars(select(Entry).where(self._of(Entry), Entry.sitting == sitting))
        found = counted((as_entry(row), row.cancelled) for row in rows)
        times = {name: _moment(getattr(found, name)) for name in ("begun", "begin", "end")}
        self._put(Sitting, {"id": sitting}, closers=found.closers, struck=found.struck, **times)

    def _put(self, table: type[Base], key: dict[str, Any], **values: Any) -> None:
        key = {"stitcher": self.stitcher, "project": self.project, **key}
        named = and_(*(getattr(table, name) == value for name, value in key.items()))
        if not db.session.connection().execute(update(table).where(named).values(values)).rowcount:
            db.session.execute(insert(table).values({**key, **values}))


def _moment(text: str | None) -> Any:
    return moments.read(text) if text else None
