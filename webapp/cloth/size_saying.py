"""Everything the page of size and cut says, slot by slot; the same, word for word, in its JavaScript.

Figures come from ``size_answer``; they are rounded only here.
"""

from webapp.cloth.advice import Strands
from webapp.cloth.bounds import INCH
from webapp.cloth.lengths import area, both, inches, laid, laid_area, to_cut
from webapp.cloth.size_answer import Answer, ring
from webapp.cloth.sizing import Cloth, finished

SQUARES_TO = 22  # per inch: over one, finer cloth is counted in threads (common practice, no source)
WHY = {
    "framed": "framed and laced",
    "usual": "the usual",
    "small": "a small finish",
    "ornament": "an ornament",
    "own": "your own",
    "hoop": "what a hoop grips",
    "clamps": "what clamps grip",
    "scroll": "what a scroll frame takes",
    "stretched": "what stretching takes",
}
HOLDS = {"clamps": "Frame with clamps", "scroll": "Scroll frame", "stretched": "Stretcher bars"}


def slots(found: Answer) -> dict[str, str]:
    """Give every text of the answer by its slot."""
    sized, unit = found.sized, found.unit
    cut, cut_other = to_cut(sized.cut_width, sized.cut_height, unit)
    done, done_other = both(sized.finished_width, sized.finished_height, unit)
    return {
        "cut": cut,
        "cut-other": cut_other,
        "finished": done,
        "finished-other": done_other,
        "margin": f"{laid(found.margin.mm, unit, 'up')} a side{' at least' if found.least else ''}",
        "why": why(found),
        "middle": f"{halfway(sized.width)} across",
        "middle-down": f"{halfway(sized.height)} down",
        "first": first(found),
        "first-other": laid_area(sized.first_in, sized.first_down, unit),
        "needle": ranged(found.needle.usual, found.needle.low, found.needle.high),
        "needle-more": found.beside,
        "strands": strands(found.strands),
        "hoop": hoop(found),
        "care": care(found),
        "wide": laid(sized.cut_width, unit),
        "high": laid(sized.cut_height, unit),
        "sources": sources(found),
        "unit": unit,
        **sides(found),
    }


def why(found: Answer) -> str:
    """Say what asks for the margin."""
    decided = {"finish": found.finish, "frame": found.held}.get(found.margin.decided, "own")
    frays = [laid(part.mm, found.unit) for part in found.margin.parts if part.what == "frays"]
    said = f"{WHY[decided]}, and {frays[0]} that may fray" if frays else WHY[decided]
    if not found.least:
        return said
    across, least = laid(ring(found), found.unit), laid(found.least, found.unit, "up")
    return f"{said}; a hoop of {across} asks for {least} each way"


def halfway(stitches: int) -> str:
    """Say where the middle of a side is: in a stitch, or between two."""
    half = stitches // 2
    return f"stitch {half + 1}" if stitches % 2 else f"between {half} and {half + 1}"


def first(found: Answer) -> str:
    """Say how many squares or threads the first stitch is in and down."""
    squares = found.cloth.over == 1 and found.cloth.across <= SQUARES_TO
    what = "squares" if squares else "threads"
    return f"{found.sized.threads_in} {what} in, {found.sized.threads_down} down"


def ranged(usual: int, low: int, high: int) -> str:
    """Write a range, the usual first."""
    return str(usual) if low == high else f"{usual} ({low} to {high})"


def strands(of: Strands) -> str:
    """Write the strands for crosses and for backstitch."""
    half = f", half crosses {of.half}" if of.half else ""
    back = ranged(of.back_usual, of.back_low, of.back_high)
    return f"{ranged(of.usual, of.low, of.high)}{half}, backstitch {back}"


def hoop(found: Answer) -> str:
    """Say what holds it."""
    if found.held == "hand":
        return "In hand"
    sized = found.sized
    size_ = laid_area(sized.finished_width, sized.finished_height, found.unit, "up")
    if found.held != "hoop":
        return f"{HOLDS[found.held]}, open at least {size_}"
    if found.hoop.diameter is None:
        return f"No hoop goes round it: a frame, open at least {size_}"
    across = f"Hoop of {laid(found.hoop.diameter * INCH, found.unit)}"
    sold = f" ({laid(found.hoop.diameter * INCH, 'in')})" if found.unit == "cm" else ""
    return f"{across}{sold}{', or a frame' if found.hoop.frame else ''}"


def care(found: Answer) -> str:
    """Say what wants a look: a cut for its hoop, cloth no bolt gives, cloth that is not square."""
    sized, unit, cloth = found.sized, found.unit, found.cloth
    said = []
    if found.least:
        bare = laid_area(found.unheld.cut_width, found.unheld.cut_height, unit)
        said.append(f"That is for the hoop: in the hand {bare} would do.")
    if found.held == "hoop" and not ring(found):
        said.append("A hoop moved from place to place would close on stitches.")
    if min(sized.cut_width, sized.cut_height) > found.widest:
        said.append(f"Cloth is seldom sold wider than {laid(found.widest, unit)}.")
    if cloth.across != cloth.down:
        even = finished(Cloth(cloth.across, cloth.across, cloth.over), sized.width, sized.height)
        said.append(f"On square cloth of {per_inch(cloth.across)} it would be {both(*even, unit)[0]}.")
    return " ".join(said)


def per_inch(count: float) -> str:
    """Write a count as it is, to a hundredth."""
    return inches(count * INCH)


def sides(found: Answer) -> dict[str, str]:
    """Give finished size and cut on each of the counts side by side."""
    said = {}
    for row, ground in enumerate(found.sides):
        on = ground.sized
        cut = laid_area(on.cut_width, on.cut_height, found.unit)
        said[f"side-{row}"] = _bare(area(on.finished_width, on.finished_height, found.unit))
        said[f"side-{row}-cut"] = _bare(cut)
    return said


def _bare(area_: str) -> str:
    """Leave the unit out; where a table's column is too narrow the line breaks after the sign, not before."""
    return area_.rpartition(" ")[0].replace(" ×", "\u00a0×")


def sources(found: Answer) -> str:
    """Say where margin, needle and strands come from."""
    named = [f"{what}: {', '.join(names)}" for what, names in found.cited.items() if names]
    return f"{'; '.join(named)}. Sources differ; a needle of another size does little harm."
