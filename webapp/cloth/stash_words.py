"""What her stash says of a cloth."""

from math import floor

from webapp.cloth.bounds import INCH
from webapp.cloth.lengths import laid, typed
from webapp.cloth.models import KeptCloth
from webapp.cloth.stash import Found
from webapp.cloth.words import plain


def hundredth(value: float) -> str:
    """Write a count to a hundredth, without idle zeros."""
    return plain(floor(value * 100 + 0.5) / 100)


def counted_in_words(cloth: KeptCloth) -> str:
    """Say what was counted: "28 ± 0.4 threads along, 27.6 ± 0.5 across" or "14 squares"."""
    along = f"{_off(cloth.along, cloth.along_error)} {cloth.kind}"
    if cloth.across is None:
        return f"{along} an inch{'' if cloth.along_error else ', as sold'}"
    return f"{along} an inch along, {_off(cloth.across, cloth.across_error)} across"


def _off(count: float, error: float | None) -> str:
    return f"{hundredth(count)} ± {hundredth(error)}" if error else hundredth(count)


def laid_in_words(found: Found, unit: str) -> str:
    """Say how a design lies on a cloth: over how many threads, how it goes, and what margin it gets."""
    over = "over two" if found.over == 2 else "over one"
    side = max(0.0, min(found.fit.margin_across, found.fit.margin_down))
    said = over if found.cloth.kind == "threads" and "over" not in (found.same or "") else ""
    turned = "turned" if found.fit.turned else ""
    parts = [found.same or "", said, turned, f"{laid(side, unit, 'down')} a side"]
    return ", ".join(part for part in parts if part)


def form_of(cloth: KeptCloth, unit: str) -> dict[str, str]:
    """Write a cloth as its form has it, lengths in ``unit``."""
    said = {"name": cloth.name, "kind": cloth.kind, "note": cloth.note}
    for name in ("along", "along_error", "across", "across_error"):
        value = getattr(cloth, name)
        said[name] = "" if value is None else plain(value)
    for name in ("width", "length"):
        value = getattr(cloth, name)
        said[name] = "" if value is None else typed(value, unit)
    return said


def piece_of(cloth: KeptCloth) -> dict[str, str]:
    """Give what the page of a piece asks: its size, its counts as it lies, and over how many."""
    across = cloth.along if cloth.across is None else cloth.across
    return {
        "piece_width": f"{plain(round((cloth.width or 0) / INCH, 4))} in",
        "piece_height": f"{plain(round((cloth.length or 0) / INCH, 4))} in",
        "count": plain(across),
        "across": "" if cloth.across is None else plain(cloth.along),
        "over": "2" if cloth.kind == "threads" else "1",
    }
