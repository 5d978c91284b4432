"""Where to go on after signing in: always a page of our own."""

from urllib.parse import urlsplit

HOME = "/projects"
DOORS = ("/sign-in", "/sign-out", "/accounts")
LONGEST = 2000


def safe_next(path: str | None) -> str:
    """Give ``path`` back if it is a path of our own and nothing else, or the projects.

    Browsers drop tabs and line ends from an address and take a backslash for a slash, so a path with any of
    these may lead elsewhere.
    """
    if not path or len(path) > LONGEST or not path.startswith("/") or path.startswith("//"):
        return HOME
    if any(sign <= " " or sign in "\\\x7f" for sign in path) or path.startswith(DOORS):
        return HOME
    return path


def path_of(address: str | None, host: str) -> str:
    """Take the path and query of an address on our own host; of any other, the projects."""
    try:
        parts = urlsplit(address or "")
    except ValueError:
        return HOME
    if parts.netloc != host:
        return HOME
    return safe_next(parts.path + (f"?{parts.query}" if parts.query else ""))
