"""What the gauge says: its answer, then sentences. The JavaScript says the same, word for word."""

from webapp.cloth import uneven
from webapp.cloth.answer import Answer
from webapp.cloth.changed import in_words
from webapp.cloth.gauge import INCH
from webapp.cloth.naming import Judged, Name, likeliest
from webapp.cloth.words import CLOTHS, join, length, per_cent, plain, tenth

TOO_LONG = 12 * INCH  # mm; nobody counts further
FEW = 3  # names that could be, said one by one


def headline(answer: Answer) -> tuple[str, str]:
    """Give the answer: the figure to be shown large, and what it is a figure of."""
    if answer.ways:
        return uneven.headline(answer)
    counts = sorted(n.count for n in _fits(answer.judged))
    if not counts:
        return tenth(answer.measured.count), f"{answer.kind} an inch"
    name = f"count {CLOTHS[answer.kind]}"
    if len(counts) < FEW:
        return join([plain(count) for count in counts], "or"), name
    return f"{plain(counts[0])} to {plain(counts[-1])}", name


def sentences(answer: Answer) -> list[list[str]]:
    """Give what is to be said, as [part, sentence], most important first.

    Parts: answer, verdict (how sure), rest (what is ruled out), changed (what may have become it), square,
    over, hint, holes, care (how much further to measure).
    """
    said = [
        ["answer", f"{' '.join(headline(answer))}."],
        ["verdict", verdict(answer)],
        ["rest", rest(answer)],
        ["changed", changed(answer)],
        ["square", squareness(answer)],
        ["over", over_two(answer)],
        ["hint", hint(answer)],
        ["holes", holes(answer)],
        ["care", care(answer)],
    ]
    return [[part, sentence] for part, sentence in said if sentence]


def verdict(answer: Answer) -> str:
    """Say how sure that is."""
    if answer.ways:
        return uneven.verdict(answer)
    judged = answer.judged
    if judged.sure is not None:
        return "Sure, as measured." if changed(answer) else "Sure."
    fits = sorted(_fits(judged), key=lambda n: -n.likelihood)
    if not fits:
        return _between(answer)
    if len(fits) > FEW:
        return f"Not sure: the likeliest is {plain(fits[0].count)} ({per_cent(fits[0].likelihood)})."
    if len(fits) > 1:
        each = [f"{plain(n.count)} ({per_cent(n.likelihood)})" for n in fits]
        return f"Not sure: {join(each, 'or')}."
    if all(n.verdict == "ruled out" for n in judged.names if n is not fits[0]):
        return "Most likely: no other count that is sold fits."
    return f"Most likely ({per_cent(fits[0].likelihood)})."


def _fits(judged: Judged) -> list[Name]:
    return [n for n in judged.names if n.verdict == "could be"]


def _between(answer: Answer) -> str:
    count = answer.measured.count
    below = [n.count for n in answer.judged.names if n.count < count]
    above = [n.count for n in answer.judged.names if n.count > count]
    if not below:
        return f"Coarser than {plain(above[0])}."
    if not above:
        return f"Finer than {plain(below[-1])}."
    return f"Between {plain(below[-1])} and {plain(above[0])}."


def rest(answer: Answer) -> str:
    """Say which names are unlikely and which are ruled out."""
    judged = answer.judged
    kept = likeliest(judged) is not None
    doubted = [plain(n.count) for n in judged.names if n.verdict == "unlikely"]
    become = {one.count for one in answer.changed} if changed(answer) else set()
    out = [plain(n.count) for n in _ruled_out_beside(judged) if n.count not in become]
    said = []
    if 0 < len(doubted) <= FEW:
        said.append(f"{_are(doubted)} {'unlikely' if kept else 'not ruled out'}.")
    if out and kept:
        said.append(f"{_are(out)} ruled out.")
    return " ".join(said)


def changed(answer: Answer) -> str:
    """Say what other cloth may have become it, beside a name that is seldom sold or where none fits."""
    named = likeliest(answer.judged) is not None
    if not named and hint(answer):
        return ""
    return in_words(answer.changed, named)


def _are(counts: list[str]) -> str:
    return f"{join(counts)} {'are' if len(counts) > 1 else 'is'}"


def _ruled_out_beside(judged: Judged) -> list[Name]:
    left = [i for i, n in enumerate(judged.names) if n.verdict != "ruled out"]
    if not left:
        return []
    beside = (left[0] - 1, left[-1] + 1)
    return [judged.names[i] for i in beside if 0 <= i < len(judged.names)]


def squareness(answer: Answer) -> str:
    """Say whether it is square, and what that does to a design."""
    if answer.ways:
        return uneven.squareness(answer)
    return "Square: along and across agree as far as measured." if answer.square else ""


def over_two(answer: Answer) -> str:
    """Say what threads come to over two."""
    if answer.over_two is None:
        return ""
    if answer.ways:
        return uneven.over_two(answer)
    stitches, name = tenth(answer.over_two), answer.over_two_name
    if name is None:
        return f"Over two, {stitches} stitches an inch."
    measured = "" if stitches == plain(name) else f"; as measured, {stitches}"
    return f"Over two, the same as {plain(name)} count{measured}."


def hint(answer: Answer) -> str:
    """Say what else it may be, where no name fits."""
    if answer.other_kind is not None:
        other = "threads" if answer.kind == "squares" else "squares"
        return f"If you counted {other}, it is near {plain(answer.other_kind)}."
    if answer.other_unit is not None:
        other = "centimetres" if answer.unit == "in" else "inches"
        return f"If the tape was in {other}, it is near {plain(answer.other_unit)}."
    return ""


def holes(answer: Answer) -> str:
    """Say what it would be if holes had been counted."""
    if answer.ways:
        return uneven.holes(answer)
    if answer.holes_name is None:
        return f"Counted holes? Then {tenth(answer.holes)}, no standard count."
    still = "still" if answer.holes_name == likeliest(answer.judged) else "likeliest"
    return f"Counted holes? Then {tenth(answer.holes)}, {still} {plain(answer.holes_name)}."


def care(answer: Answer) -> str:
    """Say how much further to measure, and what good practice asks."""
    of = answer.measured
    if of.spread * of.spread > of.part * of.part + of.tape * of.tape:
        return "The places differ by more than the measuring explains: count another, or two."
    asked = length(answer.asked_length, answer.unit) if answer.asked_length is not None else ""
    if answer.settling is None:
        return f"Better: measure {asked} or more." if asked else ""
    if answer.settling <= of.length:
        return "Count again, in another place, to be sure."
    if answer.settling > TOO_LONG:
        return "To be sure takes more than can be counted: take it as measured."
    return f"Measure {length(answer.settling, answer.unit)} to {_aim(answer.judged)}."


def _aim(judged: Judged) -> str:
    likely = likeliest(judged)
    others = [plain(n.count) for n in judged.names if n.verdict != "ruled out" and n.count != likely]
    return f"tell it from {join(others, 'or')}" if 0 < len(others) <= FEW else "be sure"
