"""Her photographs: kept as files in the house's data, each known by a row of hers alone."""

import os
from pathlib import Path
from uuid import UUID, uuid4

from flask import current_app
from sqlalchemy import select

from webapp import clock
from webapp.config import Config
from webapp.db import db
from webapp.hours.models import Photograph
from webapp.hours.pictures import Picture


def folder() -> Path:
    """Give the folder of the files, for nobody's eyes but the house's."""
    config: Config = current_app.config["EVENROW"]
    made = config.data / "photographs"
    made.mkdir(mode=0o700, parents=True, exist_ok=True)
    return made


def path_of(photograph: Photograph) -> Path:
    """Give the file of a photograph."""
    return folder() / f"{photograph.file}.jpg"


def of_project(stitcher: UUID, project: UUID) -> list[Photograph]:
    """List the photographs of a project, the latest first."""
    query = select(Photograph).where(Photograph.stitcher == stitcher, Photograph.project == project)
    return list(db.session.scalars(query.order_by(Photograph.at.desc(), Photograph.id.desc())))


def keep(stitcher: UUID, project: UUID, id: UUID, picture: Picture, line: str) -> None:
    """Keep a picture, once for each id; the caller commits."""
    if db.session.get(Photograph, (stitcher, project, id)) is not None:
        return
    data, width, height = picture
    made = {"stitcher": stitcher, "project": project, "id": id, "line": line, "at": clock.now()}
    photograph = Photograph(**made, file=uuid4(), width=width, height=height)
    _write(path_of(photograph), data)
    db.session.add(photograph)


def part_with(photograph: Photograph) -> None:
    """Delete a photograph, its file too; the caller commits."""
    path_of(photograph).unlink(missing_ok=True)
    db.session.delete(photograph)


def _write(path: Path, data: bytes) -> None:
    """Write a file whole or not at all."""
    new = path.with_suffix(".new")
    with open(os.open(new, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())
    new.rename(path)
