"""The command that reminds, once or under `serve`, as processes of their own."""

import os
import signal
import subprocess
import sys
import time
from contextlib import suppress
from pathlib import Path

import pytest


def children(pid):
    """List the processes that one started and that run `remind`."""
    found = [
        one for task in Path(f"/proc/{pid}/task").iterdir() for one in (task / "children").read_text().split()
    ]
    said = {}
    for one in found:
        with suppress(OSError):
            said[int(one)] = Path(f"/proc/{one}/cmdline").read_bytes().decode()
    return [one for one, line in said.items() if "remind" in line]


def is_there(pid):
    with suppress(OSError):
        return Path(f"/proc/{pid}/stat").read_text().rsplit(") ", 1)[1][0] != "Z"
    return False


def until(is_so, seconds=15):
    end = time.monotonic() + seconds
    while not is_so():
        assert time.monotonic() < end
        time.sleep(0.05)


@pytest.mark.parametrize("how", ["stop", "kill"])
def test_the_house_has_one_child_that_goes_with_it(own_server, how):
    (child,) = children(own_server.process.pid)
    assert is_there(child)
    if how == "stop":
        own_server.stop()
    else:
        os.kill(own_server.process.pid, 9)  # it alone: nobody tells the child
        own_server.process.wait()
        own_server.process.stdout.close()
    until(lambda: not is_there(child))


def test_ctrl_c_on_the_terminal_is_its_parents_affair(own_server):
    (child,) = children(own_server.process.pid)

    def is_ignored():
        status = Path(f"/proc/{child}/status").read_text()
        return int(status.split("SigIgn:")[1].split()[0], 16) & 1 << (signal.SIGINT - 1)

    until(is_ignored)


def test_a_child_that_was_killed_is_begun_anew_and_goes_with_the_house_too(own_server):
    (child,) = children(own_server.process.pid)
    os.kill(child, 9)
    until(lambda: set(children(own_server.process.pid)) - {child})
    (another,) = set(children(own_server.process.pid)) - {child}
    own_server.stop()
    until(lambda: not is_there(another))


def test_a_house_has_its_key_from_the_first_start(own_server):
    assert (own_server.data / "vapid.pem").stat().st_mode & 0o777 == 0o600


@pytest.mark.parametrize("command", ["remind", "audit"])
def test_where_there_is_no_house_yet_it_says_so(tmp_path, command):
    settings = os.environ | {"EVENROW_DATA": str(tmp_path / "nothing")}
    ran = subprocess.run(
        [sys.executable, "-m", "webapp.cli", command], env=settings, capture_output=True, text=True
    )
    assert ran.returncode == 1
    assert "`evenrow serve` makes a new house" in ran.stderr
    assert "Traceback" not in ran.stderr
    assert not (tmp_path / "nothing" / "vapid.pem").exists()


def test_reminding_once_says_how_many_were_sent(own_server):
    command = [sys.executable, "-m", "webapp.cli", "remind"]
    ran = subprocess.run(command, env=os.environ | own_server.settings, capture_output=True, text=True)
    assert (ran.returncode, ran.stdout, ran.stderr) == (0, "Sent: 0.\n", "")
