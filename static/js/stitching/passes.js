import { colours } from "./colours.js";
import { askNumber, button, el, sheet } from "./sheet.js";

const OTHERS = [["part", "Part stitches"], ["back", "Backstitch"], ["knot", "Knots and beads"]];

/** The passes: crosses by row or block, the rest by colour, by number or ticked; finished is offered after the last. */
export function open(stitch) {
  const passes = asked(stitch);
  const hint = el("p", { className: "quiet" }, stitch.plan.legend ? "Tick what is done." : "Tick what is done, or not in this design.");
  const dialog = sheet("Passes", passes.length ? hint : null, el("div", { className: "stack" }));
  const draw = () => dialog.lastChild.replaceChildren(crosses(stitch), ...passes.map((pass) => line(stitch, pass, draw)), finishing(stitch, passes));
  draw();
}

/** A legend says which passes the design has; without one she does. */
const asked = ({ plan: { legend } }) => OTHERS.filter(([pass]) => !legend || legend.some((line) => line[pass]));

const parts = ({ plan, unit }) => (unit === "row" ? plan.height : Math.ceil(plan.width / 10) * Math.ceil(plan.height / 10));
const done = (stitch) => stitch.view[`${stitch.unit}s_done`];

function crosses(stitch) {
  const { unit } = stitch;
  return el("p", { className: "line" }, el("b", {}, "Crosses"), el("span", {}, `${done(stitch)} of ${parts(stitch)} ${unit}s`));
}

function line(stitch, [pass, name], draw) {
  const state = stitch.view.passes[pass] || { stitches: 0, done: false };
  const tick = el("input", { type: "checkbox", checked: state.done });
  tick.onchange = () => stitch.lay([{ kind: "done", pass, done: tick.checked }]).then(draw);
  const inside = stitch.plan.legend ? colours(stitch, pass, draw) : [byNumber(stitch, pass, name, draw)];
  const laid = `${Math.max(0, state.stitches)} laid; count more`;
  return el("section", {}, el("label", { className: "tick" }, tick, name),
    el("details", { open: opened.has(pass), ontoggle: ({ target }) => opened[target.open ? "add" : "delete"](pass) },
      el("summary", { className: "n" }, laid), el("div", { className: "stack" }, inside)));
}

const opened = new Set(); // stays open as it is drawn anew

function byNumber(stitch, pass, name, draw) {
  const number = askNumber(`${name} laid now`, { min: 1 });
  const add = async () => {
    const by = number.read();
    if (by !== null) draw(await stitch.lay([...stitch.sitDown(), { kind: "stitches", pass, by }]));
  };
  return el("div", { className: "stack" }, number.node, button("Lay them", add));
}

function finishing(stitch, passes) {
  const isReady = done(stitch) >= parts(stitch) && passes.every(([pass]) => stitch.view.passes[pass]?.done);
  if (!isReady) return el("p", { className: "quiet" }, `When ${wanted(passes)} done, finished is offered here.`);
  const said = el("p", { role: "status" }, "Every pass is done.");
  return el("div", { className: "stack" }, said, button("It is finished", () => finish(stitch, said), "main"));
}

const wanted = (passes) => (passes.length === 3 ? "crosses and all three are" : ["the crosses", ...passes.map(([, name]) => name.toLowerCase())].join(" and ") + " are");

async function finish(stitch, said) {
  said.textContent = "Saying so…";
  try {
    const body = new URLSearchParams({ state: "finished" });
    const answer = await fetch(`/projects/${stitch.project}/state`, { method: "POST", body });
    if (answer.ok && !answer.redirected) return stitch.open("finished");
    said.textContent = "That was not taken. Open the project and set it to finished there.";
  } catch {
    said.textContent = "There is no network just now. All is kept here; say so again later.";
  }
}
