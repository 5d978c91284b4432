"""Draw one named block of a page, for a fragment with a URL of its own."""

from typing import Any

from flask import current_app
from jinja2 import Environment


def render_block(template: str, block: str, **values: Any) -> str:
    """Draw ``block`` of ``template`` with ``values`` and what every page is given."""
    environment: Environment = current_app.jinja_env
    page = environment.get_template(template)
    current_app.update_template_context(values)
    return "".join(page.blocks[block](page.new_context(values)))
