"""A sitting as it counts, out of the entries that name it. Pure."""

from collections.abc import Iterable
from typing import Any, NamedTuple

from webapp.journal.keys import Entry, mark


class Counted(NamedTuple):
    """How a sitting counts: times as the journal writes them, or none."""

    begun: str | None  # of its live begin entry
    closers: int  # live ends and amends
    begin: str | None  # none: it does not count
    end: str | None  # none: it is open, or does not count
    struck: bool


def counted(entries: Iterable[tuple[Entry, bool]]) -> Counted:
    """Work out one sitting from its begin, end and amend entries, each with whether it is cancelled.

    The latest amend holds over any end; for an id without begin it adds a sitting; a cancelled begin takes
    its ends and amends along.
    """
    entries = list(entries)
    begins = [(e, dead) for e, dead in entries if e["kind"] == "begin"]
    begun = next((e["at"] for e, dead in begins if not dead), None)
    live = sorted((e for e, dead in entries if not dead and e["kind"] != "begin"), key=mark)
    amends: list[Any] = [e for e in live if e["kind"] == "amend"]
    struck = bool(amends and amends[-1].get("struck"))
    cancelled = begun is None and bool(begins)
    if struck or cancelled or (begun is None and not amends):
        return Counted(begun, len(live), None, None, struck)
    if amends:
        return Counted(begun, len(live), amends[-1]["begin"], amends[-1]["end"], struck)
    return Counted(begun, len(live), begun, max(begun, live[-1]["at"]) if live and begun else None, struck)
