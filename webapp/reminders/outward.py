"""Sending to a machine that is not ours: public addresses alone, looked at as the connection is made.

A name is resolved here, every address it gives is looked at, and the very address that was looked at is
connected to, so that a name which says another thing the second time gains nothing. No redirects, no proxies,
no passwords from files, five seconds for all of it, and no more than a few words of the answer are read.
"""

import contextlib
import os
import socket
import ssl
import threading
import time
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from functools import cache
from typing import Any

import requests
from requests.adapters import HTTPAdapter
from urllib3 import HTTPConnectionPool, HTTPSConnectionPool, PoolManager
from urllib3.connection import HTTPConnection, HTTPSConnection
from urllib3.exceptions import HTTPError

from webapp.reminders.endpoints import Where, fault, is_public, vouched

PATIENCE = 5.0  # seconds, from the first question to the last word
MOST_READ = 2000  # bytes of an answer
Resolve = Callable[..., list[Any]]
_names = ThreadPoolExecutor(8, thread_name_prefix="names")  # a resolver cannot be told to hurry


class NotPublic(OSError):
    """A name leads to a machine that is none of the public network's."""


@dataclass(frozen=True)
class Way:
    """How one sending may connect: to which addresses, by which resolver, until when."""

    any_address: bool
    resolve: Resolve
    end: float  # of the clock that only goes on

    @property
    def left(self) -> float:
        """Tell how many seconds are left; never none, so that a time-out is one and not a wait for ever."""
        return max(0.01, self.end - time.monotonic())


def reach(host: str, port: int, way: Way) -> socket.socket:
    """Connect to the first address of ``host`` that answers, if all of them may be connected to."""
    found = _names.submit(way.resolve, host, port, type=socket.SOCK_STREAM).result(way.left)
    addresses = [entry[4][0] for entry in found]
    if not addresses or not (way.any_address or all(is_public(one) for one in addresses)):
        raise NotPublic(f"{host} is no machine of the public network")
    last: OSError = OSError(f"{host} does not answer")
    for n, (family, kind, protocol, _, address) in enumerate(found):
        line = socket.socket(family, kind, protocol)
        try:
            line.settimeout(way.left / (len(found) - n))  # one that is dead leaves time for the others
            line.connect(address)
            return line
        except OSError as error:
            line.close()
            last = error
    raise last


class Outward(requests.Session):
    """A session for one sending; pywebpush is handed it."""

    def __init__(self, where: Where, resolve: Resolve = socket.getaddrinfo) -> None:
        super().__init__()
        self.trust_env = False
        self.where = where
        self.adapters.clear()
        for scheme in ("https://", "http://"):
            self.mount(scheme, _Guarded(where, resolve))

    def request(self, method: Any, url: Any, *args: Any, **kwargs: Any) -> requests.Response:
        """Ask once, read little, follow nobody."""
        kwargs |= {"allow_redirects": False, "stream": True, "timeout": PATIENCE}
        response = super().request(method, url, *args, **kwargs)
        try:
            response._content = response.raw.read(MOST_READ, decode_content=False)
        except HTTPError as error:
            raise requests.ConnectionError(error) from error
        finally:
            response.close()
        return response


class _Guarded(HTTPAdapter):
    def __init__(self, where: Where, resolve: Resolve) -> None:
        self.where, self.resolve = where, resolve
        super().__init__(max_retries=0)

    def send(self, request: Any, *args: Any, **kwargs: Any) -> requests.Response:
        if said := fault(request.url, self.where):
            raise NotPublic(said)
        way = Way(vouched(request.url, self.where), self.resolve, time.monotonic() + PATIENCE)
        self.poolmanager.pool_classes_by_scheme = _pools(way)
        return super().send(request, *args, **kwargs)

    def init_poolmanager(self, *args: Any, **kwargs: Any) -> None:
        self.poolmanager = PoolManager(1, maxsize=1, ssl_context=_trusted())


@cache
def _trusted() -> ssl.SSLContext:
    """Read whom to trust, once: it takes longer than a sending."""
    return ssl.create_default_context()


def _pools(way: Way) -> dict[str, Any]:
    """Make the pools of one sending, whose connections go through ``reach`` and end in time."""

    class InTime:
        _end: Callable[[], None] | None = None

        def _new_conn(self: Any) -> socket.socket:
            line = reach(self.host, self.port, way)
            self._end = watch(line, way.left)
            return line

        def close(self: Any) -> None:
            if self._end:
                self._end()
            super().close()  # type: ignore[misc]

    class Plain(InTime, HTTPConnection):
        pass

    class Secure(InTime, HTTPSConnection):
        pass

    plain = type("PlainPool", (HTTPConnectionPool,), {"ConnectionCls": Plain})
    secure = type("SecurePool", (HTTPSConnectionPool,), {"ConnectionCls": Secure})
    return {"http": plain, "https": secure}


def watch(line: socket.socket, seconds: float) -> Callable[[], None]:
    """End a conversation that drags on, whatever became of its socket; gives what ends the watch."""
    same = socket.socket(fileno=os.dup(line.fileno()))  # however it is encrypted: the same line

    def hang_up() -> None:
        with contextlib.suppress(OSError):
            same.shutdown(socket.SHUT_RDWR)

    def end() -> None:
        timer.cancel()
        same.close()

    timer = threading.Timer(seconds, hang_up)
    timer.daemon = True
    timer.start()
    return end
