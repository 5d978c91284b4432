/** A canvas with one pixel of its own to each pixel of the screen, so that nothing drawn on it is blurred or stretched. */

const COLOURS = ["ground", "cloth", "ink", "fill"];
const GIVEN = 32; // CSS pixels given up at most

/** Draw on `canvas` by `paint(context, size)` whenever its frame or the colours change; gives what draws it again. */
export function openGlass(canvas, paint) {
  const context = canvas.getContext("2d", { alpha: false });
  const size = { width: 0, height: 0, ratio: 1, colours: {} };
  const again = () => {
    fit(canvas, size);
    if (!size.width || !size.height) return;
    Object.assign(canvas, { width: size.width, height: size.height });
    const style = getComputedStyle(canvas);
    for (const name of COLOURS) size.colours[name] = style.getPropertyValue(`--${name}`).trim();
    context.fillStyle = size.colours.ground;
    context.fillRect(0, 0, size.width, size.height);
    paint(context, size);
  };
  new ResizeObserver(again).observe(canvas.parentElement);
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", again);
  return { again, size };
}

/** Lay the canvas within its frame from a whole CSS pixel to a whole one, which browsers set on a pixel of the screen. */
function fit(canvas, size) {
  const frame = canvas.parentElement.getBoundingClientRect();
  const [x, y] = [frame.left, frame.top].map((one) => Math.ceil(one - 0.01));
  const [width, height] = [frame.right - x, frame.bottom - y].map(even);
  const ratio = devicePixelRatio;
  const pixels = (from, long) => Math.round((from + long) * ratio) - Math.round(from * ratio);
  Object.assign(size, { ratio, width: pixels(x, width), height: pixels(y, height) });
  const place = { left: x - frame.left, top: y - frame.top, width, height };
  for (const [name, value] of Object.entries(place)) canvas.style[name] = `${value}px`;
}

/** Give the longest whole length in CSS pixels that is whole in the screen's, too, if there is one not much shorter. */
function even(room) {
  const longest = Math.max(0, Math.floor(room + 0.01));
  for (let long = longest; long > longest - GIVEN; long -= 1) {
    const pixels = long * devicePixelRatio;
    if (Math.abs(pixels - Math.round(pixels)) < 0.005) return long;
  }
  return longest;
}
