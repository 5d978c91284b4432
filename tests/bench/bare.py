"""The floor of the journal: a bare Flask view with one sqlite3 INSERT at synchronous=FULL."""

import sqlite3
import sys
import threading
from pathlib import Path

from flask import Flask, request

from webapp.serve import serve_app


def bare_app(path: Path) -> Flask:
    app = Flask(__name__)
    local = threading.local()
    one_at_a_time = threading.Lock()

    def connection() -> sqlite3.Connection:
        if not hasattr(local, "connection"):
            local.connection = sqlite3.connect(path, isolation_level=None, timeout=10)
            local.connection.execute("PRAGMA journal_mode=WAL")
            local.connection.execute("PRAGMA synchronous=FULL")
            local.connection.execute("CREATE TABLE IF NOT EXISTS entry (id TEXT PRIMARY KEY, body TEXT)")
        return local.connection

    @app.post("/journal")
    def create():
        entry = request.get_json()["entries"][0]
        with one_at_a_time:
            connection().execute("INSERT OR IGNORE INTO entry VALUES (?, ?)", (entry["id"], str(entry)))
        return {"accepted": [entry["id"]]}

    return app


if __name__ == "__main__":
    serve_app(bare_app(Path(sys.argv[1])), "127.0.0.1", 0)
