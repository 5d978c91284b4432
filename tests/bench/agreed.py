"""How often Python and JavaScript differ, in any digit that is shown."""

import tempfile
from collections.abc import Callable, Sized
from pathlib import Path

from playwright.sync_api import Page

from tests.bench.weight import phone
from tests.cloth.languages import folder_of

CASES = 10_000
Differ = Callable[[Page, str, int, int], Sized]


def agreed(what: str, disagreements: Differ) -> str:
    """Ask at random in both languages, in a real browser."""
    with tempfile.TemporaryDirectory() as folder, phone(Path(folder)) as (context, url):
        page = context.new_page()
        page.goto(f"{url}/health")
        differ = sum(len(disagreements(page, folder_of(url), 1000, seed)) for seed in range(CASES // 1000))
    return f"{what}: Python and JavaScript differ in {differ} of {CASES:,} random cases"
