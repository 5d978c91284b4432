"""The fold: every number on every screen, out of the entries alone, whatever order they came in.

Pure, and the same in ``static/js/journal/fold.js``; ``shared/vectors/fold.json`` binds the two.

An *entry* is a dict as the journal takes it: ids in lower case, ``at`` as ``2026-02-03T20:14:05.120Z``
(corrected), so that both sort as text. A *plan* is a dict with ``height``, ``width``, ``direction``,
``first_row``, ``block_from``, ``block_way``, each of which may be missing. A *snapshot* is what ``whole.py``
gives. It carries what ``advance`` needs to go on from it:

=========  ===========================================================================================
sums       ``{"cross 37": [stitches, bare, touches]}``: sums and live entries of a pass at a place
latest     ``{"done cross 37": [at, id, value]}``: what holds where only the latest by (at, id) holds;
           also "undone act …", and "undone entry …" for one that is not here yet
threads    ``{"Red": {"cross": [stitches, spent, entries]}}``: of each thread, by pass, what is laid, and
           on how many stitches it was spent
tail       the last live entries, each with what it ``replaced`` of those
hand       the latest row and block she worked, before the tail
frames     what decides the frame's state and since when, before the tail
sittings   ``{id: [begin or none, live ends and amends]}``: open, or not begun as far as is known, or
           in the tail
partial    acts that reach back beyond the tail: their undo waits for the server
=========  ===========================================================================================
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any

from webapp.journal.keys import Entry, hand, kind_of_place, mark, register, spent, tally, thread, undoes
from webapp.journal.order import Place, block_sides, next_open, row_sides

NOTHING: dict[str, Any] = {
    "revision": 0, "sums": {}, "threads": {}, "latest": {}, "tail": [], "hand": {"row": None, "block": None},
    "frames": [], "sittings": {}, "partial": [],
}  # fmt: skip


def fold(plan: Mapping[str, Any], entries: Iterable[Entry]) -> dict[str, Any]:
    """Work out the view of a project from all its entries."""
    return advance({**NOTHING, "plan": plan}, entries)


def advance(snap: Mapping[str, Any], entries: Iterable[Entry]) -> dict[str, Any]:
    """Go on from a snapshot: the view after ``entries``, none of which the snapshot holds.

    Equals the fold over both as long as undos name one of ``entries`` or of the snapshot's tail.
    """
    known = {e["id"] for e in snap["tail"]}
    new = {e["id"]: e for e in reversed(list(entries)) if e["id"] not in known}
    undone = undone_by(snap, new.values())
    dead = [e for e in snap["tail"] if is_undone(e, undone)]
    kept = [e for e in snap["tail"] if not is_undone(e, undone)]
    live = [e for e in new.values() if e["kind"] != "undo" and not is_undone(e, undone)]

    sums = {key: list(value) for key, value in snap["sums"].items()}
    threads = {key: {name: list(n) for name, n in by.items()} for key, by in snap.get("threads", {}).items()}
    for some, sign in ((dead, -1), (live, 1)):
        for entry in some:
            count_in(sums, entry, sign)
            wind_in(threads, entry, sign)
    latest = dict(snap["latest"])
    _fall_back(latest, dead, snap["tail"], kept)
    raise_latest(latest, live)
    return view(
        snap["plan"],
        revision=snap["revision"] + len(new),
        sums=sums,
        threads=threads,
        latest=latest,
        hands=latest_hands(snap["hand"], [*kept, *live]),
        frames=[*snap["frames"], *frame_marks([*kept, *live])],
        sittings=sitting_states(snap["sittings"], dead, live),
    )


def undone_by(snap: Mapping[str, Any], entries: Iterable[Entry]) -> set[str]:
    """List what undos name, as registers: "undone entry …" and "undone act …"."""
    named = {key for e in entries if (key := undoes(e))}
    waiting = {f"undone act {act}" for act in snap["partial"]}
    return (named - waiting) | {key for key in snap["latest"] if key.startswith("undone ")}


def is_undone(entry: Entry, undone: set[str]) -> bool:
    """Tell whether an undo named the entry or its act."""
    return f"undone entry {entry['id']}" in undone or f"undone act {entry.get('act')}" in undone


def count_in(sums: dict[str, list[int]], entry: Entry, sign: int) -> None:
    """Add the entry to the sums it is part of, or with sign -1 take it out."""
    key = tally(entry)
    if key is None:
        return
    total = sums.setdefault(key, [0, 0, 0])
    if entry["kind"] in ("stitches", "bare"):
        total[entry["kind"] == "bare"] += sign * entry["by"]
    total[2] += sign
    if total[2] == 0:
        del sums[key]


def wind_in(threads: dict[str, dict[str, list[int]]], entry: Entry, sign: int) -> None:
    """Add the entry to what is laid and spent of its thread, or with sign -1 take it out."""
    key = thread(entry)
    if key is None:
        return
    name = entry.get("pass") or "cross"
    total = threads.setdefault(key, {}).setdefault(name, [0, 0, 0])
    for i, by in enumerate((entry["by"], spent(entry), 1)):
        total[i] += sign * by
    if total[2] == 0:
        del threads[key][name]
    if not threads[key]:
        del threads[key]


def _fall_back(
    latest: dict[str, Any], dead: Sequence[Entry], tail: Sequence[Entry], kept: Sequence[Entry]
) -> None:
    """Let what the dead entries had replaced hold again."""
    for key in {found[0] for e in dead if (found := register(e))}:
        lowest = next(e for e in tail if (found := register(e)) and found[0] == key)
        latest[key] = lowest.get("replaced")
        if latest[key] is None:
            del latest[key]
        raise_latest(latest, [e for e in kept if (found := register(e)) and found[0] == key])


def raise_latest(latest: dict[str, Any], entries: Iterable[Entry]) -> None:
    """Let each entry hold that is later than what holds."""
    for entry in entries:
        found = register(entry)
        if found and (found[0] not in latest or tuple(latest[found[0]][:2]) < mark(entry)):
            latest[found[0]] = [*mark(entry), found[1]]


def latest_hands(before: Mapping[str, Any], entries: Iterable[Entry]) -> dict[str, Any]:
    """Find the latest row and the latest block that an entry names."""
    hands = dict(before)
    for entry in entries:
        which = hand(entry)
        if which and (hands[which] is None or tuple(hands[which][:2]) < mark(entry)):
            hands[which] = [*mark(entry), entry[which]]
    return hands


def frame_marks(entries: Iterable[Entry]) -> list[list[str]]:
    """List the frame entries as [at, id, state]."""
    return [[*mark(e), e["state"]] for e in entries if e["kind"] == "frame"]


def sitting_states(before: Mapping[str, Any], dead: Iterable[Entry], live: Iterable[Entry]) -> dict[str, Any]:
    """Count the live begins, ends and amends of each sitting on from ``before``."""
    sittings = {key: list(value) for key, value in before.items()}
    for entries, sign in ((dead, -1), (live, 1)):
        for entry in entries:
            if entry["kind"] == "begin":
                sittings.setdefault(entry["id"], [None, 0])[0] = entry["at"] if sign > 0 else None
            elif entry["kind"] in ("end", "amend"):
                sittings.setdefault(entry["sitting"], [None, 0])[1] += sign
    return sittings


# The view: what is shown.


def view(
    plan: Mapping[str, Any],
    *,
    revision: int,
    sums: Mapping[str, Sequence[int]],
    threads: Mapping[str, Any],
    latest: Mapping[str, Sequence[Any]],
    hands: Mapping[str, Any],
    frames: Sequence[Sequence[str]],
    sittings: Mapping[str, Sequence[Any]],
) -> dict[str, Any]:
    """Draw the numbers out of the sums and what holds."""
    passes, rows, blocks = _passes(sums, latest)
    crosses = passes.pop("cross", {"stitches": 0})
    everywhere = rows | blocks
    row, block = in_hand(plan, hands, lambda place: place in everywhere and everywhere[place]["done"])
    return {
        "revision": revision,
        "row": row,
        "row_stitches": None if row is None else rows.get(str(row), {"stitches": 0})["stitches"],
        "block": block,
        "block_stitches": None
        if block is None
        else blocks.get("{}.{}".format(*block), {"stitches": 0})["stitches"],
        "stitches": crosses["stitches"],
        "rows_done": sum(place["done"] for place in rows.values()),
        "blocks_done": sum(place["done"] for place in blocks.values()),
        "rows": rows,
        "blocks": blocks,
        "passes": passes,
        "threads": threads,
        "starts": {key[6:]: held[2] for key, held in latest.items() if key.startswith("start ")},
        "bares": {key[6:]: total[1] for key, total in sums.items() if total[1] and key.startswith("cross ")},
        "frame": frame(frames),
        "sitting": open_sitting(sittings),
        "have": {key[5:]: held[2] for key, held in latest.items() if key.startswith("have ")},
        "note": {"text": latest["note"][2], "at": latest["note"][0]} if "note" in latest else None,
    }


def _passes(
    sums: Mapping[str, Sequence[int]], latest: Mapping[str, Sequence[Any]]
) -> tuple[dict[str, Any], ...]:
    """Give the passes, and of the crosses the rows and blocks."""
    passes: dict[str, Any] = {}
    places: dict[str, dict[str, Any]] = {"row": {}, "block": {}}
    for key, (stitches, _bare, _touches) in sums.items():
        name, place = key.split(" ")
        one = passes.setdefault(name, {"stitches": 0, "done": False})
        one["stitches"] += stitches
        done = f"done {key}" in latest and bool(latest[f"done {key}"][2])
        if place == "":
            one["done"] = done
        elif name == "cross":
            places[kind_of_place(place)][place] = {"stitches": stitches, "done": done}
    return passes, places["row"], places["block"]


def in_hand(
    plan: Mapping[str, Any], hands: Mapping[str, Any], is_done: Callable[[str], bool]
) -> tuple[int | None, list[int] | None]:
    """Tell the row and the block in hand: the last one worked, or the next open one when that is done."""
    latest: Place | None = (1, hands["row"][2]) if hands["row"] else None
    if latest is None or is_done(str(latest[1])):
        latest = next_open(row_sides(plan), lambda p: is_done(str(p[1])), latest)
    worked: Place | None = tuple(hands["block"][2]) if hands["block"] else None
    if worked is None or is_done("{}.{}".format(*worked)):
        worked = next_open(block_sides(plan), lambda p: is_done("{}.{}".format(*p)), worked)
    return latest[1] if latest else None, list(worked) if worked else None


def frame(frames: Iterable[Sequence[str]]) -> dict[str, str] | None:
    """Tell how the work is held, and since when: the first of the last run of on and slack, or of off."""
    run: list[Sequence[str]] = []
    for entry in sorted(frames, key=lambda f: (f[0], f[1])):
        if run and (run[-1][2] == "off") != (entry[2] == "off"):
            run = []
        run.append(entry)
    return {"state": run[-1][2], "since": run[0][0]} if run else None


def open_sitting(sittings: Mapping[str, Sequence[Any]]) -> dict[str, str] | None:
    """Find the latest begun of the sittings that are open."""
    begun = [(begin, key) for key, (begin, closers) in sittings.items() if begin is not None and closers == 0]
    return {"id": max(begun)[1], "begin": max(begun)[0]} if begun else None
