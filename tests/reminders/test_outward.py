"""Nobody else's server: no machine but a push service on the public network is ever reached."""

import contextlib
import socket
import threading
import time
from concurrent.futures import ThreadPoolExecutor

import pytest
import requests

from webapp.reminders.endpoints import Where
from webapp.reminders.outward import PATIENCE, Outward

KNOWN = Where.of([])
GOOD = "https://fcm.googleapis.com/fcm/send/abc"


class Listener:
    """A machine on loopback that notes who comes, and answers as it is told, or drips, or says nothing."""

    def __init__(self, answer=b"HTTP/1.1 201 Created\r\nContent-Length: 0\r\n\r\n", drip=0.0, ends=False):
        self.answer, self.drip, self.ends, self.came = answer, drip, ends, []
        self.door = socket.create_server(("127.0.0.1", 0))
        self.port = self.door.getsockname()[1]
        self.origin = f"http://127.0.0.1:{self.port}"
        threading.Thread(target=self._serve, daemon=True).start()

    def _serve(self):
        with contextlib.suppress(OSError):
            while True:
                line, _ = self.door.accept()
                self.came.append(line)
                threading.Thread(target=self._answer, args=(line,), daemon=True).start()

    def _answer(self, line):
        with contextlib.suppress(OSError), line:
            line.recv(65536)
            line.sendall(self.answer)
            while self.drip:
                time.sleep(self.drip)
                line.sendall(b"x")
            if self.ends:
                line.shutdown(socket.SHUT_WR)
            while line.recv(1):  # whoever asked ends it
                pass


@pytest.fixture
def listen():
    doors = []

    def listen(*args, **kwargs):
        doors.append(Listener(*args, **kwargs))
        return doors[-1]

    yield listen
    for one in doors:
        one.door.close()


def resolver(*answers):
    """Give another answer each time it is asked, the last one from then on."""
    left = list(answers)

    def resolve(host, port, **_):
        address = left.pop(0) if len(left) > 1 else left[0]
        family = socket.AF_INET6 if ":" in address else socket.AF_INET
        return [(family, socket.SOCK_STREAM, 6, "", (address, port))]

    return resolve


PRIVATE = ["127.0.0.1", "::1", "::ffff:127.0.0.1", "10.0.0.1", "169.254.169.254", "0.0.0.0"]


@pytest.mark.parametrize("address", PRIVATE)
def test_a_name_that_leads_to_a_private_machine_is_not_connected_to(listen, address):
    inside = listen()
    session = Outward(KNOWN, resolver(address))
    with pytest.raises(requests.ConnectionError):
        session.post(GOOD)
    assert inside.came == []


def test_a_name_that_says_another_thing_the_second_time_gains_nothing(listen):
    """It is asked once, and what was looked at is what is connected to; asked anew, it is looked at anew."""
    asked = []
    rebinding = resolver("192.0.2.1", "127.0.0.1")

    def resolve(host, port, **kwargs):
        asked.append(host)
        return rebinding(host, port, **kwargs)

    session = Outward(KNOWN, resolve)
    for _ in range(2):
        with pytest.raises(requests.ConnectionError):
            session.post(GOOD)
    assert asked == ["fcm.googleapis.com"] * 2


def test_of_several_addresses_one_private_is_enough(listen):
    inside = listen()
    public, private = (resolver(a)("", inside.port)[0] for a in ("9.9.9.9", "127.0.0.1"))
    with pytest.raises(requests.ConnectionError, match="no machine of the public network"):
        Outward(KNOWN, lambda *_, **__: [public, private]).post(GOOD)
    assert inside.came == []


def test_a_redirect_is_not_followed(listen):
    inside = listen()
    outside = listen(f"HTTP/1.1 307 T\r\nLocation: {inside.origin}/x\r\nContent-Length: 0\r\n\r\n".encode())
    answer = Outward(Where.of([outside.origin])).post(f"{outside.origin}/push", data=b"x")
    assert answer.status_code == 307
    assert inside.came == []


def test_what_takes_too_long_is_left_after_five_seconds_in_all(listen):
    """One that says nothing, one that says a little each second for ever, and one whose name is not found."""
    silent, slow = listen(b""), listen(b"HTTP/1.1 201 Created\r\nX: ", drip=1.0)
    stopped = threading.Event()

    def waited(outward: Outward, address: str) -> float:
        begun = time.monotonic()
        with contextlib.suppress(requests.RequestException):
            assert outward.post(address, data=b"x").status_code == 201
        return time.monotonic() - begun

    with ThreadPoolExecutor() as at_once:
        found = at_once.submit(waited, Outward(KNOWN, lambda *_, **__: stopped.wait(60) and []), GOOD)
        heard = [
            at_once.submit(waited, Outward(Where.of([one.origin])), f"{one.origin}/push")
            for one in (silent, slow)
        ]
        took = [one.result() for one in (found, *heard)]
        stopped.set()
    assert max(took) < PATIENCE + 2  # no measure of speed: without an end it would be for ever


@pytest.mark.parametrize("length", ["99", "nonsense"])
def test_an_answer_that_breaks_off_is_a_failure_like_any_other(listen, length):
    """Anything else would end the round, for everybody, each time anew."""
    broken = listen(f"HTTP/1.1 500 E\r\nContent-Length: {length}\r\n\r\nx".encode(), ends=True)
    chunked = listen(b"HTTP/1.1 500 E\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\n", ends=True)
    for one in (broken, chunked):
        with contextlib.suppress(requests.RequestException):
            Outward(Where.of([one.origin])).post(f"{one.origin}/push", data=b"x")


def test_a_first_address_that_is_dead_leaves_time_for_the_next(listen):
    """As where IPv6 is promised and does not work. A door whose queue is full takes nobody in."""
    service = listen()
    with contextlib.ExitStack() as open_lines:
        full = open_lines.enter_context(socket.socket())
        full.bind(("127.0.0.1", 0))
        full.listen(0)
        for _ in range(4):
            line = open_lines.enter_context(socket.socket())
            line.setblocking(False)
            line.connect_ex(full.getsockname())
        found = [
            (socket.AF_INET, socket.SOCK_STREAM, 6, "", to)
            for to in (full.getsockname(), ("127.0.0.1", service.port))
        ]
        sender = Outward(Where.of([service.origin]), lambda *_, **__: found)
        assert sender.post(f"{service.origin}/push", data=b"x").status_code == 201


def test_of_a_long_answer_little_is_read(listen):
    long = listen(b"HTTP/1.1 500 E\r\nContent-Length: 90000000\r\n\r\n" + b"x" * 9_000_000)
    answer = Outward(Where.of([long.origin])).post(f"{long.origin}/push", data=b"x")
    assert (answer.status_code, len(answer.text)) == (500, 2000)


def test_neither_proxies_nor_passwords_of_the_machine_are_used(listen, monkeypatch, tmp_path):
    proxy, service = listen(), listen()
    for name in ("http_proxy", "https_proxy", "all_proxy"):
        monkeypatch.setenv(name, proxy.origin)
    answer = Outward(Where.of([service.origin])).post(f"{service.origin}/push", data=b"x")
    assert answer.status_code == 201
    assert "Authorization" not in answer.request.headers
    assert proxy.came == []
