"""From a tap to the number painted, in a real browser with its processor slowed four times."""

import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from tests.bench.weight import begin, phone

TAPS = 60
SLOWED = 4
# The touch is a real one, through the browser's input. The clock starts when the browser notes the finger
# lifted, and stops once the first frame that began with the new number in the page has been painted.
WATCH = """() => {
  const number = document.querySelector('[data-slot=row_stitches]');
  window.took = [];
  document.addEventListener('pointerup', ({ timeStamp }) => {
    const before = number.textContent;
    const look = () => requestAnimationFrame(() => {
      if (number.textContent === before) return look();
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => window.took.push(performance.now() - timeStamp);
      port2.postMessage(0);
    });
    look();
  }, { capture: true });
}"""


def figures() -> Iterator[str]:
    with tempfile.TemporaryDirectory() as folder, phone(Path(folder)) as (context, url):
        project = begin(context, url)
        page = context.new_page()
        page.goto(f"{project}/stitch")
        page.wait_for_selector('[data-island="stitch"][data-live]')
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
        took = sorted(page.evaluate("window.took.slice(10)"))
        shown = page.locator("[data-slot=row_stitches]").inner_text()
        yield (
            f"tap: to the painted number, processor slowed {SLOWED} times: {took[TAPS // 2]:.0f} ms at the "
            f"median, {took[TAPS * 3 // 4]:.0f} ms at the 75th percentile, {took[-1]:.0f} ms at most; "
            f"{shown} shown after {TAPS + 10} taps"
        )
