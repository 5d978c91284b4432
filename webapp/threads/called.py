"""What a thread is called: two spellings that differ in case or in spaces alone are one thread. Pure."""

import unicodedata
from collections.abc import Iterable, Mapping
from typing import Any

Thread = tuple[str, str]  # as ``alike`` has its name, and its kind


def alike(name: str) -> str:
    """Write a name so that those are the same which are meant to be."""
    return " ".join(unicodedata.normalize("NFKC", name).casefold().split())


def best(names: Iterable[str]) -> str:
    """Choose among spellings of one name, whatever order they come in."""
    return min(names, key=lambda name: (name in (name.lower(), name.upper()), name))


def goes_to(name: str, kind: str, wanted: Iterable[Thread], kinds: Mapping[str, Any]) -> Thread | None:
    """Tell which of the ``wanted`` threads is meant by one in the stash.

    The name decides; of several kinds of one name the same kind. Another kind will do where only one is
    wanted, for her band may say what it is otherwise than her pattern; but beads are no thread.
    """
    of_name = {thread for thread in wanted if thread[0] == alike(name)}
    if (alike(name), kind) in of_name:
        return alike(name), kind
    other = next(iter(of_name), None)
    if other is None or len(of_name) > 1:
        return None
    return other if all(kinds[one]["sold"] != "bead" for one in (kind, other[1])) else None
