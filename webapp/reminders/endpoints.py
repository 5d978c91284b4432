"""Where a push may go: an address that comes from outside, so it is looked at twice. Pure.

``fault`` looks at what it says when a phone hands it over and again before each sending; ``is_public`` at the
machine it turns out to be, at the moment of connecting (``outward.py``).
"""

from collections.abc import Iterable
from dataclasses import dataclass
from ipaddress import IPv4Address, IPv6Address, ip_address, ip_network
from urllib.parse import urlsplit

# The services behind the browsers there are; a star stands for any names before it. An operator can add more.
SERVICES = (
    "fcm.googleapis.com",
    "*.push.services.mozilla.com",
    "*.push.apple.com",
    "*.notify.windows.com",
)
LONGEST = 1000
NOT_ONE = "That is not the address of a push service. Turn reminders on from this phone's own browser."
NOT_KNOWN = "This house does not know the push service {host}. Whoever runs it can add it."
# All of IPv6 that is given out to be reached from everywhere (IANA, IPv6 Global Unicast Address Assignments),
# and IPv4 behind the one prefix for translating it (RFC 6052): in its last 32 bits.
_UNICAST, _TRANSLATED = ip_network("2000::/3"), ip_network("64:ff9b::/96")


@dataclass(frozen=True)
class Where:
    """Who may be sent to: names of hosts, and whole origins that the operator vouches for."""

    names: tuple[str, ...]
    origins: frozenset[str] = frozenset()

    @classmethod
    def of(cls, added: Iterable[str]) -> "Where":
        """Take the services there are and what the operator added: names, or origins such as http://127.0.0.1:9."""
        added = [one.strip().lower().rstrip("/") for one in added if one.strip()]
        names = (*SERVICES, *(one for one in added if "://" not in one))
        return cls(names, frozenset(one for one in added if "://" in one))


def fault(address: str, where: Where) -> str | None:
    """Say what is wrong with an endpoint; none if it may be sent to."""
    if not (
        0 < len(address) <= LONGEST and address.isascii() and address.isprintable() and " " not in address
    ):
        return NOT_ONE
    try:
        parts = urlsplit(address)
        port, host = parts.port, parts.hostname or ""
    except ValueError:
        return NOT_ONE
    if set("\\ ") & set(address) or "@" in parts.netloc or parts.fragment:
        return NOT_ONE
    if vouched(address, where):
        return None
    if parts.scheme != "https" or port not in (None, 443) or _is_address(host):
        return NOT_ONE
    return None if any(_matches(host, name) for name in where.names) else NOT_KNOWN.format(host=host)


def vouched(address: str, where: Where) -> bool:
    """Tell whether the operator named the very origin of this address."""
    parts = urlsplit(address)
    return f"{parts.scheme}://{parts.netloc}".lower() in where.origins


def origin_of(address: str) -> str:
    """Give the origin of an endpoint, for whom a signature is meant (RFC 8292, section 2)."""
    parts = urlsplit(address)
    return f"{parts.scheme}://{parts.netloc}"


def is_public(address: str) -> bool:
    """Tell whether a machine's address is one of the public network, in whatever way it is written."""
    try:
        found = ip_address(address.partition("%")[0])
    except ValueError:
        return False
    if isinstance(found, IPv4Address):
        return _is_reached(found)
    inner = _inside(found)
    return all(map(_is_reached, inner)) if inner else found in _UNICAST and _is_reached(found)


def _is_reached(found: IPv4Address | IPv6Address) -> bool:
    return found.is_global and not found.is_multicast


def _inside(found: IPv6Address) -> list[IPv4Address]:
    """List the IPv4 addresses that an IPv6 one leads to: mapped, 6to4, Teredo, translated."""
    inner = [found.ipv4_mapped, found.sixtofour, *(found.teredo or ())]
    if found in _TRANSLATED:
        inner.append(IPv4Address(int(found) & 0xFFFFFFFF))
    return [one for one in inner if one is not None]


def _is_address(host: str) -> bool:
    """Tell whether a host is a number in a spelling that resolvers take: 127.1, 2130706433, 0x7f.1, [::1]."""
    last = host.rstrip(".").rsplit(".", 1)[-1]
    return ":" in host or last.isdigit() or last.startswith("0x")


def _matches(host: str, name: str) -> bool:
    return host.endswith(name[1:]) and len(host) >= len(name) if name.startswith("*.") else host == name
