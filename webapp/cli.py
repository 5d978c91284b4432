"""The command ``evenrow``."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager

import click
from sqlalchemy.exc import DBAPIError

from webapp.config import BadSetting, Config


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.pass_context
def main(ctx: click.Context) -> None:
    """Evenrow: a phone-sized companion for counted cross stitch."""
    try:
        ctx.obj = Config.from_environment()
    except BadSetting as error:
        raise click.ClickException(str(error)) from error


@contextmanager
def said_plainly() -> Iterator[None]:
    """Say in a sentence that a folder holds no house yet, or one that cannot be read."""
    try:
        yield
    except DBAPIError as error:
        help_ = "`evenrow serve` makes a new house, or brings one up to date."
        raise click.ClickException(f"The database cannot be read: {error.orig}. {help_}") from error


@main.command()
@click.option("--cert", type=click.Path(exists=True, dir_okay=False), help="Certificate, for https.")
@click.option("--key", type=click.Path(exists=True, dir_okay=False), help="Its private key.")
@click.pass_obj
def serve(config: Config, cert: str | None, key: str | None) -> None:
    """Bring the database up to date and serve this house."""
    from webapp.serve import run

    if bool(cert) != bool(key):
        raise click.UsageError("--cert and --key go together.")
    run(config, cert, key)


@main.command()
@click.pass_obj
def demo(config: Config) -> None:
    """Serve a house filled with an invented stitcher's months, in a database of its own."""
    from webapp.demo.filling import demo_config, fill
    from webapp.demo.scenario import NAME, PASSPHRASE
    from webapp.serve import run

    config = demo_config(config)
    fill(config)
    click.echo(f"Sign in as {NAME} with the passphrase: {PASSPHRASE}")
    run(config)


@main.command()
@click.pass_obj
def audit(config: Config) -> None:
    """Work every total out anew from the journal, and say where one differs."""
    from webapp import create_app
    from webapp.journal.audit import differences

    app = create_app(config)
    with said_plainly(), app.app_context():
        found = 0
        for sentence in differences():
            click.echo(sentence)
            found += 1
    click.echo("No difference." if not found else f"{found} differences.")
    sys.exit(1 if found else 0)


@main.command()
@click.option("--stay", is_flag=True, hidden=True, help="Go on until what comes in ends, as under `serve`.")
@click.pass_obj
def remind(config: Config, stay: bool) -> None:
    """Send what is due of tonight's reminders, once: for cron. `serve` does it by itself."""
    from webapp.reminders.child import one_round, stay_and_remind

    if stay:
        stay_and_remind(config)
        return
    with said_plainly():
        click.echo(f"Sent: {one_round(config)}.")


@main.command()
@click.argument("name")
@click.pass_obj
def passphrase(config: Config, name: str) -> None:
    """Give the stitcher called NAME another passphrase, and sign her out everywhere.

    Asks for it twice on a terminal; else it is the first line of what comes in.
    """
    from webapp import create_app
    from webapp.accounts.keeping import CannotReplace, find_claimed, replace_passphrase

    with said_plainly(), create_app(config).app_context():
        try:
            find_claimed(name)
            replace_passphrase(name, ask_passphrase())
        except CannotReplace as error:
            raise click.ClickException(str(error)) from error
    click.echo("The new passphrase holds, and she is signed out everywhere.")


def ask_passphrase() -> str:
    """Ask for a passphrase twice on a terminal, unseen; elsewhere take one line."""
    if sys.stdin.isatty():
        asked: str = click.prompt("The new passphrase", hide_input=True, confirmation_prompt="Once more")
        return asked
    try:
        return sys.stdin.buffer.readline().decode().rstrip("\r\n")
    except UnicodeDecodeError as error:
        raise click.ClickException("The passphrase cannot be read: send it as UTF-8.") from error


if __name__ == "__main__":
    main()
