import { askNumber, button, el } from "./sheet.js";
import { swatch } from "./strip.js";
import { laid } from "./threads.js";

// A pass colour by colour: those lines of the legend that have it, with what is laid of them.

const MM = { cm: 10, in: 25.4 };
const MOST = 10_000; // that one entry can say

/** List the colours of a pass; each opens to what is laid now. The last one laid in full ticks the pass. */
export function colours(stitch, pass, draw) {
  return stitch.plan.legend.filter((line) => line[pass]).map((line) => colour(stitch, pass, line, draw));
}

function colour(stitch, pass, line, draw) {
  const { stitches } = laid(stitch, line.key, pass);
  const rest = Math.max(0, line[pass] - stitches);
  const head = el("summary", {}, swatch(line), el("span", {}, line.name, el("small", { className: "quiet n" }, ` ${stitches} of ${line[pass]}`)));
  const number = askNumber(`${line.name}: laid now`, { min: 1, max: 100_000, value: rest || "" });
  const unit = pass === "back" && lengths();
  const add = async () => {
    const read = number.read();
    const by = read && (unit?.value in MM ? Math.max(1, Math.round((read * MM[unit.value]) / pitch(stitch.plan))) : read);
    if (by) draw(await lay(stitch, pass, line, by));
  };
  return el("details", { className: "colour" }, head, el("div", { className: "stack" }, number.node, unit, button("Lay them", add)));
}

/** Backstitch is counted in lengths of a stitch, or measured along the line. */
function lengths() {
  const options = [["", "squares of the chart"], ["cm", "cm along the line"], ["in", "inches along the line"]];
  return el("select", { "aria-label": "Counted in" }, options.map(([value, text]) => el("option", { value }, text)));
}

const pitch = ({ count, over }) => (over * 25.4) / count;

function lay(stitch, pass, line, by) {
  const more = (other) => laid(stitch, other.key, pass).stitches + (other.key === line.key ? by : 0);
  const isWhole = stitch.plan.legend.every((other) => more(other) >= other[pass]);
  const sitting = stitch.sitDown();
  if (sitting.length) stitch.tell(stitch.lay(sitting));
  const laying = parted(by).map((some) => ({ kind: "stitches", pass, thread: line.key, by: some }));
  return stitch.act([...laying, ...(isWhole ? [{ kind: "done", pass, done: true }] : [])], false);
}

/** Part a number into what entries can say. */
const parted = (by) => (by > MOST ? [MOST, ...parted(by - MOST)] : [by]);
