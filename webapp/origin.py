"""A state change must come from a page of our own.

Sec-Fetch-Site says so where the browser sends it (https and localhost); on plain http Origin must name the
host that was asked. No tokens: they go stale in pages kept for use without network.
"""

import re
from urllib.parse import urlsplit

from flask import Flask, Request, abort, request

_ORIGIN = re.compile(r"https?://([\w.-]+|\[[0-9a-f:.]+\])(:\d{1,5})?", re.ASCII | re.IGNORECASE)
SAFE = frozenset({"GET", "HEAD", "OPTIONS"})


def is_same_origin(req: Request) -> bool:
    """Tell whether the request was made by one of our own pages, or by hand."""
    site = req.headers.get("Sec-Fetch-Site")
    if site is not None:
        return site in ("same-origin", "none")
    return _host_of(req.headers.get("Origin", "")) == req.host.lower() != ""


def origin_of_page(req: Request) -> str:
    """Give the origin of the page that asks, as its browser says it; nothing where it does not.

    Host is what the one who asks writes, and a proxy may hand on another; Origin is the browser's own word.
    """
    said = req.headers.get("Origin", "")
    return said if _ORIGIN.fullmatch(said) else ""


def _host_of(origin: str) -> str:
    try:
        return urlsplit(origin).netloc.lower()
    except ValueError:
        return ""


def init_app(app: Flask) -> None:
    """Refuse, before anything else, what another site sends."""

    @app.before_request
    def refuse_other_sites() -> None:
        if request.method not in SAFE and not is_same_origin(request):
            abort(
                403, "This did not come from a page of Evenrow, so nothing was changed. Open the page again."
            )
