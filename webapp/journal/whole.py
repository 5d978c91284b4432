"""The snapshot out of all entries at once: what the server's indexed statements must come to.

Pure. ``evenrow audit`` holds the two against each other.
"""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from webapp.journal.fold import (
    NOTHING,
    count_in,
    fold,
    frame_marks,
    is_undone,
    latest_hands,
    raise_latest,
    sitting_states,
    undone_by,
)
from webapp.journal.keys import Entry, mark, register, undoes

TAIL = 50
LONGEST_TAIL = 1_000
LONGEST_RUN = 100


def snapshot(plan: Mapping[str, Any], entries: Iterable[Entry]) -> dict[str, Any]:
    """Work out a whole snapshot, to go on from by ``advance``, from all entries of a project."""
    unique = {e["id"]: e for e in reversed(list(entries))}
    undos = [e for e in unique.values() if e["kind"] == "undo"]
    undone = undone_by(NOTHING, undos)
    live = sorted((e for e in unique.values() if e["kind"] != "undo" and not is_undone(e, undone)), key=mark)
    split = _tail_start(live)
    before, tail = live[:split], live[split:]
    sums: dict[str, list[int]] = {}
    for entry in live:
        count_in(sums, entry, 1)
    view = fold(plan, unique.values())
    return {
        **{key: value for key, value in view.items() if key not in ("starts", "bares", "have")},
        "plan": plan,
        "sums": sums,
        "latest": _all_latest(live, undos, unique),
        "tail": _with_replaced(live, split),
        "hand": latest_hands(NOTHING["hand"], before),
        "frames": last_run(frame_marks(before)),
        "sittings": _kept_sittings(sitting_states({}, [], live), tail),
        "partial": sorted({e["act"] for e in tail if e.get("act")} & {e.get("act") for e in before}),
    }


def _tail_start(live: Sequence[Entry]) -> int:
    """Take the last entries, and the whole of the last one's act, since that is what an undo would name."""
    start = max(0, len(live) - TAIL)
    act = live[-1].get("act") if live else None
    first = next((i for i, e in enumerate(live) if act and e.get("act") == act), start)
    return min(start, first) if len(live) - first <= LONGEST_TAIL else start


def _all_latest(live: Sequence[Entry], undos: Iterable[Entry], unique: Mapping[str, Entry]) -> dict[str, Any]:
    latest: dict[str, Any] = {}
    raise_latest(latest, live)
    for undo in sorted(undos, key=mark):
        key = undoes(undo)
        if key and (undo.get("entry") is None or undo["entry"] not in unique):
            latest[key] = [*mark(undo), True]
    return latest


def _with_replaced(live: Sequence[Entry], start: int) -> list[dict[str, Any]]:
    """Give the tail, each entry with what held before it of the thing it decides."""
    held: dict[str, Any] = {}
    tail = []
    for i, entry in enumerate(live):
        found = register(entry)
        replaced = held.get(found[0]) if found else None
        if i >= start:
            tail.append({**entry, "replaced": replaced} if replaced else dict(entry))
        if found:
            held[found[0]] = [*mark(entry), found[1]]
    return tail


def last_run(frames: Sequence[Sequence[str]]) -> list[Sequence[str]]:
    """Keep of frame entries, in order, those that can still decide: the last run, and the one before it."""
    start = len(frames)
    while start > 0 and (frames[start - 1][2] == "off") == (frames[-1][2] == "off"):
        start -= 1
    run = list(frames[start:])
    return [*frames[max(0, start - 1) : start], *run[:1], *run[1:][-LONGEST_RUN:]]


def _kept_sittings(sittings: Mapping[str, Any], tail: Iterable[Entry]) -> dict[str, Any]:
    """Keep the sittings that can still change what is open: open ones, unbegun ones, those in the tail."""
    named = {e["id"] if e["kind"] == "begin" else e.get("sitting") for e in tail}
    return {
        key: value for key, value in sittings.items() if key in named or (value[0] is None) != (value[1] == 0)
    }
