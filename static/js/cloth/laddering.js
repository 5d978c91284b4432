/** The lines under thin cloth: she slides their count until the bands widen out, and reads it. */

import { stepping } from "./edge.js";
import { inWords, reach, reading, widths, within } from "./ladder.js";
import { drawLines } from "./ruling.js";

const FIRST = 14;
const SEEN = 25; // mm: the width of band taken until she says otherwise

/** Work the lines in `root` on `glass`; `how()` gives {axis, upright, unit}. */
export function openLadder(root, glass, how) {
  const slot = (name) => root.querySelector(`[data-slot="${name}"]`);
  const slide = root.querySelector('[name="lines"]');
  const band = root.querySelector('[name="band"]');
  let count = FIRST;
  let seen = SEEN;

  function paint(context, size) {
    const { axis, upright, unit } = how();
    count = within(count, axis);
    drawLines(context, size, upright, count, axis);
    offer(unit, (upright ? size.height : size.width) / axis.perMm);
    [slide.min, slide.max] = reach(axis);
    slide.value = count;
    slide.setAttribute("aria-valuetext", `${count} lines an inch`);
    answer(axis);
  }
  function offer(unit, whole) {
    const choices = widths(unit, whole);
    const said = choices.map(([, words]) => words).join();
    if (band.dataset.said === said) return;
    band.dataset.said = said;
    band.replaceChildren(...choices.map(([mm, words]) => new Option(words, mm)));
    band.selectedIndex = Math.max(0, choices.findLastIndex(([mm]) => mm <= seen + 1));
  }
  function answer(axis) {
    const read = inWords(reading(count, axis, Number(band.value)));
    slot("lines").textContent = count;
    for (const name of ["interval", "metric", "made"]) slot(name).textContent = read[name];
    const use = root.querySelector('[data-act="use"]');
    const address = new URL(use.href);
    address.searchParams.set("count", count);
    address.searchParams.set("error", read.error);
    use.href = address;
  }
  const turn = (to) => {
    count = within(to, how().axis);
    glass.again();
  };
  slide.addEventListener("input", () => turn(Number(slide.value)));
  band.addEventListener("change", () => {
    seen = Number(band.value);
    glass.again();
  });
  for (const button of root.querySelectorAll("[data-finer]")) stepping(button, () => turn(count + Number(button.dataset.finer)));
  return { paint };
}
