"""Static files: under a prefix that changes with their content, packed once, kept for good by browsers."""

import gzip
import hashlib
import mimetypes
from functools import cache
from pathlib import Path

import brotli
from flask import Flask, Response, abort, request, send_from_directory, url_for

from webapp import joined
from webapp.places import STATIC

KEPT = "public, max-age=31536000, immutable"
WORTH_PACKING = ("text/html", "application/json", "text/javascript")
PACKED = {".js", ".css", ".svg", ".webmanifest"}


@cache
def digest() -> str:
    """Name the static files as a whole, by their content."""
    total = hashlib.sha256(Path(joined.__file__).read_bytes())
    for path in files():
        total.update(path.encode() + b"\0" + (STATIC / path).read_bytes())
    return total.hexdigest()[:12]


@cache
def files() -> tuple[str, ...]:
    """List every static file, relative to the folder, in a fixed order."""
    return tuple(sorted(p.relative_to(STATIC).as_posix() for p in STATIC.rglob("*") if p.is_file()))


@cache
def packed(path: str, encoding: str) -> bytes:
    """Read one text file, its comments taken out, packed for the wire; done once a process."""
    body = lean(STATIC / path)
    if encoding == "br":
        return bytes(brotli.compress(body, quality=11))
    return gzip.compress(body, 9, mtime=0) if encoding == "gzip" else body


def lean(path: Path) -> bytes:
    """Read a file as it is sent: styles and scripts made small, scripts joined with what starts with them."""
    name = path.relative_to(STATIC).as_posix()
    if path.suffix == ".css":
        return joined.small(path.read_text(), "text/css").encode()
    if path.suffix == ".js" and not name.startswith("vendor/"):
        return joined.script(name).encode()
    return path.read_bytes()


def encoding_for(accepted: str) -> str:
    """Choose the best packing that the browser takes."""
    names = {part.split(";")[0].strip() for part in accepted.split(",") if not part.strip().endswith(";q=0")}
    return next((name for name in ("br", "gzip") if name in names), "")


def send(path: str) -> Response:
    """Send one static file."""
    if path not in files():
        abort(404)
    if Path(path).suffix not in PACKED:
        return send_from_directory(STATIC, path)
    encoding = encoding_for(request.headers.get("Accept-Encoding", ""))
    response = Response(packed(path, encoding), mimetype=mimetypes.guess_type(path)[0])
    if encoding:
        response.headers["Content-Encoding"] = encoding
    response.headers["Vary"] = "Accept-Encoding"
    return response


def pack(response: Response) -> Response:
    """Pack a page or an answer that was made just now: a page small, an answer soon."""
    if response.direct_passthrough or "Content-Encoding" in response.headers or response.status_code == 304:
        return response
    if response.mimetype not in WORTH_PACKING or (response.content_length or 0) < 500:
        return response
    encoding = encoding_for(request.headers.get("Accept-Encoding", ""))
    if encoding:
        body, page = response.get_data(), response.mimetype == "text/html"
        quality = 11 if page and len(body) < 20_000 else 4
        small = brotli.compress(body, quality=quality) if encoding == "br" else gzip.compress(body, 6)
        response.set_data(small)
        response.headers["Content-Encoding"] = encoding
    response.vary.add("Accept-Encoding")
    return response


def init_app(app: Flask) -> None:
    """Serve the static folder under its digest, and pack what is drawn."""

    @app.get(f"/static/{digest()}/<path:path>", endpoint="static")
    def static(path: str) -> Response:
        response = send(path)
        response.headers["Cache-Control"] = KEPT
        return response

    app.after_request(pack)
    app.jinja_env.globals["static"] = lambda path: url_for("static", path=path)
