"""Any legend that a slip can carry, for what must hold of all of them."""

from hypothesis import strategies as st

from webapp.cloth import slip_text, slip_threads
from webapp.threads.legend import Line, Part

names = st.text(st.characters(exclude_categories=["Cc", "Cs", "Zl", "Zp"]), min_size=1, max_size=20)
seen = names.filter(lambda name: slip_text.fault(name) is None)
symbols = seen.map(lambda symbol: symbol[: slip_threads.SYMBOL]).filter(
    lambda one: slip_text.fault(one) is None
)
parts = st.builds(
    Part, seen, st.sampled_from(list(slip_threads.KINDS)), st.integers(1, 4), st.just("") | seen
)
many = st.integers(0, slip_threads.STITCHES)
lines = st.builds(
    Line,
    st.lists(parts, min_size=1, max_size=6).map(tuple),
    st.just("") | symbols,
    **dict.fromkeys(slip_threads.COUNTS, many),
)
legends = st.lists(lines, max_size=8).map(tuple)
