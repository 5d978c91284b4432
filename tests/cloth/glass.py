"""What the tests of the screen as an instrument share: a phone of known density, and the pixels it shows."""

from base64 import b64encode
from typing import Any

from playwright.sync_api import Page

from tests.cloth.languages import folder_of

CARD = {"long": 85.6, "short": 53.98}  # ISO/IEC 7810, ID-1
PPI = {1: 160, 2: 326, 2.625: 420, 3: 460}  # pixels an inch of invented phones, by their pixel ratio

PIXELS = """async ([picture, share, along]) => {
  const image = new Image();
  image.src = `data:image/png;base64,${picture}`;
  await image.decode();
  const canvas = new OffscreenCanvas(image.width, image.height);
  const context = canvas.getContext("2d");
  context.drawImage(image, 0, 0);
  const { width, height } = canvas;
  const { data } = along === "down"
    ? context.getImageData(Math.round(share * width), 0, 1, height)
    : context.getImageData(0, Math.round(share * height), width, 1);
  return Array.from({ length: data.length / 4 }, (_, n) => data.slice(4 * n, 4 * n + 3).join());
}"""


def shown(page: Page, share: float, along: str) -> list[tuple[str, int, int]]:
    """Look at one column or row of the screen's own pixels: its runs of a colour, as (colour, from, to)."""
    picture = b64encode(page.screenshot(scale="device")).decode()
    runs: list[tuple[str, int, int]] = []
    for n, colour in enumerate(page.evaluate(PIXELS, [picture, share, along])):
        if runs and runs[-1][0] == colour:
            runs[-1] = (colour, runs[-1][1], n + 1)
        else:
            runs.append((colour, n, n + 1))
    return runs


def ask(page: Page, url: str, module: str, body: str, given: Any = None) -> Any:
    """Run a piece of script on the names of one of cloth's modules, as ``m``."""
    script = f"async ([folder, given]) => {{ const m = await import(`${{folder}}/{module}.js`); {body} }}"
    return page.evaluate(script, [folder_of(url), given])
