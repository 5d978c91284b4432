"""A bound on tries: so many by each of several keys in a stretch of time, then a wait.

Kept in this process's memory, and bounded itself: with too many keys the oldest is forgotten.
"""

import threading
from collections import OrderedDict, deque
from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from ipaddress import IPv6Address, ip_address


@dataclass(frozen=True)
class Bound:
    """At most ``tries`` by one key."""

    key: str
    tries: int


@dataclass
class Throttle:
    """Count tries; every one is taken before it is made, so that many at once gain nothing."""

    stretch: timedelta
    most_keys: int = 10_000
    _taken: OrderedDict[str, deque[datetime]] = field(default_factory=OrderedDict)
    _lock: threading.Lock = field(default_factory=threading.Lock)

    def take(self, bounds: Iterable[Bound], now: datetime) -> timedelta:
        """Take one try of each bound, or none; gives how long to wait, zero when it was taken."""
        bounds = list(bounds)
        with self._lock:
            wait = max((self._wait(bound, now) for bound in bounds), default=timedelta())
            if not wait:
                for bound in bounds:
                    self._note(bound.key, now)
            return wait

    def give_back(self, bounds: Iterable[Bound]) -> None:
        """Give back a try that turned out well."""
        with self._lock:
            for bound in bounds:
                if taken := self._taken.get(bound.key):
                    taken.pop()

    def _wait(self, bound: Bound, now: datetime) -> timedelta:
        taken = self._taken.get(bound.key, deque())
        while taken and now - taken[0] >= self.stretch:
            taken.popleft()
        return taken[0] + self.stretch - now if len(taken) >= bound.tries else timedelta()

    def _note(self, key: str, now: datetime) -> None:
        self._taken.setdefault(key, deque()).append(now)
        self._taken.move_to_end(key)
        while len(self._taken) > self.most_keys:
            self._taken.popitem(last=False)


def neighbourhood(address: str | None) -> str:
    """Take an address to what one household has of it: all of IPv4, the first 64 bits of IPv6."""
    try:
        found = ip_address(address or "")
    except ValueError:
        return "unknown"
    if isinstance(found, IPv6Address) and not found.ipv4_mapped:
        return str(IPv6Address(int(found) >> 64 << 64))
    return str(getattr(found, "ipv4_mapped", None) or found)
