"""What size and cut are asked: a design, its cloth, how it is finished and held; or what cannot be meant.

Pure; the island in static/js/cloth/size.js asks in the same way.
"""

from collections.abc import Mapping

from webapp.cloth import reads
from webapp.cloth.reads import Asked

NEEDED = ("width", "height", "count")
OTHER = ("across", "own")
CHOSEN = ("over", "finish", "held", "frays", "unit")
FIELDS = (*NEEDED, *OTHER, *CHOSEN)
CHOICE = "Choose one of those offered."
COARSE = "Fewer than one stitch an inch: check the count, and over one or two."


def ask(typed: Mapping[str, str]) -> Asked:
    """Read what was typed; ``across`` is the count down the height, where it is not the same."""
    asked = reads.read(typed, NEEDED, OTHER)
    for name in CHOSEN:
        if typed.get(name, "") not in ("", *reads.CHOICES[name][0]):
            asked.errors[name] = CHOICE
    if not asked.errors and asked.values["count"] < int(asked.values["over"]):
        asked.errors["count"] = COARSE
    return asked


def begun(typed: Mapping[str, str]) -> Asked:
    """Read an address in which fields may be missing: those wait, without a sentence."""
    asked = ask(typed)
    for name in NEEDED:
        if name not in typed:
            asked.errors.pop(name, None)
    return asked


def whole(asked: Asked) -> bool:
    """Tell whether there is all that an answer needs, and nothing that cannot be meant."""
    return not asked.errors and all(asked.values[name] is not None for name in NEEDED)
