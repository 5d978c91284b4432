import { askNumber, button, el, sheet } from "./sheet.js";

const OTHERS = [["part", "Part stitches"], ["back", "Backstitch"], ["knot", "Knots and beads"]];

/** The passes: crosses by row or block, the rest by number or ticked; finished is offered after the last. */
export function open(stitch) {
  const hint = el("p", { className: "quiet" }, "Tick what is done, or not in this design.");
  const dialog = sheet("Passes", hint, el("div", { className: "stack" }));
  const draw = () => dialog.lastChild.replaceChildren(crosses(stitch), ...OTHERS.map((pass) => line(stitch, pass, draw)), finishing(stitch));
  draw();
}

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
  const asked = askNumber(`${name} laid now`, { min: 1 });
  const add = async () => {
    const by = asked.read();
    if (by !== null) draw(await stitch.lay([...stitch.sitDown(), { kind: "stitches", pass, by }]));
  };
  const laid = `${Math.max(0, state.stitches)} laid; count more`;
  return el("section", {}, el("label", { className: "tick" }, tick, name),
    el("details", {}, el("summary", { className: "n" }, laid), el("div", { className: "stack" }, asked.node, button("Lay them", add))));
}

function finishing(stitch) {
  const ready = done(stitch) >= parts(stitch) && OTHERS.every(([pass]) => stitch.view.passes[pass]?.done);
  if (!ready) return el("p", { className: "quiet" }, "When crosses and all three are done, finished is offered here.");
  const said = el("p", { role: "status" }, "Every pass is done.");
  return el("div", { className: "stack" }, said, button("It is finished", () => finish(stitch, said), "main"));
}

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
