"""What the tests of the screen as an instrument share: a phone of known density, and the pixels it shows."""

from base64 import b64encode
from typing import Any

from playwright.sync_api import Locator, Page, expect

from tests.cloth.counter import slot
from tests.cloth.languages import folder_of

LIVE = '[data-island="ruler"][data-live]'
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


def edge(page: Page) -> Locator:
    return page.get_by_role("slider", name="Edge of the card")


def move_to(page: Page, pixels: int, ratio: float) -> None:
    """Drag the edge near, then step it a pixel at a time."""
    box = edge(page).bounding_box()
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    by = (pixels - int(edge(page).get_attribute("aria-valuenow"))) / ratio
    down = edge(page).get_attribute("aria-orientation") == "vertical"
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + (0 if down else by), y + (by if down else 0), steps=4)
    page.mouse.up()
    left = pixels - int(edge(page).get_attribute("aria-valuenow"))
    assert abs(left) <= 4
    for _ in range(abs(left)):
        page.get_by_role("button", name="A pixel larger" if left > 0 else "A pixel smaller").click()
    expect(edge(page)).to_have_attribute("aria-valuenow", str(pixels))


def drawn(page: Page) -> list[int]:
    """Measure the drawn card on the glass, beside what is written on it."""
    if edge(page).get_attribute("aria-orientation") == "horizontal":
        return [end - start for _, start, end in shown(page, 0.5, "across")]
    return [
        end - start
        for _, start, end in shown(page, 0.45 if page.viewport_size["width"] > 600 else 0.9, "down")
    ]


def lay_card(page: Page, ratio: float, off: int = 0, side: str = "short") -> None:
    """Set the screen by a card, once each way; the second time ``off`` by some pixels."""
    for step, pixels in (("1 of 2", CARD[side]), ("2 of 2", CARD["short"])):
        expect(slot(page, "step")).to_have_text(step)
        pixels = round(pixels * PPI[ratio] / 25.4) + (off if step == "2 of 2" else 0)
        move_to(page, pixels, ratio)
        assert pixels in drawn(page)
        page.get_by_role("button", name="It fits").click()


def set_already(page: Page, ratio: float) -> None:
    lay_card(page, ratio)
    expect(slot(page, "share")).to_be_visible()


def choose(page: Page, name: str) -> None:
    page.locator("label", has_text=name).click()
