"""Who is asking: the session cookie, and the doors it opens."""

from collections.abc import Callable
from datetime import timedelta
from functools import wraps
from typing import Any, TypeVar, cast
from uuid import UUID

from flask import Flask, Response, abort, g, jsonify, make_response, redirect, request, url_for
from sqlalchemy import delete, select, update
from sqlalchemy.exc import OperationalError
from werkzeug.wrappers import Response as BaseResponse

from webapp import clock
from webapp.accounts.devices import device_name
from webapp.accounts.models import Account, SignedIn
from webapp.accounts.returning import path_of
from webapp.accounts.tokens import hash_token, new_token
from webapp.db import begin_writing, db, end_writing, writing
from webapp.errors import wants_fragment, wants_json
from webapp.ids import new_id
from webapp.origin import SAFE
from webapp.reminders.models import PushPhone

YEAR = timedelta(days=365)
HOUR = timedelta(hours=1)
View = TypeVar("View", bound=Callable[..., Any])


def cookie_name() -> str:
    """Name the cookie: bound to the host where the connection is encrypted."""
    return "__Host-evenrow" if request.is_secure else "evenrow"


def current_session() -> SignedIn | None:
    """Load the session the cookie names, once a request."""
    if "session" not in g:
        token = request.cookies.get(cookie_name(), "")
        query = select(SignedIn).where(SignedIn.token_hash == hash_token(token))
        found = db.session.scalar(query) if token else None
        g.session = found if found is not None and found.expires > clock.now() else None
        g.seen = (found.stitcher, found.id, found.seen) if g.session and found else None
    return cast(SignedIn | None, g.session)


def current_account() -> Account | None:
    """Load the stitcher who asks, or none."""
    if "account" not in g:
        session = current_session()
        g.account = db.session.get(Account, session.stitcher) if session else None
    return cast(Account | None, g.account)


def forget() -> None:
    """Load anew who asks: a transaction ended, and the answer may have changed meanwhile."""
    for name in ("session", "account", "seen"):
        g.pop(name, None)


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
        return view(*args, **kwargs) if current_account() is not None else _ask_to_sign_in()

    return cast(View, guarded)


def signed_in_reading(view: View) -> View:
    """Let only a signed-in stitcher in; the view begins to write itself, after what takes long."""

    @wraps(view)
    def guarded(*args: Any, **kwargs: Any) -> Any:
        return view(*args, **kwargs) if current_account() is not None else _ask_to_sign_in()

    return cast(View, guarded)


def _ask_to_sign_in() -> BaseResponse:
    """Lead to the sign-in page, and from there back to the page she is on; programs are told."""
    if wants_json():
        return make_response(jsonify(error="Sign in again to go on; nothing is lost."), 401)
    if wants_fragment():
        back = path_of(request.headers.get("HX-Current-URL"), request.host)
        return make_response("", 401, {"HX-Redirect": url_for("accounts.ask", next=back)})
    asked = (
        request.full_path.rstrip("?") if request.method in SAFE else path_of(request.referrer, request.host)
    )
    return redirect(url_for("accounts.ask", next=asked), 303)


def change_session(account: UUID) -> str:
    """End this browser's session, if it has one, and open one for ``account``, within a writing transaction.

    Gives the token, which is kept nowhere on this side. How far this phone's clock is off stays known.
    """
    former = current_session()
    offset = former.offset_ms if former else 0
    close_session()
    token, moment = new_token(), clock.now()
    db.session.execute(delete(SignedIn).where(SignedIn.stitcher == account, SignedIn.expires <= moment))
    session = new_id()
    if former is not None:
        keep_reminding(former, account, session)
    db.session.add(
        SignedIn(
            stitcher=account,
            id=session,
            token_hash=hash_token(token),
            device=device_name(request.user_agent.string),
            offset_ms=offset,
            created=moment,
            seen=moment,
            expires=moment + YEAR,
        )
    )
    return token


def keep_reminding(former: SignedIn, account: UUID, session: UUID) -> None:
    """Let a phone go on taking reminders where its session ends for another of the same stitcher.

    Brought along from an account without a name, it is hers by now too.
    """
    phone = (PushPhone.stitcher == account, PushPhone.session == former.id)
    db.session.execute(update(PushPhone).where(*phone).values(session=session))


def close_session() -> None:
    """End this browser's session, if it has one, within a writing transaction."""
    session = current_session()
    if session is not None:
        db.session.delete(session)
    g.session = g.account = g.seen = None


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
        seen = g.get("seen")
        if seen is None or response.status_code >= 400 or clock.now() - seen[2] <= HOUR:
            return response
        try:
            if _see(seen[0], seen[1]):
                set_cookie(response, request.cookies[cookie_name()])
        except OperationalError:
            app.logger.warning("the database is busy; when this session was last seen waits")
        return response


def _see(account: UUID, session: UUID) -> bool:
    """Note that a session is in use, in a transaction of its own; tells whether it still stands."""
    end_writing()  # what a view did not commit is not to be committed here
    with writing():
        found = db.session.get(SignedIn, (account, session))
        if found is not None:
            found.seen = clock.now()
            found.expires = found.seen + YEAR
            db.session.commit()
        return found is not None
