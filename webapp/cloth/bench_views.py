"""Views of what else lies on the bench. None needs an account."""

from flask import render_template

from webapp.cloth.views import blueprint


@blueprint.get("/cloth/ruler")
def ruler() -> str:
    """Show the screen as a ruler; all of it is the phone's own work."""
    return render_template("cloth/ruler.html")
