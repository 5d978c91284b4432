"""After a restore the house is another one and may lack what was sent: the phone sends it again."""

import shutil
import sqlite3
from uuid import uuid4

from tests.browser.phones import FOLLOW, Stitcher, lay, shown, until, waiting


def restore(server, copy):
    """Put an older copy of the database in place, as a restore does, with a new id for the house."""
    server.stop()
    for path in server.data.glob("evenrow.db*"):
        path.unlink()
    shutil.copy(copy, server.data / "evenrow.db")
    with sqlite3.connect(server.data / "evenrow.db") as database:
        database.execute("UPDATE house SET id = ?", (uuid4().hex,))
    server.start()


def copy_of(server, folder):
    with sqlite3.connect(server.data / "evenrow.db") as live, sqlite3.connect(folder / "copy.db") as copy:
        live.backup(copy)
    return folder / "copy.db"


def test_what_a_restored_house_lacks_is_sent_again(own_server, context, tmp_path):
    her = Stitcher.begin(context, own_server)
    page = her.open()
    lay(page, her.project, by=3)
    until(page, lambda: waiting(page) == 0)
    copy = copy_of(own_server, tmp_path)
    for by in (20, 100):
        lay(page, her.project, by=by)
    until(page, lambda: waiting(page) == 0)
    page.evaluate(FOLLOW, her.project)

    restore(own_server, copy)
    assert her.on_the_server() == 3
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    until(page, lambda: her.on_the_server() == 123 and waiting(page) == 0)
    assert shown(page, her.project) == 123
    assert set(page.evaluate("seen")) <= {123}, "and what is shown never wavers"
    assert own_server.audit() == "No difference."


def test_a_tap_meanwhile_is_counted_once_as_well(own_server, context, tmp_path):
    her = Stitcher.begin(context, own_server)
    page = her.open()
    copy = copy_of(own_server, tmp_path)
    lay(page, her.project, by=5)
    until(page, lambda: waiting(page) == 0)
    restore(own_server, copy)
    lay(page, her.project, by=40)
    until(page, lambda: her.on_the_server() == 45 and waiting(page) == 0)
    assert shown(page, her.project) == 45
