import { look } from "../journal/moments.js";
import { told } from "../reminders/hers.js";
import { button, el, sheet } from "./sheet.js";
import { GONE } from "./sitting.js";

const PATIENCE = 3000; // ms for the house to say how it stands there
const HOUR = 3_600_000;
const QUIET = 2 * HOUR; // without a tap for longer, a sitting is held to be left: so the house counts it too
const EVENING = 12 * HOUR; // begun no longer than this before the first entry known here, it may have gone on up to it
const WEEKDAYS = 6 * 24 * HOUR; // longer ago a weekday alone may be taken for another
const TAPS = ["stitches", "bare", "done"];

/** A sitting left running is noticed: its last tap is offered as its end. */
export function open(stitch) {
  const { id, begin } = stitch.view.sitting;
  const now = stitch.phone.now();
  const date = now - Date.parse(begin) > WEEKDAYS && { day: "numeric", month: "short" };
  const time = (at) => told(at, stitch.phone.account, { weekday: "short", ...date, hour: "2-digit", minute: "2-digit" }, date ? now : at);
  const entries = stitch.phone.last(stitch.project);
  const last = lastTap(entries, begin, now);
  const amend = async (fields) => {
    answer.disabled = true;
    await heardOf(stitch);
    if (!dialog.open) return;
    dialog.close();
    stitch.lay([{ kind: "amend", sitting: id, ...fields }]);
  };
  const [said, answer] = last ? [`the last tap was ${time(last)}`, button(`It ended ${time(last)}`, () => amend({ begin, end: last }), "main")]
    : isKnown(entries, begin) ? ["nothing was tapped in it", button("Strike it out", () => amend({ struck: true }), "main")]
      : ["its last tap is not kept here", el("a", { className: "btn main", href: "/hours/sittings" }, "Fix times")];
  const dialog = sheet(
    "A sitting is still running",
    el("p", {}, `Begun ${time(begin)}; ${said}.`),
    answer,
    button("It is still going on", () => dialog.close()),
  );
  const notice = ({ detail: { project, own } }) => {
    if (own || project !== stitch.project || !dialog.open || stitch.view.sitting?.id === id) return;
    dialog.close();
    stitch.say(GONE);
  };
  stitch.phone.addEventListener("change", notice);
  dialog.addEventListener("close", () => stitch.phone.removeEventListener("change", notice));
}

/** Hear what became of it elsewhere: another phone, or Fix times, may have been faster. */
function heardOf({ phone }) {
  const asked = navigator.onLine && look(phone).catch(() => {});
  return Promise.race([asked, new Promise((resolve) => setTimeout(resolve, PATIENCE))]);
}

/** Tell when a sitting begun then was last tapped in, before the next began and before a long quiet; none if unknown. */
function lastTap(entries, begin, now) {
  const begun = Date.parse(begin);
  let last = isKnown(entries, begin) ? begun : Date.parse(entries[0]?.at);
  if (!(last - begun <= EVENING)) return null;
  let found = null;
  for (const { kind, at } of entries) {
    const moment = Date.parse(at);
    if (moment <= begun) continue;
    if (kind === "begin" || moment > now || moment - last > QUIET) break;
    if (TAPS.includes(kind)) [last, found] = [moment, at];
  }
  return found;
}

/** Tell whether this phone has all since then: it keeps only the newest entries. */
const isKnown = (entries, begin) => entries.length > 0 && entries[0].at <= begin;
