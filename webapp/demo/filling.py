"""Fill a house of its own for the demonstration."""

import random
import shutil
from dataclasses import replace
from datetime import datetime, timedelta
from uuid import UUID
from zoneinfo import ZoneInfo

from argon2 import PasswordHasher

from webapp import clock, create_app
from webapp.accounts import names
from webapp.accounts.models import Account
from webapp.config import Config
from webapp.db import db, writing
from webapp.demo import legends
from webapp.demo.evenings import Entry, Work, evening, written
from webapp.demo.scenario import MONTHS, NAME, PASSPHRASE, STORIES, ZONE, Story
from webapp.house import house
from webapp.ids import new_id
from webapp.journal.batch import write_down
from webapp.migrate import migrate
from webapp.projects import turns
from webapp.projects.models import Project

SEED = 1851


def demo_config(config: Config) -> Config:
    """Give the demonstration a folder of its own, beside the house's data and never in it."""
    data = config.data / "demo"
    return replace(config, data=data, database_url=f"sqlite:///{data.resolve() / 'evenrow.db'}")


def fill(config: Config) -> None:
    """Make the demonstration's house anew, up to this moment."""
    shutil.rmtree(config.data, ignore_errors=True)
    config.data.mkdir(parents=True)
    app = create_app(config)
    migrate(app)
    with app.app_context(), writing():
        stitcher = _account()
        made = {story.title: _project(stitcher, story) for story in STORIES}
        done = {story.title: entries for story, entries in diary(clock.now())}
        for title, entries in done.items():
            write_down(stitcher, made[title], entries)
        for story in STORIES:  # a planned project went in hand at its first stitch
            project = db.session.get_one(Project, (stitcher, made[story.title]))
            db.session.refresh(project)
            project.state = story.state
            legends.lay_down(project, _crosses(story, done.get(story.title, [])))
            if story.state in ("resting", "finished"):
                turns.note(project, clock.now() - timedelta(days=story.last_day))
        db.session.commit()
        db.engine.dispose()


def diary(now: datetime) -> list[tuple[Story, list[Entry]]]:
    """Make up who was worked at on which evening, from months ago up to ``now``; one project an evening."""
    luck = random.Random(SEED)
    works = [Work(story, luck) for story in STORIES if story.evenings]
    entries: dict[str, list[Entry]] = {work.story.title: [] for work in works}
    today = now.astimezone(ZoneInfo(ZONE)).date()
    for ago in range(MONTHS, -1, -1):
        for work in luck.sample(works, len(works)):
            story = work.story
            if story.last_day <= ago <= story.first_day and luck.random() < story.evenings / 10:
                entries[story.title] += evening(work, today - timedelta(days=ago), luck, now)
                break
    return [(work.story, written(entries[work.story.title], luck)) for work in works]


def _crosses(story: Story, entries: list[Entry]) -> list[int]:
    """Count the crosses of each thread on the chart: of what is finished, those that were laid."""
    if story.state == "finished":
        return legends.laid(entries, story.title)
    whole = story.plan["width"] * story.plan["height"]
    return legends.crosses(story.title, round(whole * (story.fullness - (0.05 if story.fullness < 1 else 0))))


def _account() -> UUID:
    account = Account(
        id=new_id(), name=NAME, name_key=names.key(NAME), passphrase_hash=PasswordHasher().hash(PASSPHRASE),
        zone=ZONE, created=clock.now() - timedelta(days=MONTHS),
    )  # fmt: skip
    db.session.add(account)
    db.session.flush()
    house().owner = account.id
    return account.id


def _project(stitcher: UUID, story: Story) -> UUID:
    begun = clock.now() - timedelta(days=story.first_day + 2)
    project = Project(
        stitcher=stitcher, id=new_id(), title=story.title, created=begun,
        put_away=clock.now() - timedelta(days=30) if story.put_away else None, **story.plan,
    )  # fmt: skip
    db.session.add(project)
    db.session.flush()
    return project.id
