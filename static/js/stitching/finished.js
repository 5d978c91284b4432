import { button, el, sheet } from "./sheet.js";
import { ask, forGood } from "./sitting.js";

const PATIENCE = 3000;

/** The work is finished, or rests: a sitting that runs is ended, what is on its frame taken off; then to the project. */
export function open(stitch) {
  const frame = forGood(stitch);
  const dialog = stitch.view.sitting ? ask(stitch, frame) : frame && askFrame(stitch, frame);
  if (dialog) dialog.addEventListener("close", () => leave(stitch));
  else leave(stitch);
}

function askFrame(stitch, { ask: text, yes, no, state }) {
  const upper = (words) => words[0].toUpperCase() + words.slice(1);
  const off = () => { stitch.lay([{ kind: "frame", state }]); dialog.close(); };
  const dialog = sheet(stitch.plan.state === "resting" ? "It rests" : "It is finished", el("p", {}, text), button(upper(yes), off, "main"), button(upper(no), () => dialog.close()));
  return dialog;
}

/** Go to the project, which is drawn by what the house has; without network it has it later. */
async function leave({ phone, project, sent }) {
  await Promise.race([phone.send().catch(() => {}), new Promise((resolve) => setTimeout(resolve, PATIENCE))]);
  if ((await sent) === false) return; // it says why the photograph could not be kept
  location.assign(`/projects/${project}`);
}
