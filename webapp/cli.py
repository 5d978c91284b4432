"""The command ``evenrow``."""

import sys

import click

from webapp.config import BadSetting, Config


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.pass_context
def main(ctx: click.Context) -> None:
    """Evenrow: a phone-sized companion for counted cross stitch."""
    try:
        ctx.obj = Config.from_environment()
    except BadSetting as error:
        raise click.ClickException(str(error)) from error


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
    with app.app_context():
        found = 0
        for sentence in differences():
            click.echo(sentence)
            found += 1
    click.echo("No difference." if not found else f"{found} differences.")
    sys.exit(1 if found else 0)


if __name__ == "__main__":
    main()
