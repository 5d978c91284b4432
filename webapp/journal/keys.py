"""What an entry is part of: pure, and the same in ``static/js/journal/keys.js``.

The server keeps these beside each entry, and works out anew only what they name.
"""

from collections.abc import Mapping
from typing import Any

Entry = Mapping[str, Any]
Mark = tuple[str, str]  # (at, id)


def place_of(entry: Entry) -> str:
    """Name the entry's place: "37" for a row, "3.2" for a block, "" where it was left out."""
    if entry.get("block") is not None:
        return "{}.{}".format(*entry["block"])
    return "" if entry.get("row") is None else str(entry["row"])


def kind_of_place(place: str) -> str:
    """Tell what a place's name names: "row", "block", or "whole" where it was left out."""
    return "whole" if place == "" else "block" if "." in place else "row"


def tally(entry: Entry) -> str | None:
    """Name the sum the entry is part of, as "cross 37"; none if of none."""
    if entry["kind"] not in ("stitches", "bare", "done", "start"):
        return None
    return f"{entry.get('pass') or 'cross'} {place_of(entry)}"


def register(entry: Entry) -> tuple[str, Any] | None:
    """Name the thing of which only the latest holds, and what the entry says of it; none if of none."""
    kind = entry["kind"]
    if kind == "done":
        return f"done {tally(entry)}", entry["done"]
    if kind == "start":
        return f"start {entry['row']}", {"column": entry["column"], "way": entry["way"]}
    if kind == "have":
        return f"have {entry['thread']}", entry["have"]
    return ("note", entry["note"]) if kind == "end" and entry.get("note") is not None else None


def thread(entry: Entry) -> str | None:
    """Name the thread the entry's stitches are of; none if it does not say, or lays none."""
    return (entry.get("thread") or None) if entry["kind"] == "stitches" else None


def spent(entry: Entry) -> int:
    """Count the stitches that thread was spent on: unpicked it stays spent, others spend none here."""
    return int(entry["by"]) if entry["kind"] == "stitches" and entry.get("why") in (None, "stitched") else 0


def undoes(entry: Entry) -> str | None:
    """Name what an undo cancels, as "undone entry …" or "undone act …"; none for other entries."""
    if entry["kind"] != "undo":
        return None
    return f"undone act {entry['act']}" if entry.get("entry") is None else f"undone entry {entry['entry']}"


def hand(entry: Entry) -> str | None:
    """Tell whether the entry says at which "row" or "block" her hand is; none if neither."""
    if entry["kind"] not in ("stitches", "bare", "done") or (entry.get("pass") or "cross") != "cross":
        return None
    return "block" if entry.get("block") is not None else "row"


def mark(entry: Entry) -> Mark:
    """Give what decides between entries: the later, and of two at once the greater id."""
    return entry["at"], entry["id"]
