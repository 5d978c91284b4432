"""Sittings with short pauses between them, shown as one."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from uuid import UUID

from webapp.hours import words
from webapp.hours.records import Sat
from webapp.hours.split import Stretch, joins, laid_out, length


@dataclass(frozen=True)
class Joined:
    """Sittings of one project with pauses under half an hour: shown as one."""

    parts: list[Sat]

    @property
    def project(self) -> UUID:
        """Tell whose they are."""
        return self.parts[0].project

    @property
    def lasted(self) -> timedelta:
        """Tell how long they lasted, without the pauses."""
        return self.within(self.whole.begin, self.whole.end)

    def within(self, begin: datetime, end: datetime) -> timedelta:
        """Tell how much of that lies between two moments."""
        return length(laid_out(part.counts for part in self.parts), begin, end)

    @property
    def time(self) -> str:
        """Say how long they lasted."""
        return words.clock(self.lasted)

    @property
    def whole(self) -> Stretch:
        """Give it from its first beginning to its last end."""
        end = max(part.counts.end for part in self.parts)
        return Stretch(self.project, self.parts[0].begin, end)

    @property
    def struck(self) -> bool:
        """Tell whether it is struck out."""
        return self.parts[0].struck


def join(sat: Sequence[Sat]) -> list[Joined]:
    """Join what is shown as one, the latest begun first; what is struck out stands alone."""
    joined: list[Joined] = []
    latest: dict[UUID, Joined] = {}
    for one in sorted(sat, key=lambda one: (one.begin, one.id)):
        before = latest.get(one.project)
        if before and not one.struck and joins(before.whole, one.counts):
            before.parts.append(one)
            continue
        joined.append(Joined([one]))
        if not one.struck:
            latest[one.project] = joined[-1]
    return joined[::-1]
