"""Draw the app's icons out of static/icons/icon.svg: `python -m tests.browser.icons`, after changing it."""

import shutil
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

from webapp.places import STATIC

ICONS = STATIC / "icons"
EDGE_TO_EDGE = "#linen { rx: 0 }"
WANTED = (
    ("icon-192.png", 192, ""),
    ("icon-512.png", 512, ""),
    ("maskable-512.png", 512, EDGE_TO_EDGE),  # the cross lies in the middle four fifths, which no mask cuts
    ("touch.png", 180, EDGE_TO_EDGE),  # phones round the corners themselves
)


def draw(page: Page, path: Path, size: int, style: str) -> None:
    page.set_viewport_size({"width": size, "height": size})
    drawing = (ICONS / "icon.svg").read_text()
    page.set_content(f"<style>body {{ margin: 0 }} svg {{ display: block }} {style}</style>{drawing}")
    page.screenshot(path=path, omit_background=True)


def main() -> None:
    found = next((path for name in ("chromium", "google-chrome") if (path := shutil.which(name))), None)
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=found, args=["--no-sandbox"])
        for name, size, style in WANTED:
            draw(browser.new_page(), ICONS / name, size, style)
        browser.close()


if __name__ == "__main__":
    main()
