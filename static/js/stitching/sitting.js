import { keep } from "./device.js";
import { button, el, sheet } from "./sheet.js";

const MOST = 20;
const ENDS = {
  hoop: { ask: "Take it off the frame for the night.", state: "off", yes: "End, off the frame", no: "End, left on" },
  clamps: { ask: "Take it off the frame; clamps lying on stitches first.", state: "off", yes: "End, off the frame", no: "End, left on" },
  scroll: { ask: "Slacken it for the night.", state: "slack", yes: "End, slackened", no: "End, left tight" },
};

/** Begin a sitting by hand; of one that runs, ask whether to pause or end it. */
export function open(stitch) {
  if (!stitch.view.sitting) return stitch.tell(stitch.lay(stitch.sitDown()));
  const { plan, view } = stitch;
  const note = el("input", { id: "stopped", maxLength: 200, autocomplete: "off" });
  const held = view.frame?.state === "on" || (plan.frame !== "scroll" && view.frame?.state === "slack");
  const asked = stitch.isFramed && held ? ENDS[plan.frame] : null;
  const end = (state) => {
    finish(stitch, note.value.trim(), state);
    dialog.close();
  };
  const dialog = sheet(
    `Sitting: ${stitch.minutes()} min`,
    button("Pause", () => { pause(stitch); dialog.close(); }),
    el("div", { className: "ask" }, el("label", { htmlFor: "stopped" }, "Where I stopped"), note),
    asked && el("p", {}, asked.ask),
    asked ? [button(asked.yes, () => end(asked.state), "main"), button(asked.no, () => end())] : button("End", () => end(), "main"),
  );
}

function pause(stitch) {
  const { id, begin } = stitch.view.sitting;
  const now = stitch.phone.now();
  const before = stitch.joined() + now - Date.parse(begin);
  keep(`pause ${stitch.project}`, { end: now, before });
  stitch.lay([{ kind: "end", sitting: id }]);
}

async function finish(stitch, note, state) {
  const end = { kind: "end", sitting: stitch.view.sitting.id, ...(note ? { note } : {}) };
  keep(`pause ${stitch.project}`, null);
  stitch.say("");
  await stitch.lay([end, ...(state ? [{ kind: "frame", state }] : [])]);
  // Two phones may each have begun one: getting up ends them all.
  for (let more = 0; stitch.view.sitting && more < MOST; more++) await stitch.lay([{ kind: "end", sitting: stitch.view.sitting.id }]);
}
