"""Views of the doors: the first page, beginning, signing up, in and out."""

from typing import Any

from flask import Blueprint, abort, current_app, make_response, redirect, render_template, request, url_for
from werkzeug.exceptions import TooManyRequests
from werkzeug.wrappers import Response

from webapp.accounts import account_views, doors, limits, zones
from webapp.accounts.bringing import AlreadyThere, has_work
from webapp.accounts.entering import recognise, settle_begun
from webapp.accounts.guard import (
    change_session,
    close_session,
    current_account,
    drop_cookie,
    forget,
    set_cookie,
)
from webapp.accounts.models import Account
from webapp.accounts.passphrases import hash_passphrase
from webapp.accounts.returning import HOME, safe_next
from webapp.accounts.schemas import BeginForm, SignInForm, SignUpForm
from webapp.config import SignUp
from webapp.db import begin_writing, db
from webapp.forms import Errors, load_form

blueprint = Blueprint("accounts", __name__)
blueprint.register_blueprint(account_views.blueprint)
blueprint.record_once(limits.set_up)

Answer = str | tuple[str, int] | Response
WRONG = "Name and passphrase do not go together here. Check both and try again."
TAKEN = "Somebody here has that name. If it is you, sign in; else choose another."
SHUT = "This house takes in nobody new just now. Ask whoever runs it."
CLASH = "Some of this work is in that account already, so nothing was changed. Sign up to keep it by itself."


@blueprint.get("/")
def welcome() -> Answer:
    """Show the first page to strangers, and her projects to a stitcher."""
    return redirect(HOME, 303) if current_account() else first_page({})


@blueprint.post("/accounts/unclaimed")
def begin() -> Answer:
    """Begin without a name, where the house is open."""
    given, errors = load_form(BeginForm())
    if errors:
        return first_page(errors), 422
    if sign_up_setting() != "open":
        abort(403, SHUT)
    limits.take_newcomer()
    begin_writing()
    forget()
    if current_account() is not None:  # the button was tapped twice
        return redirect(url_for("projects.new"), 303)
    return admit(doors.begin_unclaimed(given["zone"]), url_for("projects.new"))


@blueprint.get("/accounts/new")
def new() -> Answer:
    """Ask for name and passphrase."""
    account = current_account()
    if account is not None and account.claimed:
        return redirect(url_for("accounts.account.show"), 303)
    return sign_up_page(request.args, {})


@blueprint.post("/accounts")
def create() -> Answer:
    """Sign up, or give the account begun on this phone its name, with everything in it kept."""
    given, errors = load_form(SignUpForm())
    if errors:
        return sign_up_page(request.form, errors), 422
    if not may_enter(given["invitation"]):
        return sign_up_page(request.form, {}), 403
    hashed = hash_passphrase(given.pop("passphrase"))
    begin_writing()
    forget()
    try:
        account = doors.claim(sign_up_setting(), begun_here(), passphrase_hash=hashed, **given)
    except doors.NameTaken:
        return sign_up_page(request.form, {"name": [TAKEN]}), 422
    except doors.DoorShut:
        return sign_up_page(request.form, {}), 403
    return admit(account, HOME)


@blueprint.get("/sign-in")
def ask() -> Answer:
    """Ask for name and passphrase, and then lead on."""
    account = current_account()
    if account is not None and account.claimed:
        return redirect(safe_next(request.args.get("next")), 303)
    return sign_in_page(request.args, {})


@blueprint.post("/sign-in")
def sign_in() -> Answer:
    """Sign in; what was begun on this phone comes along unless she says otherwise."""
    given, errors = load_form(SignInForm())
    if errors:
        return sign_in_page(request.form, errors), 422
    try:
        tries = limits.take_sign_in(given["name"])
    except TooManyRequests as error:
        page = sign_in_page(request.form, {"passphrase": [str(error.description)]})
        return make_response(page, 429, {"Retry-After": str(error.retry_after)})
    account = recognise(given["name"], given["passphrase"])
    if account is None:
        return sign_in_page(request.form, {"passphrase": [WRONG]}), 422
    limits.give_back(tries)
    try:
        settle_begun(begun_here(), account, given["bring"] == "yes")
    except AlreadyThere:
        return sign_in_page(request.form, {"bring": [CLASH]}), 422
    return admit(account, safe_next(given["next"]))


@blueprint.post("/sign-out")
def sign_out() -> Answer:
    """End this browser's session."""
    begin_writing()
    close_session()
    db.session.commit()
    response = redirect(url_for("accounts.welcome"), 303)
    drop_cookie(response)
    if request.is_secure:  # elsewhere browsers take no notice, and complain
        response.headers["Clear-Site-Data"] = '"cache"'  # or going back would show her pages to the next
    return response


def admit(account: Account, page: str) -> Response:
    """Open a session for ``account``, keep everything done so far, and lead on to ``page``."""
    token = change_session(account.id)
    db.session.commit()
    response = redirect(page, 303)
    set_cookie(response, token)
    return response


def sign_up_setting() -> SignUp:
    """Tell how the house takes in new stitchers."""
    setting: SignUp = current_app.config["EVENROW"].sign_up
    return setting


def begun_here() -> Account | None:
    """Load the account without a name that was begun on this phone."""
    account = current_account()
    return account if account is not None and not account.claimed else None


def may_enter(token: str) -> bool:
    """Tell whether whoever asks may sign up."""
    invited = doors.find_invitation(token) is not None
    return doors.may_sign_up(sign_up_setting(), doors.is_owned(), invited, begun_here() is not None)


def first_page(errors: Errors) -> str:
    """Draw the first page."""
    return render_template(
        "accounts/welcome.html", setting=sign_up_setting(), owned=doors.is_owned(), errors=errors
    )


def sign_up_page(values: Any, errors: Errors) -> str:
    """Draw the form for signing up, or say why there is none."""
    token = values.get("invitation", "")
    return render_template(
        "accounts/new.html",
        values=values,
        errors=errors,
        allowed=may_enter(token),
        setting=sign_up_setting(),
        token=token,
        zones=zones.offered(),
    )


def sign_in_page(values: Any, errors: Errors) -> str:
    """Draw the form for signing in."""
    begun = begun_here()
    return render_template(
        "accounts/sign_in.html",
        values=values,
        errors=errors,
        work=begun is not None and has_work(begun.id),
        setting=sign_up_setting(),
        owned=doors.is_owned(),
    )
