"""A lost passphrase replaced by whoever keeps the house, with the real command."""

import os
import subprocess
import sys

import pytest

from tests.accounts.conftest import PASSPHRASE
from tests.conftest import browser_of

COMMAND = [sys.executable, "-m", "webapp.cli", "passphrase"]
NEW = "quite another one, żółw"


@pytest.fixture
def keeper(config):
    """Run the command as the house's keeper does; gives (exit code, what it said)."""

    def run(*names, given=""):
        typed = given if isinstance(given, bytes) else given.encode()
        env = os.environ | {"EVENROW_DATA": str(config.data)}
        ran = subprocess.run([*COMMAND, *names], input=typed, env=env, capture_output=True, timeout=60)
        return ran.returncode, (ran.stdout + ran.stderr).decode()

    return run


def signs_in(app, passphrase, name="Alice"):
    form = {"name": name, "passphrase": passphrase}
    return browser_of(app).post("/sign-in", data=form).status_code == 303


def test_it_works(app, alice, keeper):
    assert keeper("Alice", given=f"{NEW}\n") == (
        0,
        "The new passphrase holds, and she is signed out everywhere.\n",
    )
    assert signs_in(app, NEW)
    assert not signs_in(app, PASSPHRASE)


def test_she_is_signed_out_everywhere_and_nobody_else_is(app, alice, charlie, keeper):
    keeper("ALICE", given=NEW)  # however the name is written, and with no line's end
    assert alice.get("/projects").status_code == 303
    assert charlie.get("/projects").status_code == 200


@pytest.mark.parametrize(
    ("name", "given", "sentence"),
    [
        ("Berta", NEW, "Nobody here is called 'Berta'."),
        ("Alice", "seven77", "That is too short: at least 8 characters."),
        ("Alice", "", "Give a passphrase, not only spaces."),
        ("Alice", b"not \xff UTF-8 at all", "send it as UTF-8."),
    ],
)
def test_what_cannot_be_is_said_and_nothing_is_changed(app, alice, keeper, name, given, sentence):
    code, said = keeper(name, given=given)
    assert (code, sentence in said) == (1, True), said
    assert "Traceback" not in said
    assert signs_in(app, PASSPHRASE)
    assert alice.get("/projects").status_code == 200


def test_an_account_without_a_name_is_nobodys_to_replace(app, client, keeper):
    client.post("/accounts/unclaimed")
    assert keeper("None", given=NEW)[0] == 1
    assert client.get("/projects").status_code == 200


def test_the_name_is_not_taken_as_its_passphrase(sign_up, keeper):
    sign_up("Alice of the lanterns")
    code, said = keeper("Alice of the lanterns", given="ALICE OF THE LANTERNS")
    assert (code, "other than the name" in said) == (1, True)


def test_where_there_is_no_house_it_says_so(tmp_path, keeper, config):
    for file in config.data.glob("evenrow.db*"):
        file.unlink()
    code, said = keeper("Alice", given=NEW)
    assert (code, "The database cannot be read" in said, "Traceback" in said) == (1, True, False)


def test_on_a_terminal_it_is_asked_for_twice_and_not_shown(app, alice, config):
    """The standard library's pty gives the command a terminal of its own."""
    env = os.environ | {"EVENROW_DATA": str(config.data)}
    spawn = [
        sys.executable,
        "-c",
        "import pty, sys; sys.exit(pty.spawn(sys.argv[1:]) >> 8)",
        *COMMAND,
        "Alice",
    ]
    pipes = {"stdin": subprocess.PIPE, "stdout": subprocess.PIPE}
    with subprocess.Popen(spawn, env=env, bufsize=0, **pipes) as ran:
        said = b""
        for prompt, typed in [(b"The new passphrase: ", NEW), (b"Once more: ", NEW)]:
            while not said.endswith(prompt):
                letter = ran.stdout.read(1)
                assert letter, said
                said += letter
            ran.stdin.write(f"{typed}\n".encode())
        said += ran.stdout.read()
        assert ran.wait(60) == 0, said
    assert NEW.encode() not in said
    assert signs_in(app, NEW)


def test_the_door_says_who_can_help(client):
    page = client.get("/sign-in").text
    assert "Lost your passphrase?" in page
    assert "Whoever keeps this house can give you another." in " ".join(page.split())
