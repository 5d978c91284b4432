"""What makes the pages an app: the worker, the manifest, and whose page is whose."""

import hashlib
import json
import struct
from functools import cache
from pathlib import Path
from typing import Any

from flask import Flask, Response, g, render_template, request, url_for

from webapp import statics
from webapp.places import SHARED, STATIC, TEMPLATES

CODE = Path(__file__).parent
# What needs nobody's account and no network.
BENCH = (
    "/cloth",
    "/cloth/gauge",
    "/cloth/ruler",
    "/cloth/size",
    "/cloth/piece",
    "/cloth/class",
    "/cloth/slip",
    "/thread",
)
OPEN_PLACES = (*BENCH, "/shell/stitch", "/shell/offline", "/shell/tonight")
ONLY_OUTSIDE = ("sw.js", "screens/")  # what the worker need not keep: itself, and pictures for the installer
INK = "#181715"


@cache
def version() -> str:
    """Name everything a page is drawn from, by its content."""
    total = hashlib.sha256(statics.digest().encode())
    for root, pattern in ((TEMPLATES, "*.html"), (SHARED, "*.json"), (CODE, "*.py")):
        for path in sorted(root.rglob(pattern)):
            total.update(path.relative_to(root).as_posix().encode() + b"\0" + path.read_bytes())
    return total.hexdigest()[:12]


def made_of(app: Flask) -> dict[str, Any]:
    """List what one version of the worker keeps."""
    rules = {rule.rule for rule in app.url_map.iter_rules()}
    return {
        "version": version(),
        "digest": statics.digest(),
        "files": [url_for("static", path=p) for p in statics.files() if not p.startswith(ONLY_OUTSIDE)],
        "pages": [place for place in OPEN_PLACES if place in rules],
    }


def worker(app: Flask) -> str:
    """Write the worker; as a module it can also send what waits when the network comes back."""
    wake = f'import "{url_for("static", path="js/pwa/wake.js")}";\n' if "module" in request.args else ""
    head = f"const {{ version, digest, files, pages }} = {json.dumps(made_of(app))};\n"
    parts = ("sw.js", "js/reminders/worker.js")
    return wake + head + "\n".join(statics.lean(STATIC / path).decode() for path in parts)


def icon(path: str, size: str, **more: str) -> dict[str, str]:
    """Name one icon of the manifest."""
    kind = "image/svg+xml" if path.endswith(".svg") else "image/png"
    return {"src": url_for("static", path=f"icons/{path}"), "sizes": size, "type": kind, **more}


def screens() -> list[dict[str, str]]:
    """List the pictures an installer may show; their size stands in their first bytes."""
    found = []
    for path in (p for p in statics.files() if p.startswith("screens/") and p.endswith(".png")):
        wide, high = struct.unpack(">II", (STATIC / path).read_bytes()[16:24])
        label = Path(path).stem.replace("-", " ").capitalize()
        found.append({"src": url_for("static", path=path), "sizes": f"{wide}x{high}", "type": "image/png"})
        found[-1] |= {"form_factor": "narrow" if high > wide else "wide", "label": label}
    return found


def manifest() -> dict[str, Any]:
    """Describe the app to whoever installs it."""
    shortcuts = [
        ("Stitch", "/projects"),
        ("What cloth is this?", "/cloth/gauge"),
        ("How much thread?", "/thread"),
        ("Hours", "/hours"),
    ]
    pictures = screens()
    return {
        "id": "/",
        "name": "Evenrow",
        "short_name": "Evenrow",
        "description": "A companion for counted cross stitch.",
        "lang": "en-GB",
        "start_url": "/",
        "scope": "/",
        "display": "standalone",
        "background_color": INK,
        "theme_color": INK,
        "icons": [
            icon("icon.svg", "any"),
            icon("icon-192.png", "192x192"),
            icon("icon-512.png", "512x512"),
            icon("maskable-512.png", "512x512", purpose="maskable"),
        ],
        "shortcuts": [{"name": name, "url": url} for name, url in shortcuts],
        **({"screenshots": pictures} if pictures else {}),
    }


def init_app(app: Flask) -> None:
    """Serve the worker and the manifest, and say of each answer whose it is."""

    @app.get("/sw.js")
    def sw() -> Response:
        response = Response(worker(app), mimetype="text/javascript")
        response.headers["Cache-Control"] = "no-cache"
        return response

    @app.get("/manifest.webmanifest")
    def webmanifest() -> Response:
        return Response(json.dumps(manifest()), mimetype="application/manifest+json")

    @app.get("/shell/offline")
    def offline() -> str:
        return render_template("offline.html", account=None)

    @app.after_request
    def say_whose(response: Response) -> Response:
        if "session" in g:
            response.headers["X-Evenrow-Account"] = str(g.seen[0]) if g.seen else "none"
        return response
