// A slip as a picture: the words of its sheet set anew on white, its drawing and its code as they are. Twice as fine as a screen.

import { broken, drawn, loaded, painted } from "../image.js";

const WIDE = 640;
const EDGE = 32;
const LABEL = 120;
const LARGE = 400; // a code that holds threads
const COLUMNS = [[0, 44], [48, 300], [356, 60], [424, 152]]; // of the threads: from the edge, and how wide
const FACE = 'system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", sans-serif';
const [INK, QUIET] = ["#000", "#444"];

/** Draw the sheet; gives a PNG, its colours as they would be printed. */
export async function picture(sheet) {
  const [drawing, code] = await Promise.all([drawn(sheet.querySelector("svg.scale"), 652, 680, () => INK), coded(sheet.querySelector("[data-code]"))]);
  return painted(WIDE, "#fff", (pen, inked) => compose(sheet, drawing, code, pen, inked));
}

/** Set everything below each other, in ink or only to measure; gives where it ends. */
function compose(sheet, drawing, code, pen, inked) {
  let y = EDGE;
  const put = (text, size, { weight = 400, colour = INK, x = EDGE, wide = WIDE - EDGE - x } = {}) => {
    Object.assign(pen, { font: `${weight} ${size}px ${FACE}`, fillStyle: colour, textBaseline: "top" });
    const begin = y;
    for (const line of broken(pen, text, wide)) {
      if (inked) pen.fillText(line, x, y);
      y += size * 1.35;
    }
    return begin;
  };
  const text = (name) => sheet.querySelector(`[data-slot="${name}"]`).textContent;
  put(text("title"), 26, { weight: 650 });
  put(`Cut  ${text("cut")}`, 44, { weight: 650 });
  put(text("cut-other"), 18, { colour: QUIET });
  y += 10;
  for (const row of sheet.querySelectorAll("dl > div")) {
    const said = [...row.children[1].children].map((part) => part.textContent.replace(/,$/, "")).filter(Boolean).join(", ");
    y = put(row.children[0].textContent.trim(), 18, { colour: QUIET, wide: LABEL });
    put(said, 18, { weight: 600, x: EDGE + LABEL });
  }
  if (text("care")) put(text("care"), 18, { weight: 600 });
  y += 14;
  if (inked) pen.drawImage(drawing, EDGE, y, 326, 340);
  const isLarge = code && sheet.querySelector("[data-code][data-large]");
  if (inked && code && !isLarge) pen.drawImage(code, WIDE - EDGE - 216, y + 62, 216, 216);
  y += 354;
  if (isLarge) {
    if (inked) pen.drawImage(code, (WIDE - LARGE) / 2, y, LARGE, LARGE);
    y += LARGE + 14;
  }
  for (const item of sheet.querySelectorAll("li:not([hidden])")) {
    y = put("•", 16);
    put(item.textContent, 16, { x: EDGE + 16 });
  }
  const table = sheet.querySelector("[data-threads]:not([hidden])");
  if (!table) return y + EDGE;
  y += 14;
  put("Threads", 18, { weight: 650 });
  for (const row of table.querySelectorAll("tbody tr")) {
    const [top, ...ends] = [y];
    for (const [said, [x, wide]] of cells(row)) {
      y = top;
      put(said, 16, { x: EDGE + x, wide });
      ends.push(y);
    }
    y = Math.max(...ends);
  }
  put(text("to-buy"), 16, { weight: 600 });
  return y + EDGE;
}

/** Give the words of a row of threads, each with where it stands and how wide it may be. */
const cells = (row) => [...row.children].map((cell, at) => [
  [...cell.childNodes].map((part) => part.textContent).filter(Boolean).join(", "), COLUMNS[at],
]);

const coded = async (figure) => (figure.hidden ? null : loaded(figure.querySelector("img").src).catch(() => null));
