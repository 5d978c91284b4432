// The week as a picture: what its page says, set anew in the page's own colours, its bands as they are.

import { broken, drawn, painted } from "../image.js";

const [WIDE, EDGE] = [640, 40];
const FACE = 'system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", sans-serif';
const BANDS = [WIDE - 2 * EDGE, ((WIDE - 2 * EDGE) * 188) / 294];
const SWATCH = [35, 26];

/** Draw the week that a page shows; gives a PNG. */
export async function picture(page) {
  const bands = await drawn(page.querySelector("svg.bands"), ...BANDS);
  const rows = await Promise.all([...page.querySelectorAll("[data-projects] tbody tr")].map(row));
  const style = getComputedStyle(document.documentElement);
  const colour = (name) => style.getPropertyValue(`--${name}`).trim();
  const says = {
    title: page.querySelector("h1").textContent,
    dates: page.querySelector("header .quiet").textContent,
    time: page.querySelector(".big").lastChild.textContent,
    aside: page.querySelector(".aside").textContent.replace(/\s+/g, " ").trim(),
  };
  return painted(WIDE, colour("ground"), (pen, inked) => compose(says, bands, rows, colour, pen, inked));
}

async function row(tr) {
  const [name, laid, time] = [tr.querySelector(".named > span"), ...tr.querySelectorAll("td")].map((one) => one.firstChild.textContent.trim());
  return { swatch: await drawn(tr.querySelector("svg"), ...SWATCH), name, laid, time };
}

/** Set everything below each other, in ink or only to measure; gives where it ends. */
function compose(says, bands, rows, colour, pen, inked) {
  let y = EDGE;
  const put = (text, size, { weight = 400, ink = "ink", x = EDGE, right = false, wide = WIDE - 2 * EDGE } = {}) => {
    Object.assign(pen, { font: `${weight} ${size}px ${FACE}`, fillStyle: colour(ink), textBaseline: "top", textAlign: right ? "right" : "left" });
    const lines = broken(pen, text, wide);
    if (inked) lines.forEach((line, n) => pen.fillText(line.trimEnd(), right ? WIDE - EDGE : x, y + n * size * 1.3));
    return lines.length * size * 1.3;
  };
  put(says.dates, 22, { ink: "quiet", right: true });
  y += put(says.title, 26, { weight: 650, wide: 240 }) + 12;
  put(says.aside, 24, { ink: "quiet", right: true, wide: 220 });
  y += Math.max(put(says.time, 104, { weight: 650 }), 100);
  if (inked) pen.drawImage(bands, EDGE, y, ...BANDS);
  y += BANDS[1] + 28;
  for (const one of rows) {
    if (inked) pen.drawImage(one.swatch, EDGE, y, ...SWATCH);
    put(one.time, 22, { weight: 600, right: true });
    const high = put(one.name, 22, { x: EDGE + 52, wide: 240 });
    put(one.laid, 20, { ink: "quiet", x: EDGE + 310, wide: 160 });
    y += high + 12;
  }
  return y + EDGE - 12;
}
