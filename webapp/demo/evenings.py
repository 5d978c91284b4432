"""Months of evenings, made up entry by entry, so that every figure shown follows from the entries."""

import random
from collections.abc import Iterator
from datetime import date, datetime, time, timedelta
from typing import Any
from uuid import UUID
from zoneinfo import ZoneInfo

from webapp.demo.legends import LEGENDS
from webapp.demo.scenario import ZONE, Story
from webapp.journal import moments
from webapp.journal.order import BLOCK, Place, Side, block_sides, next_open, row_sides

Entry = dict[str, Any]


class Work:
    """One project as it grows: which places are done, and what is laid where she is now."""

    def __init__(self, story: Story, luck: random.Random) -> None:
        self.story, self.luck = story, luck
        self.by_blocks = story.plan.get("working") == "blocks"
        self.sides: list[Side] = (block_sides if self.by_blocks else row_sides)(story.plan)
        self.done: set[Place] = set()
        self.place: Place | None = next_open(self.sides, self.done.__contains__, None)
        self.laid = 0
        self.size = self.full()
        self.threads = LEGENDS[story.title]
        self.shares = [thread.share for thread in self.threads]

    def full(self) -> int:
        """Tell how many stitches the place in hand has."""
        plan, fullness = self.story.plan, self.story.fullness
        if self.place is None:
            return 0
        if not self.by_blocks:
            whole: int = plan["width"]
        else:
            wide = min(BLOCK, plan["width"] - (self.place[0] - 1) * BLOCK)
            whole = wide * min(BLOCK, plan["height"] - (self.place[1] - 1) * BLOCK)
        return max(
            1, round(whole * (fullness if fullness == 1 else self.luck.uniform(fullness - 0.1, fullness)))
        )

    def named(self) -> Entry:
        """Name the place in hand as the journal does."""
        assert self.place is not None
        return {"block": list(self.place)} if self.by_blocks else {"row": self.place[1]}

    def runs(self) -> Iterator[tuple[Entry, int]]:
        """Go on without end: each entry, and how many stitches' time it takes."""
        thread = self.threads[0]
        while self.place is not None:
            run = min(self.luck.randint(3, 18), self.size - self.laid)
            if run > 0:
                self.laid += run
                thread = self.luck.choices(self.threads, self.shares)[0]
                yield {"kind": "stitches", **self.named(), "by": run, "thread": thread.name}, run
            if self.luck.random() < 0.012 and self.laid > 4:
                self.laid -= 3
                unpicked = {"by": -3, "why": "unpicked", "thread": thread.name}
                yield {"kind": "stitches", **self.named(), **unpicked}, 6
            if self.laid >= self.size:
                yield {"kind": "done", **self.named(), "done": True}, 4
                self.go_on()

    def go_on(self) -> None:
        """Take the next place in hand."""
        if self.place is not None:
            self.done.add(self.place)
        self.place = next_open(self.sides, self.done.__contains__, self.place)
        most = self.story.most_places
        if most is not None and len(self.done) >= most:
            self.place = None
        self.laid, self.size = 0, self.full()


def evening(work: Work, day: date, luck: random.Random, now: datetime) -> list[Entry]:
    """Make up one sitting, in the order it happened; empty if it would not be over by ``now``."""
    begin = datetime.combine(day, time(19, 20), ZoneInfo(ZONE)) + timedelta(minutes=luck.randint(0, 95))
    end = begin + timedelta(minutes=luck.choice((35, 45, 55, 65, 75, 80, 95, 110)))
    if end > now or work.place is None:
        return []
    sitting = stamp(begin, luck)
    framed = work.story.plan["frame"] in ("hoop", "clamps", "scroll")
    entries = [{"kind": "begin", "at": begin, "id": sitting}]
    if framed:
        entries.append({"kind": "frame", "state": "on", "at": begin + timedelta(seconds=1)})
    pace = work.story.pace * luck.uniform(0.72, 1.08)
    at = begin + timedelta(minutes=2)
    for entry, worth in work.runs():
        at += timedelta(hours=worth / pace)
        if at > end:
            work.laid -= entry["by"] if entry["kind"] == "stitches" else 0
            break
        entries.append({**entry, "at": at})
    end = min(end, at)
    entries.append({"kind": "end", "sitting": sitting, "at": end, "note": work.story.note})
    if framed:
        held = "slack" if work.story.plan["frame"] == "scroll" else "off"
        entries.append({"kind": "frame", "state": held, "at": end + timedelta(seconds=40)})
    return entries


def stamp(at: datetime, luck: random.Random) -> str:
    """Make an id for a moment (UUID version 7), the same each time for the same luck."""
    milliseconds = int(at.timestamp() * 1000)
    return str(
        UUID(
            int=milliseconds << 80
            | 0x7 << 76
            | luck.getrandbits(12) << 64
            | 0b10 << 62
            | luck.getrandbits(62)
        )
    )


def written(entries: list[Entry], luck: random.Random) -> list[Entry]:
    """Give the entries ids and write their moments down."""
    return [{"id": stamp(e["at"], luck), **e, "at": moments.write(e["at"])} for e in entries]
