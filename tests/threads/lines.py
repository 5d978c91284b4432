"""Lines of a legend as the tests of thread have them."""

import json

from hypothesis import strategies as st

from webapp.places import SHARED
from webapp.threads.estimate import PATCH, Counts, Own, Worked, estimate
from webapp.threads.geometry import METHODS, Ground, ground_of

KINDS = json.loads((SHARED / "tables" / "threads.json").read_text(encoding="utf-8"))["kinds"]
COTTON = KINDS["cotton"]
ON_14 = ground_of(14)
FLAT_14 = ground_of(14, thick=0.0)
TWO = Worked(strands=2, together=2, method="rows", working=457.2)
EACH = TWO._replace(method="each")
THIN = 0.01  # mm of a strand: as good as none

some = st.integers(0, 3000)
counts = st.builds(Counts, *[some] * 7)
grounds = st.builds(Ground, st.floats(0.7, 4), st.floats(0.7, 4), st.floats(0, 1))
strands = st.integers(1, 6)
workeds = st.builds(
    lambda n, method, working: Worked(n, n, method, working),
    *(strands, st.sampled_from(METHODS), st.floats(200, 1000)),
)
scatters = st.sampled_from(list(PATCH))
owns = st.one_of(
    st.none(), st.builds(Own, st.floats(0.5, 2), st.floats(0.03, 0.5), st.just("one length on 2026-02-03"))
)
kinds = st.sampled_from([kind for kind in KINDS.values() if kind["sold"] != "bead"])


def skeins(number):
    """Work out to how many crosses so many skeins reach at 14, surely and perhaps."""
    takes = estimate(
        ON_14, Counts(full=2000), TWO._replace(loop=True), COTTON
    ).each  # of the needle's two strands
    as_sold = [mm * 2 / 6 for mm in (takes.high, takes.low)]
    return [int(number * 8000 / each) for each in as_sold]  # a skein of 8 m: TRADE [M1]
