"""How often the forecast of thread left holds, on a project worked to its end by a stitcher nobody knows."""

from collections.abc import Iterator
from datetime import date
from random import Random
from statistics import median

from playwright.sync_api import Page

from tests.bench.agreed import agreed
from tests.threads.asked import Case, disagreements
from tests.threads.lines import COTTON, KINDS
from tests.threads.stitcher import STRANDS_SOLD, Colour, Stitcher, one_length, work
from webapp.threads.estimate import Counts, Own, Range, estimate
from webapp.threads.geometry import ground_of
from webapp.threads.kinds import worked
from webapp.threads.own import Reading, own

TOOK = -2  # where among what a run tells it says what was taken
RUNS, STITCHES, COLOURS = 100, 12_000, 9
SKEIN = COTTON["length_mm"]
DAY = date(2026, 2, 3)
WHEN = ("before the first stitch", "after one length", "half way", "nine tenths done", "at the end")


def legend(rng: Random) -> list[Colour]:
    """Share 12,000 stitches out among colours, some together, some scattered."""
    shares = [rng.uniform(0.3, 3) for _ in range(COLOURS)]
    many = [round(STITCHES * share / sum(shares)) for share in shares]
    many[0] += STITCHES - sum(many)
    means = {"together": 220, "mixed": 40, "scattered": 7}
    colours = []
    for full in many:
        scatter = rng.choice(list(means))
        colours.append(Colour(full, scatter, means[scatter] * rng.uniform(0.6, 1.6)))
    return colours


def forecast(her: Stitcher, colour: Colour, hand: Own | None, bought: int) -> Range:
    """Say what will be left of a colour when it is done, mm as sold, from what the app knows by now."""
    crosses = Counts(full=colour.spent + colour.full - colour.laid)
    needs = estimate(her.ground, crosses, her.worked, COTTON, None, colour.scatter, hand).sold
    had = bought * SKEIN
    return Range(had - needs.high, had - needs.usual, had - needs.low)


def readings(her: Stitcher, colours: list[Colour]) -> list[Reading]:
    """Give the skeins she has finished, with the crosses that the journal holds since the one before."""
    method, loop = her.worked.method, her.worked.loop
    made = []
    for colour in colours:
        before = 0
        for _skein, spent in colour.finished:
            told = {"split": STRANDS_SOLD, "working": her.worked.working, "loop": loop}
            one = Reading("skein", spent - before, SKEIN, her.worked.strands, method, DAY, **told)
            made.append(one._replace(scatter=colour.scatter))
            before = spent
    return made


def run(seed: int) -> list[list[Range]]:
    """Work one project to its end: gives each moment's forecasts, then what it took, and what is left."""
    rng = Random(seed)
    [how] = worked(KINDS, [("cotton", rng.choice([1, 2, 2, 2, 3]))], rng.choice(["rows", "rows", "each"]))
    her = Stitcher(rng, ground_of(rng.choice([11, 14, 14, 16, 18])), how)
    colours = legend(rng)
    bought = [
        estimate(her.ground, Counts(full=c.full), how, COTTON, None, c.scatter).units[1] for c in colours
    ]
    tried = Reading("length", one_length(her), how.working, how.strands, how.method, DAY, loop=how.loop)
    told = []
    for moment, share in enumerate((0.0, 0.0, 0.5, 0.9, 1.0)):
        for colour in colours:
            work(her, colour, round(colour.full * share), SKEIN)
        hand = own([tried, *readings(her, colours)], her.ground) if moment else None
        told.append([forecast(her, c, hand, n) for c, n in zip(colours, bought, strict=True)])
    took = [c.used * how.strands / STRANDS_SOLD for c in colours]
    left = [n * SKEIN - mm for n, mm in zip(bought, took, strict=True)]
    return [*told, [Range(mm, mm, mm) for mm in took], [Range(mm, mm, mm) for mm in left]]


def added(ranges: list[Range]) -> Range:
    """Add what is left of all colours: one hand worked them, so that what is off is off in all."""
    return Range(*(sum(one[end] for one in ranges) for end in range(3)))


def figures(runs: int = RUNS) -> Iterator[str]:
    told = [run(seed) for seed in range(runs)]
    yield from held(told)
    yield enough(told)
    yield agreed("thread", _differ)


def _differ(page: Page, folder: str, cases: int, seed: int) -> list[Case]:
    return disagreements(page, folder.removesuffix("cloth") + "threads", cases, seed)


def held(told: list[list[list[Range]]]) -> Iterator[str]:
    """Say how often each moment's forecast held, and how wide it was, as a share of the thread it took."""
    for moment, when in enumerate(WHEN):
        whole = [(added(one[moment]), added(one[-1]).usual) for one in told]
        alone = [pair for one in told for pair in zip(one[moment], (r.usual for r in one[-1]), strict=True)]
        took = median(r.high - r.usual for r, _left in whole) / median(added(one[TOOK]).usual for one in told)
        skeins = median(r.high - r.usual for r, _left in alone) / SKEIN
        yield (
            f"thread: {when}, the thread left of {STITCHES:,} stitches in {COLOURS} colours is in its range "
            f"in {sum(map(within, whole))} of {len(told)} runs, give or take {took:.0%} of what they took; "
            f"of one colour in {sum(map(within, alone)) / len(alone):.0%}, give or take {skeins:.2f} skeins"
        )


def within(pair: tuple[Range, float]) -> bool:
    return pair[0].low <= pair[1] <= pair[0].high


def enough(told: list[list[list[Range]]]) -> str:
    """Say how often what was bought before the first stitch, from the drawing alone, was enough."""
    left = [one.usual for run_ in told for one in run_[-1]]
    short = sum(mm < 0 for mm in left)
    over = median(left) / SKEIN
    return (
        f"thread: bought from the drawing alone, {short} of {len(left)} colours ran out; "
        f"{over:.1f} skeins were left over at the median"
    )
