import { stamp } from "../journal/stamps.js";
import { keep } from "./device.js";
import { offer } from "./photograph.js";
import { button, el, sheet } from "./sheet.js";

/** Said of a sitting that another phone of hers, or Fix times, was faster with. */
export const GONE = "It was ended or moved meanwhile.";

const MOST = 20;
const OFF = { ask: "Take it off the frame for the night.", state: "off", yes: "off the frame", no: "left on" };
const ENDS = {
  hoop: OFF,
  clamps: { ...OFF, ask: "Take it off the frame; clamps lying on stitches first." },
  scroll: { ask: "Slacken it for the night.", state: "slack", yes: "slackened", no: "left tight" },
};

/** Begin a sitting by hand; of one that runs, ask whether to pause or end it. */
export function open(stitch) {
  if (!stitch.view.sitting) return stitch.tell(stitch.lay(stitch.sitDown()));
  const { plan, view } = stitch;
  const held = view.frame?.state === "on" || (plan.frame !== "scroll" && view.frame?.state === "slack");
  const dialog = ask(stitch, held ? ENDS[plan.frame] : null, button("Pause", () => { pause(stitch, view.sitting); dialog.close(); }));
}

/** What is asked of work that is finished and still on its frame; null if it is on none. */
export function forGood({ plan, view, isFramed }) {
  if (!isFramed || !["on", "slack"].includes(view.frame?.state)) return null;
  return plan.frame === "clamps" ? ENDS.clamps : { ...OFF, ask: "Take it off the frame." };
}

/** Ask where she stopped and, if there is anything to `frame`, about that; gives the sheet. */
export function ask(stitch, frame, ...more) {
  const note = el("input", { id: "stopped", maxLength: 200, autocomplete: "off" });
  const photograph = offer(stitch);
  const { id } = stitch.view.sitting; // it may be ended elsewhere before she answers; her line and the frame count all the same
  stitch.sent = null;
  const end = (state) => {
    const line = oneLine(note.value);
    finish(stitch, id, line, state);
    stitch.sent = photograph.send(line);
    dialog.close();
  };
  const dialog = sheet(
    `Sitting: ${stitch.minutes()} min`,
    more,
    el("div", { className: "ask" }, el("label", { htmlFor: "stopped" }, "Where I stopped"), note),
    photograph.node,
    frame && el("p", {}, frame.ask),
    frame ? [button(`End, ${frame.yes}`, () => end(frame.state), "main"), button(`End, ${frame.no}`, () => end())] : button("End", () => end(), "main"),
  );
  return dialog;
}

/** Give what was typed or pasted as the house takes it: on one line, of whole characters (webapp/lines.py). */
const oneLine = (text) => text.replace(/\0|\p{Cs}/gu, "").replace(/ *[\p{Cc}\p{Zl}\p{Zp}][\p{Cc}\p{Zl}\p{Zp} ]*/gu, " ").trim();

function pause(stitch, { id, begin }) {
  if (stitch.view.sitting?.id !== id) return stitch.say(GONE);
  const now = stitch.phone.now();
  const before = stitch.joined() + now - Date.parse(begin);
  keep(`pause ${stitch.project}`, { end: now, before });
  stitch.lay([{ kind: "end", sitting: id }]);
}

async function finish(stitch, id, note, state) {
  const sitting = stitch.view.sitting?.id === id ? id : stamp().id; // ended elsewhere it keeps that end: her line ends nothing
  const end = { kind: "end", sitting, ...(note ? { note } : {}) };
  keep(`pause ${stitch.project}`, null);
  stitch.say("");
  await stitch.lay([end, ...(state ? [{ kind: "frame", state }] : [])]);
  // Two phones may each have begun one: getting up ends them all.
  for (let more = 0; stitch.view.sitting && more < MOST; more++) await stitch.lay([{ kind: "end", sitting: stitch.view.sitting.id }]);
}
