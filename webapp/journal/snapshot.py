"""The snapshot of one project, by a few indexed statements: what ``whole.py`` says of all its entries."""

from collections.abc import Callable, Sequence
from typing import Any
from uuid import UUID

from webapp.db import db
from webapp.house import house_id
from webapp.journal import fold, keys, moments, statements, whole
from webapp.journal.rows import as_entry
from webapp.journal.statements import AnyRow, Journal
from webapp.projects.models import Project
from webapp.projects.plan import PLAN

Entry = dict[str, Any]
FEW = 4


def plan_of(project: Project) -> dict[str, Any]:
    """Give what the phone must know of a project to go on with it."""
    plan = {"revision": project.plan_revision, **{name: getattr(project, name) for name in PLAN}}
    legend = {"legend": project.legend} if project.legend else {}
    return {**plan, **legend, **({"away": True} if project.put_away else {})}


def revision_of(stitcher: UUID, project: UUID) -> int:
    """Count the project's entries."""
    found = Journal(stitcher, project).first(statements.REVISION)
    return found.revision if found else 0


def snapshot_of(stitcher: UUID, project_id: UUID, known: int = 0) -> dict[str, Any]:
    """Draw up the snapshot of her project; with ``known``, only the places changed since that revision."""
    project = db.session.get(Project, (stitcher, project_id))
    if project is None:
        raise LookupError("no such project of hers")
    revision = revision_of(stitcher, project_id)
    return draw(Journal(stitcher, project_id), project, revision, known if 0 < known <= revision else 0)


def draw(journal: Journal, project: Project, revision: int, since: int) -> dict[str, Any]:
    """Draw up a snapshot at ``revision``, of all places or of those changed ``since``."""
    plan, tail = plan_of(project), tail_of(journal)
    first = tail[0] if tail else None
    hand, frames = hand_before(journal, first), frames_before(journal, first)
    row, block = fold.in_hand(plan, fold.latest_hands(hand, tail), is_done(journal))
    at = {t.tally[6:]: t.stitches for t in journal.rows(statements.TOTALS_OF, tallies=_tallies(row, block))}
    changed = {"since": since} if since else {}
    totals = journal.rows(statements.TOTALS_SINCE if since else statements.TOTALS, **changed)
    held = journal.rows(statements.LATEST_SINCE if since else statements.LATEST, **changed)
    sittings = sittings_of(journal, tail)
    return {
        "project": str(project.id),
        "house": str(house_id()),
        "revision": revision,
        "since": since,
        "row": row,
        "row_stitches": None if row is None else at.get(str(row), 0),
        "block": block,
        "block_stitches": None if block is None else at.get("{}.{}".format(*block), 0),
        **counts(journal),
        "rows": places(totals, "row"),
        "blocks": places(totals, "block"),
        "frame": fold.frame([*frames, *fold.frame_marks(tail)]),
        "sitting": fold.open_sitting(sittings),
        "note": note(journal),
        "plan": plan,
        "threads": threads(journal),
        "sums": {t.tally: [t.stitches, t.bare, t.touches] if t.touches else None for t in totals},
        "latest": {h.register: [moments.write(h.at), str(h.entry), h.value] if h.at else None for h in held},
        "tail": with_replaced(journal, tail),
        "hand": hand,
        "frames": frames,
        "sittings": sittings,
        "partial": partial(journal, tail),
    }


def tail_of(journal: Journal) -> list[Entry]:
    """List the last live entries, oldest first, and the whole of the last one's act."""
    rows = journal.rows(statements.TAIL, most=whole.TAIL)
    if rows and rows[0].act:
        first = journal.first(statements.FIRST_OF_ACT, act=rows[0].act)
        longest = whole.LONGEST_TAIL
        longer = journal.rows(statements.TAIL_FROM, **_mark(first), most=longest + 1) if first else []
        rows = longer if len(rows) < len(longer) <= longest else rows
    return [as_entry(row) for row in reversed(rows)]


def hand_before(journal: Journal, first: Entry | None) -> dict[str, Any]:
    """Find the latest row and block she worked before the tail."""
    if first is None:
        return dict(fold.NOTHING["hand"])
    found = [journal.first(statements.HAND_BEFORE, hand=which, **_mark(first)) for which in ("row", "block")]
    return fold.latest_hands(fold.NOTHING["hand"], [as_entry(row) for row in found if row])


def frames_before(journal: Journal, first: Entry | None) -> list[Any]:
    """List the frame entries before the tail that can still decide: see ``whole.last_run``."""
    rows = journal.rows(statements.FRAMES_BEFORE, **_mark(first), most=whole.LONGEST_RUN + 1) if first else []
    if not rows:
        return []
    is_off = rows[0].fields["state"] == "off"
    turn = journal.first(statements.HELD_BEFORE if is_off else statements.OFF_BEFORE, **_mark(first))
    if turn is None:
        begun = journal.first(statements.FIRST_FRAME)
    else:
        begun = journal.first(statements.FIRST_FRAME_AFTER, **_mark(turn))
        rows = [row for row in rows if (row.at, row.id) > (turn.at, turn.id)]
    later = [row for row in reversed(rows) if begun is None or row.id != begun.id][-whole.LONGEST_RUN :]
    return fold.frame_marks(as_entry(row) for row in (turn, begun, *later) if row is not None)


def is_done(journal: Journal) -> Callable[[str], bool]:
    """Tell of a place whether it is done; all are read at once if more than a few are asked for."""
    asked: dict[str, bool] = {}
    every: set[str] = set()

    def ask(place: str) -> bool:
        if place not in asked and len(asked) < FEW:
            rows = journal.rows(statements.TOTALS_OF, tallies=[f"cross {place}"])
            asked[place] = any(row.done for row in rows)
        elif place not in asked and not every:
            every.update({""} | {row.tally[6:] for row in journal.rows(statements.DONE_CROSSES)})
        return asked.get(place, place in every)

    return ask


def counts(journal: Journal) -> dict[str, Any]:
    """Count what is laid and done, over all places, by pass."""
    found = {(row[0], row[1]): (int(row[2]), int(row[3])) for row in journal.rows(statements.COUNTS)}
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


def threads(journal: Journal) -> dict[str, Any]:
    """Tell of each thread, by pass, what is laid, on how many it was spent, and by how many entries."""
    found: dict[str, Any] = {}
    for key, name, stitches, spent, touches in journal.rows(statements.THREADS):
        found.setdefault(key, {})[name] = [stitches, spent, touches]
    return found


def places(totals: Sequence[AnyRow], kind: str) -> dict[str, Any]:
    """Give the crosses of rows, or of blocks, by place; none for a place that is no longer touched."""
    crosses = [t for t in totals if t.kind == kind and t.tally.startswith("cross ")]
    return {t.tally[6:]: {"stitches": t.stitches, "done": t.done} if t.touches else None for t in crosses}


def note(journal: Journal) -> dict[str, str] | None:
    """Give the line on where she stopped."""
    held = journal.first(statements.HOLDS, of_register="note")
    return {"text": held.value, "at": moments.write(held.at)} if held else None


def sittings_of(journal: Journal, tail: list[Entry]) -> dict[str, Any]:
    """List the sittings that are open, or not begun as far as is known, or in the tail."""
    named = {
        UUID(e["id"] if e["kind"] == "begin" else e["sitting"])
        for e in tail
        if e["kind"] in ("begin", "end", "amend")
    }
    rows = list(journal.rows(statements.OPEN_SITTINGS))
    if named:
        rows += journal.rows(statements.SITTINGS_OF, sittings=named)
    return {str(row.id): [moments.write(row.begun) if row.begun else None, row.closers] for row in rows}


def with_replaced(journal: Journal, tail: list[Entry]) -> list[Entry]:
    """Give the tail, each entry with what held before it of the thing it decides."""
    held: dict[str, Any] = {}
    shown = []
    for entry in tail:
        found = keys.register(entry)
        if found and found[0] not in held:
            held[found[0]] = before(journal, found[0], entry)
        replaced = held[found[0]] if found else None
        shown.append({**entry, "replaced": replaced} if replaced else entry)
        if found:
            held[found[0]] = [*keys.mark(entry), found[1]]
    return shown


def before(journal: Journal, register: str, entry: Entry) -> list[Any] | None:
    """Find what held of one thing before an entry of the tail."""
    row = journal.first(statements.LATEST_OF_BEFORE, register=register, **_mark(entry))
    says = keys.register(as_entry(row)) if row else None
    return [*keys.mark(as_entry(row)), says[1]] if row and says else None


def partial(journal: Journal, tail: list[Entry]) -> list[str]:
    """List the acts of the tail that reach back beyond it."""
    here = [entry["act"] for entry in tail if "act" in entry]
    if not here:
        return []
    sizes = journal.rows(statements.SIZES_OF_ACTS, acts=[UUID(act) for act in set(here)])
    return sorted(str(act) for act, size in sizes if size > here.count(str(act)))


def _mark(entry: Any) -> dict[str, Any]:
    """Give what statements compare (at, id) with, of an entry or a row of one."""
    if isinstance(entry, dict):
        return {"mark_at": moments.read(entry["at"]), "mark_id": UUID(entry["id"])}
    return {"mark_at": entry.at, "mark_id": entry.id}


def _tallies(row: int | None, block: list[int] | None) -> list[str]:
    return [
        f"cross {place}" for place in (row, "{}.{}".format(*block) if block else None) if place is not None
    ]
