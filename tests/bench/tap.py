"""From a tap to the number painted, in a real browser with its processor slowed four times."""

import tempfile
from collections.abc import Iterator
from pathlib import Path

from tests.bench.weight import begin, phone

TAPS = 60
SLOWED = 4
# Each tap is a pointer going down and up on the field, as a finger does; the number counts as painted at the
# first frame that begins after it stands in the page.
MEASURE = """async (taps) => {
  const field = document.querySelector('[data-act=tap]');
  const number = document.querySelector('[data-slot=row_stitches]');
  const box = field.getBoundingClientRect();
  const middle = { clientX: box.x + box.width / 2, clientY: box.y + box.height / 2 };
  const finger = { pointerId: 7, pointerType: 'touch', isPrimary: true, width: 24, height: 24 };
  const at = { ...middle, ...finger, bubbles: true, cancelable: true };
  const frame = () => new Promise((done) => requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = done;
    port2.postMessage(0);
  }));
  const took = [];
  for (let n = 0; n < taps; n++) {
    await new Promise((done) => setTimeout(done, 120));
    const before = number.textContent;
    const begun = performance.now();
    field.dispatchEvent(new PointerEvent('pointerdown', at));
    field.dispatchEvent(new PointerEvent('pointerup', at));
    field.dispatchEvent(new PointerEvent('click', at));
    while (number.textContent === before) await frame();
    await frame();
    took.push(performance.now() - begun);
  }
  return took;
}"""


def figures() -> Iterator[str]:
    with tempfile.TemporaryDirectory() as folder, phone(Path(folder)) as (context, url):
        project = begin(context, url)
        page = context.new_page()
        page.goto(f"{project}/stitch")
        page.wait_for_selector('[data-island="stitch"][data-live]')
        page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
        page.evaluate(MEASURE, 10)
        took = sorted(page.evaluate(MEASURE, TAPS))
        page.wait_for_timeout(3000)
        shown = page.locator("[data-slot=row_stitches]").inner_text()
        yield (
            f"tap: to the painted number, processor slowed {SLOWED} times: {took[TAPS // 2]:.0f} ms at the "
            f"median, {took[TAPS * 3 // 4]:.0f} ms at the 75th percentile, {took[-1]:.0f} ms at most; "
            f"{shown} shown after {TAPS + 10} taps"
        )
