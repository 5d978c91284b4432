"""A slip asked for by its figures, as the bench's pages hand them on and the slip's own form sends them.

Pure, and the same in static/js/cloth/slip_asking.js.
"""

from collections.abc import Mapping

from webapp.cloth import size_asking, slip_text, slip_threads
from webapp.cloth.lengths import typed as length_typed
from webapp.cloth.reads import Asked
from webapp.cloth.slip_text import Slip
from webapp.cloth.typed import Mistyped, amount
from webapp.cloth.words import plain

OVERS = "A slip is for stitches over one or two threads."
OFF = "Write how far the count may be off, like 0.3: at most a quarter of it."


def ask(typed: Mapping[str, str]) -> tuple[Asked, Slip | None]:
    """Read the figures of a slip; without a fault among them they make one."""
    asked = size_asking.ask(typed)
    title = typed.get("title", "").strip()
    asked.typed = kept = {**asked.typed, "title": title, "threads": typed.get("threads", "")}
    if fault := slip_text.fault(title):
        asked.errors["title"] = fault
    if asked.values["over"] == "3":
        asked.errors["over"] = OVERS
    asked.values["error"] = _off(asked)
    try:
        asked.values["threads"] = slip_threads.read(kept["threads"])
    except slip_threads.Unsound:
        asked.errors["threads"] = slip_text.DAMAGED
        kept["threads"] = ""  # asked again, the slip is made without them
    return asked, None if asked.errors else _slip(asked, title)


def typed(slip: Slip) -> dict[str, str]:
    """Write a slip as its form has it."""
    return {
        "title": slip.title,
        "width": str(slip.width),
        "height": str(slip.height),
        "count": plain(slip.count),
        "across": "" if slip.across is None else plain(slip.across),
        "over": str(slip.over),
        "finish": slip.finish,
        "held": slip.held,
        "frays": "yes" if slip.frays else "",
        "own": "" if slip.own is None else length_typed(slip.own, slip.unit),
        "unit": slip.unit,
        "error": "" if slip.error is None else plain(slip.error),
        "threads": slip_threads.write(slip.threads),
    }


def _off(asked: Asked) -> float | None:
    text, count = asked.typed.get("error", "").strip(), asked.values["count"]
    if not text or count is None:
        return None
    try:
        off, unit, _divided = amount(text, "0.3")
    except Mistyped:
        off, unit = 0.0, None
    if unit or not 0.001 <= off <= count / 4:
        asked.errors["error"] = OFF
    return off


def _slip(asked: Asked, title: str) -> Slip:
    values = asked.values
    return Slip(
        *(values["width"], values["height"], values["count"], values["across"], int(values["over"])),
        *(values["finish"], values["held"], values["frays"] == "yes", values["own"], values["unit"]),
        *(values["error"], title, values["threads"]),
    )
