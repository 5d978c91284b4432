"""Entries between the journal's form and the table's rows."""

from datetime import datetime
from typing import Any
from uuid import UUID

from webapp.journal import keys, moments
from webapp.journal.models import Entry

Row = dict[str, Any]


def as_row(stitcher: UUID, read: dict[str, Any], offset_ms: int) -> Row:
    """Make a row of an entry that was read, its time corrected by the phone's offset."""
    own = {k: _written(v) for k, v in read.items() if k not in ("id", "kind", "project", "at")}
    entry = {"id": read["id"], "kind": read["kind"], **own}
    found = keys.register(entry)
    undo = entry["kind"] == "undo"
    return {
        "stitcher": stitcher,
        "id": UUID(read["id"]),
        "project": UUID(read["project"]),
        "kind": read["kind"],
        "at": moments.corrected(read["at"], offset_ms),
        "said": read["at"],
        "fields": own,
        "by": own.get("by"),
        "tally": keys.tally(entry),
        "register": found[0] if found else keys.undoes(entry),
        "hand": keys.hand(entry),
        "sitting": _sitting(entry),
        "thread": keys.thread(entry),
        "spent": keys.spent(entry) if keys.thread(entry) else None,
        "act": UUID(own["act"]) if "act" in own and not undo else None,
        "cancelled": False,
    }


def as_entry(row: Entry | Any) -> dict[str, Any]:
    """Give a row back in the journal's form, with the corrected time."""
    own = {"id": str(row.id), "kind": row.kind, "project": str(row.project), "at": moments.write(row.at)}
    return {**own, **row.fields}


def _written(value: Any) -> Any:
    return moments.write(value) if isinstance(value, datetime) else value


def _sitting(entry: dict[str, Any]) -> UUID | None:
    named = entry["id"] if entry["kind"] == "begin" else entry.get("sitting")
    return UUID(named) if named else None
