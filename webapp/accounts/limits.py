"""How often strangers may try: to sign in, and to begin."""

from datetime import timedelta

from flask import current_app, request
from flask.sansio.blueprints import BlueprintSetupState
from werkzeug.exceptions import TooManyRequests

from webapp import clock
from webapp.accounts import names
from webapp.accounts.throttle import Bound, Throttle, neighbourhood

OFTEN = "Too many tries. Wait {wait}, then try again; nothing is lost."


def set_up(state: BlueprintSetupState) -> None:
    """Give the application its own counts."""
    state.app.extensions["evenrow_sign_in"] = Throttle(timedelta(minutes=15))
    state.app.extensions["evenrow_newcomers"] = Throttle(timedelta(hours=1))


def take_sign_in(name: str) -> list[Bound]:
    """Take a try at signing in; give it back when it turns out well.

    Ten for one name from one place hold a guesser off without shutting her out elsewhere; a hundred for one
    name hold off guessers in many places; sixty from one place hold off whoever tries many names.
    """
    who, where = names.key(name)[: names.LONGEST_KEY], neighbourhood(request.remote_addr)
    return _take("sign_in", [Bound(f"{where} {who}", 10), Bound(f" {who}", 100), Bound(where, 60)])


def take_newcomer() -> None:
    """Take one beginning without a name."""
    _take("newcomers", [Bound(neighbourhood(request.remote_addr), 100)])


def give_back(tries: list[Bound]) -> None:
    """Give back a try at signing in that turned out well."""
    _throttle("sign_in").give_back(tries)


def _take(which: str, bounds: list[Bound]) -> list[Bound]:
    wait = _throttle(which).take(bounds, clock.now())
    if wait:
        raise TooManyRequests(OFTEN.format(wait=_in_words(wait)), retry_after=int(wait.total_seconds()) + 1)
    return bounds


def _throttle(which: str) -> Throttle:
    found: Throttle = current_app.extensions[f"evenrow_{which}"]
    return found


def _in_words(wait: timedelta) -> str:
    minutes = -(-int(wait.total_seconds()) // 60) or 1
    return "a minute" if minutes == 1 else f"{minutes} minutes"
