"""The kinds of thread and their habits; of a blend the most delicate part decides. Pure."""

from collections.abc import Mapping, Sequence
from typing import Any

from webapp.threads.estimate import Worked

Kinds = Mapping[str, Mapping[str, Any]]


def kind_of(kinds: Kinds, name: str) -> Mapping[str, Any]:
    """Give the row of one kind (of shared/tables/threads.json, "kinds"); ValueError where there is none."""
    raise NotImplementedError


def deciding(kinds: Kinds, names: Sequence[str]) -> str:
    """Name the most delicate of the kinds in the needle, the first of several."""
    raise NotImplementedError


def worked(
    kinds: Kinds,
    parts: Sequence[tuple[str, int]],
    method: str | None = None,
    working: float | None = None,
) -> list[Worked]:
    """Give how each part is worked: ``parts`` are (kind, strands) of what lies in the needle together.

    method, working (mm): hers, where she said so; else as the most delicate part is worked and cut. A loop
    begins only an even number of strands of one thread whose kind may. ValueError with a sentence.
    """
    raise NotImplementedError
