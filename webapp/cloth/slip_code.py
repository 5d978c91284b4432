"""A slip's link as a QR code (ISO/IEC 18004), drawn for paper.

The quiet zone of four modules on every side is the standard's, and so is error correction level M (about
15 % of what is damaged can be made good): from memory. A module is half a millimetre or more, and the code
25 mm or more beside its quiet zone, so that any phone reads it from a hand's breadth: common practice.
"""

import segno

QUIET = 4  # modules
LEAST_MODULE = 0.5  # mm
LEAST_SIDE = 25.0  # mm, without the quiet zone


def code(address: str) -> str:
    """Draw the code of an address as an SVG, black on white, its sides in millimetres."""
    rows = segno.make(address, micro=False, error="m").matrix
    whole = len(rows) + 2 * QUIET
    side = round(max(LEAST_MODULE, LEAST_SIDE / len(rows)) * whole, 2)
    path = "".join(_row(row, y + QUIET) for y, row in enumerate(rows))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{side}mm" height="{side}mm"'
        f' viewBox="0 0 {whole} {whole}" shape-rendering="crispEdges">'
        f'<path fill="#fff" d="M0 0h{whole}v{whole}h-{whole}z"/>'
        f'<path d="{path}"/></svg>'
    )


def _row(row: bytearray, y: int) -> str:
    """Draw the dark modules of one row, run by run."""
    runs, start = [], None
    for x, dark in enumerate([*row, 0]):
        if dark and start is None:
            start = x
        elif not dark and start is not None:
            runs.append(f"M{start + QUIET} {y}h{x - start}v1h-{x - start}z")
            start = None
    return "".join(runs)
