"""Evenrow: a phone-sized companion for counted cross stitch."""

from flask import Flask, g

from webapp import db as database
from webapp import errors, headers, house, origin, pwa, statics
from webapp.config import Config
from webapp.numbers import counted, number
from webapp.places import TEMPLATES


def create_app(config: Config | None = None) -> Flask:
    """Wire one application; no migration, thread or key is made here, as every worker and test calls it."""
    config = config or Config.from_environment()
    app = Flask(__name__, static_folder=None, template_folder=str(TEMPLATES))
    app.config["EVENROW"] = config
    app.config["SQLALCHEMY_DATABASE_URI"] = config.database_url
    app.config["MAX_CONTENT_LENGTH"] = 1_000_000
    app.config["MAX_FORM_MEMORY_SIZE"] = 200_000
    app.jinja_env.policies["json.dumps_kwargs"] = {"separators": (",", ":")}
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    app.jinja_env.filters |= {"number": number, "counted": counted}
    database.db.init_app(app)
    for part in (statics, headers, errors, origin, house, pwa):
        part.init_app(app)
    _register_features(app)
    _register_skeins(app)
    app.teardown_request(lambda _error: database.end_writing() if "writing" in g else None)
    return app


def _register_features(app: Flask) -> None:
    from webapp.accounts import guard
    from webapp.accounts import views as accounts
    from webapp.cloth import bench_views, piece_views, size_views, slip_views, stash_views  # noqa: F401
    from webapp.cloth import views as cloth
    from webapp.hours import views as hours
    from webapp.journal import views as journal
    from webapp.projects import views as projects
    from webapp.reminders import views as reminders
    from webapp.stitching import views as stitching
    from webapp.threads import legend_views as legend
    from webapp.threads import line_views, paste_views, reading_views  # noqa: F401
    from webapp.threads import quick_views as quick_thread
    from webapp.threads import sheet_views as sheets

    guard.init_app(app)
    hers = (projects, legend, sheets, journal, stitching, reminders, hours)
    for feature in (accounts, *hers, cloth, quick_thread):
        app.register_blueprint(feature.blueprint)


def _register_skeins(app: Flask) -> None:
    from webapp.threads import running_views, shopping_views, stash_views

    for feature in (stash_views, shopping_views, running_views):
        app.register_blueprint(feature.blueprint)
