"""How often the gauge's stated interval holds the truth, and how often a count it calls sure is wrong."""

from collections.abc import Callable, Iterator
from functools import cache, partial
from itertools import product
from random import Random

from tests.bench.agreed import agreed
from tests.cloth.languages import disagreements
from tests.cloth.simulate import between_pins, to_a_mark, whole_only
from webapp.cloth.answer import KINDS
from webapp.cloth.gauge import INCH, Reading, measure
from webapp.cloth.naming import judge
from webapp.cloth.standards import table

COUNTS = 100_000  # a case
BANDS = ((6, 8), (8, 11), (11, 14), (14, 16), (16, 20), (20, 25), (25, 28), (28, 32), (32, 36), (36, 40))
SIXTEENTHS, MILLIMETRES = INCH / 16, 1.0
LENGTHS = (
    (INCH, SIXTEENTHS),
    (2 * INCH, SIXTEENTHS),
    (4 * INCH, SIXTEENTHS),
    (30.0, MILLIMETRES),
    (50.0, MILLIMETRES),
    (100.0, MILLIMETRES),
)
PINNED = ((20, SIXTEENTHS), (50, SIXTEENTHS), (100, MILLIMETRES))
Take = Callable[[Random, float], Reading]


@cache
def interval(reading: Reading) -> tuple[float, float]:
    measured = measure([reading])
    return measured.low, measured.high


@cache
def called(reading: Reading, kind: str) -> float | None:
    return judge(measure([reading]), table().of(kind), table().none_weight).sure


def coverage(take: Take, band: tuple[float, float], counts: int, seed: int) -> float:
    """Tell how often the 95 % interval holds the truth, a count drawn evenly from ``band``."""
    rng = Random(seed)
    held = 0
    for _ in range(counts):
        truth = rng.uniform(*band)
        low, high = interval(take(rng, truth))
        held += low <= truth <= high
    return held / counts


def sureness(
    length: float,
    division: float,
    kind: str,
    counts: int,
    seed: int,
    by_name: bool,
    take: Callable[[Random, float, float, float], Reading] = to_a_mark,
) -> tuple[int, int]:
    """Count the sure calls and the wrong ones, for cloth sold by a name or of any count from 6 to 40.

    A call is wrong if it is not the name the cloth was sold by, or not the one nearest to cloth of any count.
    """
    rng = Random(seed)
    standards = table().of(kind)
    sure = wrong = 0
    for _ in range(counts):
        standard = rng.choice(standards)
        truth = rng.uniform(standard.low, standard.high) if by_name else rng.uniform(6, 40)
        name = called(take(rng, truth, length, division), kind)
        if name is not None:
            right = standard if by_name else min(standards, key=lambda s: abs(s.count - truth))
            sure += 1
            wrong += name != right.count
    return sure, wrong


def ways() -> Iterator[tuple[str, Take]]:
    """List the ways of measuring that are tried."""
    for length, division in LENGTHS:
        yield f"over {length / INCH:.2f} in", partial(_mark, length=length, division=division)
    for squares, division in PINNED:
        yield f"{squares} between pins", partial(_pins, squares=squares, division=division)


def _mark(rng: Random, count: float, length: float, division: float) -> Reading:
    return to_a_mark(rng, count, length, division)


def _pins(rng: Random, count: float, squares: int, division: float) -> Reading:
    return between_pins(rng, count, squares, division)


def whole_ways(at_a_line: bool = True) -> Iterator[tuple[str, Take]]:
    """List the ways of counting whole squares only, which leaves out the part at the end."""

    def take(rng: Random, count: float, length: float, division: float) -> Reading:
        return whole_only(rng, count, length, division, at_a_line)

    for length, division in LENGTHS:
        yield f"over {length / INCH:.2f} in", partial(take, length=length, division=division)


def figures(counts: int = COUNTS) -> Iterator[str]:
    yield from covered(counts)
    yield from called_sure(counts)
    yield agreed("gauge", disagreements)


def covered(counts: int) -> Iterator[str]:
    """Give the mean, the least and the most of coverage, of each kind of stitcher."""
    yield from _covered("the 95 % interval holds the truth", ways(), counts)
    yield from _covered("of whole squares only, from a line, it holds it", whole_ways(), counts)
    told = "of whole squares only, begun anywhere (not claimed: the page says to begin on a line)"
    yield from _covered(told, whole_ways(at_a_line=False), counts)


def _covered(what: str, tried: Iterator[tuple[str, Take]], counts: int) -> Iterator[str]:
    held = [
        (coverage(take, band, counts, seed), f"{way}, {band[0]} to {band[1]} an inch")
        for seed, ((way, take), band) in enumerate(product(tried, BANDS))
    ]
    mean = sum(share for share, _case in held) / len(held)
    yield f"gauge: {what} in {mean:.1%} of {len(held)} cases of {counts:,} counts"
    for word, (share, case) in (("least", min(held)), ("most", max(held))):
        yield f"gauge: {word} {share:.1%}, {case}"


def called_sure(counts: int) -> Iterator[str]:
    """Give how often a sure call is wrong."""
    for take, by_name in product((to_a_mark, whole_only), (True, False)):
        sure = wrong = 0
        for kind, (length, division) in product(KINDS, LENGTHS):
            found = sureness(length, division, kind, counts, 7, by_name, take)
            sure, wrong = sure + found[0], wrong + found[1]
        cloth = "cloth sold by name" if by_name else "cloth of any count"
        how = "" if take is to_a_mark else ", whole squares only"
        yield f"gauge: {cloth}{how}: called sure {sure:,} times in {12 * counts:,}, wrong {wrong}"
