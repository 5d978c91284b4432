"""Time zones by their IANA names: which there are, and which are offered."""

import zoneinfo
from functools import cache

FALLBACK = "UTC"
NO_PLACE = {"Factory", "localtime"}  # names of the machine's own, not of a zone
REGIONS = {
    "Africa",
    "America",
    "Antarctica",
    "Arctic",
    "Asia",
    "Atlantic",
    "Australia",
    "Europe",
    "Indian",
    "Pacific",
}


@cache
def known() -> frozenset[str]:
    """Gather every zone that can be named, old names included, as browsers still say them."""
    return frozenset(zoneinfo.available_timezones() - NO_PLACE)


@cache
def offered() -> tuple[str, ...]:
    """List the zones of places, in the order of their names, and UTC."""
    return (*sorted(name for name in known() if name.split("/")[0] in REGIONS), FALLBACK)
