import { button, el, sheet } from "./sheet.js";
import { swatch } from "./strip.js";
import { inWords, isShort, laid, left, long, park, parked, putDown } from "./threads.js";

/** One needle: what is left to lay with it, how it is made up, and where it goes. */
export function open(stitch, line) {
  const rest = left(stitch, line);
  const then = (act) => () => { act(stitch, line.key); dialog.close(); stitch.repaint(); };
  const at = parked(stitch)[line.key];
  const dialog = sheet(
    line.name,
    el("p", { className: "line needle" }, swatch(line), el("span", { className: "n" }, `${laid(stitch, line.key).stitches} of ${line.full} crosses laid`, el("br"), `${rest} left, about ${long(rest * line.each)} of ${strands(line)}.`)),
    isShort(stitch, line) && el("p", { className: "card caution" }, "What is left may not reach. Buy more of the same lot while it is there. ", el("a", { href: `/projects/${stitch.project}/thread/running` }, "What to do")),
    at && el("p", {}, `Parked at ${inWords(stitch, at)}.`),
    button("Put it down", then(putDown), "main"),
    stitch.place !== null && button("Park it here", then(park)),
    button("Choose needles", () => { dialog.close(); stitch.open("needles"); }),
  );
}

const strands = (line) => `${line.strands} strand${line.strands === 1 ? "" : "s"}`;
