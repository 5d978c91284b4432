"""The week and the year after ten years of daily stitching, against the same with one year behind them."""

import statistics
import tempfile
import time
from collections.abc import Iterator
from datetime import datetime, timedelta
from datetime import time as time_of_day
from pathlib import Path
from random import Random
from uuid import UUID, uuid4

from flask import Flask
from flask.testing import FlaskClient
from sqlalchemy import insert

from tests.conftest import browser_of
from tests.house import let_in
from webapp import clock, create_app
from webapp.accounts.models import Account
from webapp.config import Config
from webapp.db import db, writing
from webapp.hours import pace
from webapp.journal import quarters
from webapp.journal.audit import differences_of
from webapp.journal.models import Entry, Latest, Quarter, Sitting, Standing, Total
from webapp.journal.rows import as_row
from webapp.migrate import migrate
from webapp.projects.models import Project

YEARS, SITTINGS, TAPS = 10, 400, 100  # a year, a sitting: 4,000 sittings and 400,000 entries in ten years
ROWS = 200  # of a project, a sitting each; so two a year
TAKEN_OFF = 0.7  # of the evenings; else the work is on its frame that night
ASKED = 60
PAGES = ("/hours", "/hours.json", "/hours/month", "/hours/year")
LIMITS = {"/hours": 30, "/hours/year": 60}


def figures() -> Iterator[str]:
    with tempfile.TemporaryDirectory() as folder:
        houses = [house(Path(folder) / f"{years}", years) for years in (1, YEARS)]
        took = measured([client for _, client in houses])
        for page, (one, ten) in took.items():
            yield line(
                page, statistics.median(one), statistics.median(ten), statistics.quantiles(ten, n=20)[18]
            )
        app, client = houses[1]
        pace.finish.cache_clear()
        begun = time.perf_counter()
        client.get("/hours")
        yield f"hours: /hours with its forecasts drawn anew {(time.perf_counter() - begun) * 1000:.1f} ms"
        with app.app_context():
            counts = [db.session.query(model).count() for model in (Sitting, Entry, Quarter)]
            yield "hours: {:,} sittings, {:,} entries, {:,} quarters of an hour".format(*counts)
            sample = db.session.query(Project).order_by(Project.created).all()[:: YEARS // 2]
            found = [said for project in sample for said in differences_of(project)]
            yield f"hours: audit of {len(sample)} of its projects: {len(found)} differences {found[:1]}"
            db.engine.dispose()


def line(page: str, one: float, ten: float, late: float) -> str:
    limit = f", asked for: under {LIMITS[page]}" if page in LIMITS else ""
    return (
        f"hours: {page} with {YEARS} years behind it {ten:.1f} ms (p95 {late:.1f}{limit}), "
        f"with one {one:.1f} ms: ratio {ten / one:.2f}"
    )


def measured(clients: list[FlaskClient]) -> dict[str, list[list[float]]]:
    """Ask each page of one house and the other by turns; gives the milliseconds, past the first five."""
    took: dict[str, list[list[float]]] = {page: [[] for _ in clients] for page in PAGES}
    for n in range(ASKED + 5):
        for page in PAGES:
            for client, times in zip(clients, took[page], strict=True):
                begun = time.perf_counter()
                assert client.get(page).status_code == 200
                if n >= 5:
                    times.append((time.perf_counter() - begun) * 1000)
    return took


def house(folder: Path, years: int) -> tuple[Flask, FlaskClient]:
    folder.mkdir()
    app = create_app(Config.from_environment({"EVENROW_DATA": str(folder)}))
    migrate(app)
    client = browser_of(app)
    client.set_cookie("evenrow", let_in(app, "Alice"))
    with app.app_context(), writing():
        her = db.session.query(Account).one().id
        for n in range(years * SITTINGS // ROWS):
            write_project(her, n)
        db.session.query(Account).one().bedtime = by_day()
        db.session.commit()
    return app, client


def by_day() -> time_of_day:
    """Give a bedtime far from now: at night each page also asks for work that is still on its frame."""
    return (datetime.now() + timedelta(hours=6)).time()


def write_project(her: UUID, n: int) -> None:
    """Write one project's sittings as the journal would have kept them: the newest is in hand."""
    project = uuid4()
    begun = clock.now() - timedelta(days=365.25 * (n + 1) * ROWS / SITTINGS)
    step = timedelta(days=365.25) / SITTINGS
    made = {
        "title": f"Work {n}",
        "width": TAPS,
        "height": ROWS + 40 * (n == 0),
        "count": 14,
        "created": begun,
    }
    db.session.add(Project(stitcher=her, id=project, state="in hand" if n == 0 else "finished", **made))
    db.session.flush()
    luck, entries = Random(n), []
    for row in range(1, ROWS + 1):
        at = clock_on_the_hour(begun + (row - 1) * step)
        entries += evening(her, project, row, at, luck)
    write(her, project, entries)


def clock_on_the_hour(moment: datetime) -> datetime:
    return moment.replace(minute=0, second=0, microsecond=0)


def evening(her: UUID, project: UUID, row: int, at: datetime, luck: Random) -> list[dict[str, object]]:
    """Make one evening's entries: a sitting, the frame on and mostly off again, a row of taps, closed."""
    sitting = str(uuid4())
    said: list[dict[str, object]] = [
        {"id": sitting, "kind": "begin", "at": at},
        {"kind": "frame", "state": "on"},
    ]
    said += [{"kind": "stitches", "row": row, "by": 1} for _ in range(TAPS - 5)]
    said += [{"kind": "done", "row": row, "done": True}, {"kind": "end", "sitting": sitting}]
    said += [{"kind": "frame", "state": "off"}] if luck.random() < TAKEN_OFF else []
    gap = timedelta(minutes=luck.uniform(40, 110)) / len(said)
    made = (
        {"id": str(uuid4()), "project": str(project), "at": at + i * gap, **one} for i, one in enumerate(said)
    )
    return [as_row(her, one, 0) for one in made]


def write(her: UUID, project: UUID, rows: list[dict[str, object]]) -> None:
    """Insert the entries, and what the journal works out from them."""
    of = {"stitcher": her, "project": project}
    revision = len(rows)
    places: dict[str, list[dict]] = {}
    sums: dict[quarters.Key, int] = {}
    sat = {
        row["sitting"]: {**of, "id": row["sitting"], "begun": row["at"], "begin": row["at"]}
        for row in rows
        if row["kind"] == "begin"
    }
    for row in rows:
        if row["kind"] == "end":
            sat[row["sitting"]] |= {"end": row["at"], "closers": 1, "struck": False, "over_a_day": False}
        if row["tally"]:
            places.setdefault(row["tally"], []).append(row)
        if row["kind"] == "stitches":
            key = quarters.key(row["tally"], row["at"])
            sums[key] = sums.get(key, 0) + row["by"]
    db.session.execute(insert(Entry), rows)
    db.session.execute(insert(Standing), [{**of, "revision": revision}])
    db.session.execute(insert(Sitting), list(sat.values()))
    db.session.execute(
        insert(Quarter), [{**of, "quarter": q, "pass_": p, "stitches": n} for (q, p), n in sums.items()]
    )
    totals, latest = [], []
    for tally, touched in places.items():
        laid = sum(row["by"] or 0 for row in touched)
        done = touched[-1]
        kept = {
            "pass_": "cross",
            "kind": "row",
            "stitches": laid,
            "bare": 0,
            "touches": len(touched),
            "done": True,
        }
        totals.append({**of, "tally": tally, **kept, "revision": revision})
        held = {"register": done["register"], "at": done["at"], "entry": done["id"], "value": True}
        latest.append({**of, **held, "revision": revision})
    db.session.execute(insert(Total), totals)
    db.session.execute(insert(Latest), latest)
