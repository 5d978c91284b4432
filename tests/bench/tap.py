"""From a tap to the number painted, in a real browser with its processor slowed four times."""

import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import Page

from tests.bench.weight import begin, phone

TAPS = 60
SLOWED = 4
# The touch is a real one, through the browser's input. The clock starts when the browser notes the finger
# lifted, and stops once the first frame that began with the new number in the page has been painted.
WATCH = """() => {
  const number = document.querySelector('[data-slot=row_stitches]');
  window.took = [];
  document.addEventListener('pointerup', ({ timeStamp }) => {
    const before = window.seen ?? number.textContent;
    const look = () => requestAnimationFrame(() => {
      if (number.textContent === before) return look();
      window.seen = number.textContent;
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => window.took.push(performance.now() - timeStamp);
      port2.postMessage(0);
    });
    look();
  }, { capture: true });
}"""


# The floor: a page with nothing but the number, changed as soon as the finger is lifted.
FLOOR = """() => {
  const [field, number] = [document.createElement('button'), document.createElement('b')];
  Object.assign(field.style, { width: '300px', height: '300px' });
  field.dataset.act = 'tap';
  number.dataset.slot = 'row_stitches';
  number.textContent = 0;
  field.append(number);
  document.body.append(field);
  field.addEventListener('pointerup', () => { number.textContent = Number(number.textContent) + 1; });
}"""


def figures() -> Iterator[str]:
    with tempfile.TemporaryDirectory() as folder, phone(Path(folder)) as (context, url):
        project = begin(context, url)
        bare = context.new_page()
        bare.evaluate(FLOOR)
        floor = timed(bare)
        bare.close()
        page = context.new_page()
        page.goto(f"{project}/stitch")
        page.wait_for_selector('[data-island="stitch"][data-live]')
        took = timed(page)
        shown = page.locator("[data-slot=row_stitches]").inner_text()
        yield (
            f"tap: to the painted number, processor slowed {SLOWED} times: {took[TAPS // 2]:.0f} ms at the "
            f"median, {took[TAPS * 3 // 4]:.0f} ms at the 75th percentile, {took[-1]:.0f} ms at most; "
            f"{shown} shown after {TAPS + 10} taps"
        )
        yield (
            f"tap: an empty page that only changes the number: {floor[TAPS // 2]:.0f} ms at the median, "
            f"{floor[TAPS * 3 // 4]:.0f} ms at the 75th percentile; "
            f"ratio {took[TAPS * 3 // 4] / floor[TAPS * 3 // 4]:.1f}"
        )


def timed(page: Page) -> list[float]:
    """Tap with a real touch; gives what each took to be painted, sorted."""
    finger = page.context.new_cdp_session(page)
    finger.send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    box = page.locator("[data-act=tap]").bounding_box()
    at = {"x": box["x"] + box["width"] / 2, "y": box["y"] + box["height"] / 2}
    page.evaluate(WATCH)
    for _ in range(10 + TAPS):
        finger.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": [at]})
        finger.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
        time.sleep(0.15)
    page.wait_for_timeout(3000)
    return sorted(page.evaluate("window.took.slice(10)"))
