// Fill the slots that the server drew; nothing is added to the page, so nothing moves.

const ALL = { count: "", of: null, side: "", whole: true, legs: [[0, 5], [0, 5]], band: { low: 0, high: 140, from: 0, to: 130, ten: 130 } };
const STEPS = { ten: "to the ten", row: "the row" };

// A text that stands already is changed in place: cheaper than a new one, at every tap.
const write = (node, text) => {
  const held = node.firstChild;
  if (!held) node.textContent = text;
  else if (held.data !== text) held.data = text;
};
const set = (node, attributes) => {
  for (const [name, value] of Object.entries(attributes)) {
    if (node.getAttribute(name) !== String(value)) node.setAttribute(name, value);
  }
};
const flag = (node, name, on) => node.toggleAttribute(name, Boolean(on));

/** Paint the numbers of the place in hand, and those of the whole. */
export function paint(stitch) {
  const { find, view, place, unit, step } = stitch;
  const shown = place === null ? { ...ALL, label: `Every ${unit} is done` } : stitch.shown();
  const kind = unit === "row" ? "Row" : "Block";
  const slot = (name, text) => write(find(`[data-slot=${name}]`), String(text ?? ""));
  slot("kind", place === null ? `All ${unit}s` : kind);
  slot(unit, place && [place].flat().join(", "));
  slot(`${unit}_stitches`, shown.count);
  slot(`${unit}s_done`, view[`${unit}s_done`]);
  slot("kinds", view[`${unit}s_done`] === 1 ? unit : `${unit}s`);
  slot("stitches", view.stitches);
  slot("of", shown.of === null ? "" : `of ${shown.of}`);
  slot("side", shown.side);
  slot("label", step === "row" && shown.left ? `Each tap lays ${shown.left}` : shown.label);
  slot("frame", view.frame?.state || "off");
  slot("step", STEPS[step] || step);
  slot("done", place !== null && stitch.at().done ? "Open again" : unit === "row" ? "Row done" : "All of it");
  slot("sitting", stitch.clock());
  flag(find("[data-act=sitting]"), "data-open", view.sitting);
  flag(find(".field"), "data-whole", shown.whole);
  find(".big").classList.toggle("long", shown.count > 999);
  draw(stitch, shown);
}

function draw({ find, all }, { legs, band }) {
  for (const leg of all("[data-leg]")) {
    const [from, to] = legs[leg.dataset.leg];
    const isLaid = to > from; // else the dash begins beyond the leg's end
    set(leg, { "stroke-dasharray": `${to - from} 99`, "stroke-dashoffset": isLaid ? -from : -9 });
  }
  set(find(".band"), { viewBox: `${band.low} 0 ${band.high - band.low} 10` });
  set(find("[data-sight]"), { x: band.low, width: band.high - band.low });
  set(find("[data-behind]"), { x: band.from, width: band.to - band.from });
  set(find("[data-ten]"), { transform: `translate(${band.ten})` });
}
