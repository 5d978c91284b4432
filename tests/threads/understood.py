"""What is understood of a pasted legend, as the tests of its text compare it."""

from webapp.threads.legend_reads import read
from webapp.threads.legend_text import rows
from webapp.threads.tables import kinds


def understood(text):
    """Give of each line symbol, threads, strands and what stitches it has; or its errors."""
    found = []
    for row in rows(text).rows:
        line, errors = read(row.typed, kinds(), lambda _kind: 2)
        if line is None or "rest" in row.typed:
            found.append(errors or row.typed["rest"])
            continue
        counts = {name: many for name, many in line.counts._asdict().items() if many}
        found.append((line.symbol, line.printed, [part.strands for part in line.parts], counts))
    return found


MADDER = ("X", "Madder dark", [2], {"full": 1240})
BLEND = ("o", "Walnut + Silver filament", [1, 1], {"full": 310})
