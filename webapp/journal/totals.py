"""Work out anew what entries touched: each sum, each latest and each sitting by one indexed statement.

Nothing is ever incremented, so what is worked out cannot drift from the entries.
"""

from collections.abc import Iterable, Mapping
from datetime import timedelta
from typing import Any, NamedTuple
from uuid import UUID

from webapp.journal import keys, moments, quarters, statements
from webapp.journal.rows import as_entry
from webapp.journal.sittings import counted
from webapp.journal.statements import Journal

DAY = timedelta(days=1)


class Touched(NamedTuple):
    """What an entry is part of."""

    register: str | None
    tally: str | None
    sitting: UUID | None
    thread: str | None
    quarter: quarters.Key | None

    @classmethod
    def of(cls, row: Mapping[Any, Any]) -> "Touched":
        """Tell what a row is part of, new or undone."""
        quarter = quarters.key(row["tally"], row["at"]) if row["kind"] == "stitches" else None
        return cls(row["register"], row["tally"], row["sitting"], row["thread"], quarter)


def work_out(journal: Journal, revision: int, touched: Iterable[Touched], undone: Iterable[str] = ()) -> None:
    """Work out anew everything that entries are part of, and what undos named of them, at this revision."""
    touched = list(touched)
    for register in sorted({one.register for one in touched if one.register} | set(undone)):
        _latest(journal, revision, register)
    for tally in sorted({one.tally for one in touched if one.tally}):
        _total(journal, revision, tally)
    _threads(journal, {(one.thread, one.tally) for one in touched if one.thread and one.tally})
    for sitting in {one.sitting for one in touched if one.sitting}:
        _sitting(journal, sitting)
    _quarters(journal, {(one.quarter[0], one.tally) for one in touched if one.quarter and one.tally})


def _latest(journal: Journal, revision: int, register: str) -> None:
    found = journal.first(statements.LATEST_OF, register=register)
    if found is not None and register.startswith("undone entry ") and _is_here(journal, register):
        found = None
    says = keys.register(as_entry(found)) if found is not None else None
    values = {
        "at": found.at if found else None,
        "entry": found.id if found else None,
        "value": says[1] if says else True,
        "revision": revision,
    }
    journal.put(statements.latest, {"register": register}, values)


def _is_here(journal: Journal, register: str) -> bool:
    named = UUID(register.rsplit(" ", 1)[1])
    return journal.first(statements.HERE, of_id=named) is not None


def _total(journal: Journal, revision: int, tally: str) -> None:
    sums = journal.first(statements.SUMS, of_tally=tally)
    done = journal.first(statements.HOLDS, of_register=f"done {tally}")
    name, place = tally.split(" ")
    values = {
        "pass": name,
        "kind": keys.kind_of_place(place),
        "stitches": int(sums[0]) if sums else 0,
        "bare": int(sums[1]) if sums else 0,
        "touches": sums[2] if sums else 0,
        "done": bool(done and done.value),
        "revision": revision,
    }
    journal.put(statements.total, {"tally": tally}, values)


def _threads(journal: Journal, touched: set[tuple[str, str]]) -> None:
    """Work out a thread at the places touched, and then all of it out of its places."""
    for thread, tally in sorted(touched):
        at = {"thread": thread, "tally": tally}
        wound = _wound(journal.first(statements.THREAD_SUMS, **_of(at)))
        journal.put(statements.thread_at, at, {"pass": tally.split(" ")[0], **wound})
    for thread, name in sorted({(thread, tally.split(" ")[0]) for thread, tally in touched}):
        key = {"thread": thread, "pass": name}
        wound = _wound(journal.first(statements.THREAD_PLACES, **_of(key)))
        journal.put(statements.thread_total, key, wound)


def _wound(sums: Any) -> dict[str, Any]:
    return dict(zip(("stitches", "spent", "touches"), map(int, sums), strict=True))


def _of(key: Mapping[str, Any]) -> dict[str, Any]:
    return {f"of_{name}": value for name, value in key.items()}


def _sitting(journal: Journal, sitting: UUID) -> None:
    rows = journal.rows(statements.OF_SITTING, of_id=sitting)
    found = counted((as_entry(row), row.cancelled) for row in rows)
    values: dict[str, Any] = {name: _moment(getattr(found, name)) for name in ("begun", "begin", "end")}
    begin, end = values["begin"], values["end"]
    over_a_day = begin is not None and (end is None or end - begin > DAY)
    values |= {"closers": found.closers, "struck": found.struck, "over_a_day": over_a_day}
    journal.put(statements.sitting, {"id": sitting}, values)


def _quarters(journal: Journal, touched: set[tuple[int, str]]) -> None:
    """Work out what was stitched in quarters of an hour: at the places touched, then of all places."""
    for number, tally in sorted(touched):
        begin, last = quarters.bounds(number)
        laid = journal.first(statements.LAID_AT_BETWEEN, of_tally=tally, begin=begin, last=last)
        key = {"quarter": number, "tally": tally}
        journal.put(statements.quarter_at, key, {"pass": tally.split(" ")[0], "stitches": _sum(laid)})
    for number, name in sorted({(number, tally.split(" ")[0]) for number, tally in touched}):
        key = {"quarter": number, "pass": name}
        laid = journal.first(statements.LAID_IN_QUARTER, **_of(key))
        journal.put(statements.quarter, key, {"stitches": _sum(laid)})


def _sum(laid: Any) -> int:
    return int(laid[0])


def _moment(text: str | None) -> Any:
    return moments.read(text) if text else None
