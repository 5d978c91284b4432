"""Who is asking: the session cookie, and the doors it opens."""

import hashlib
import secrets
from collections.abc import Callable
from datetime import timedelta
from functools import wraps
from typing import Any, TypeVar, cast
from uuid import UUID

from flask import Flask, Response, abort, g, jsonify, make_response, redirect, request, url_for
from sqlalchemy import select
from werkzeug.wrappers import Response as BaseResponse

from webapp import clock
from webapp.accounts.models import Account, SignedIn
from webapp.db import begin_writing, db, writing
from webapp.errors import wants_json
from webapp.ids import new_id
from webapp.origin import SAFE

YEAR = timedelta(days=365)
View = TypeVar("View", bound=Callable[..., Any])


def cookie_name() -> str:
    """Name the cookie: bound to the host where the connection is encrypted."""
    return "__Host-evenrow" if request.is_secure else "evenrow"


def hash_token(token: str) -> str:
    """Hash a token of 256 random bits; being random, it needs no salt."""
    return hashlib.sha256(token.encode()).hexdigest()


def current_session() -> SignedIn | None:
    """Load the session the cookie names, once a request."""
    if "session" not in g:
        token = request.cookies.get(cookie_name(), "")
        query = select(SignedIn).where(SignedIn.token_hash == hash_token(token))
        found = db.session.scalar(query) if token else None
        g.session = found if found is not None and found.expires > clock.now() else None
    return cast(SignedIn | None, g.session)


def current_account() -> Account | None:
    """Load the stitcher who asks, or none."""
    if "account" not in g:
        session = current_session()
        g.account = db.session.get(Account, session.stitcher) if session else None
    return cast(Account | None, g.account)


def stitcher() -> Account:
    """Load the stitcher who asks; the door was passed already."""
    account = current_account()
    if account is None:
        abort(401)
    return account


def signed_in(view: View) -> View:
    """Let only a signed-in stitcher in. A request that may write takes its turn before the first SELECT."""

    @wraps(view)
    def guarded(*args: Any, **kwargs: Any) -> Any:
        if request.method not in SAFE:
            begin_writing()
        if current_account() is not None:
            return view(*args, **kwargs)
        if wants_json():
            return make_response(jsonify(error="Sign in again to go on; nothing is lost."), 401)
        return redirect(url_for("accounts.ask", next=request.full_path.rstrip("?")), 303)

    return cast(View, guarded)


def open_session(account: UUID, device: str) -> str:
    """Add a session and give its token, which is kept nowhere on this side."""
    token = secrets.token_urlsafe(32)
    moment = clock.now()
    db.session.add(
        SignedIn(
            stitcher=account,
            id=new_id(),
            token_hash=hash_token(token),
            device=device[:80],
            created=moment,
            seen=moment,
            expires=moment + YEAR,
        )
    )
    return token


def set_cookie(response: BaseResponse, token: str) -> None:
    """Hand the token to the browser, for a year."""
    response.set_cookie(
        cookie_name(),
        token,
        max_age=int(YEAR.total_seconds()),
        secure=request.is_secure,
        httponly=True,
        samesite="Lax",
        path="/",
    )


def drop_cookie(response: BaseResponse) -> None:
    """Take the token away from the browser."""
    response.delete_cookie(cookie_name(), secure=request.is_secure, httponly=True, samesite="Lax", path="/")


def init_app(app: Flask) -> None:
    """Tell every page who is asking, and slide the session on once an hour at most."""

    @app.context_processor
    def who() -> dict[str, Account | None]:
        return {"account": current_account()}

    @app.after_request
    def slide(response: Response) -> Response:
        session = g.get("session")
        if session is None or request.endpoint == "static" or response.status_code >= 400:
            return response
        if clock.now() - session.seen > timedelta(hours=1) and request.cookies.get(cookie_name()):
            _see(session.stitcher, session.id)
            set_cookie(response, request.cookies[cookie_name()])
        return response


def _see(account: UUID, session: UUID) -> None:
    with writing():
        found = db.session.get(SignedIn, (account, session))
        if found is not None:
            found.seen = clock.now()
            found.expires = found.seen + YEAR
            db.session.commit()
