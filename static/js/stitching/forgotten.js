import { told } from "../reminders/hers.js";
import { button, el, sheet } from "./sheet.js";

/** A sitting left running is noticed: its last tap is offered as its end. */
export function open(stitch) {
  const { id, begin } = stitch.view.sitting;
  const time = (at) => told(at, stitch.phone.account, { weekday: "short", hour: "2-digit", minute: "2-digit" });
  const taps = stitch.phone.last(stitch.project).filter((entry) => entry.at > begin && ["stitches", "bare", "done"].includes(entry.kind));
  const last = taps.at(-1)?.at;
  const amend = (fields) => { stitch.lay([{ kind: "amend", sitting: id, ...fields }]); dialog.close(); };
  const dialog = sheet(
    "A sitting is still running",
    el("p", {}, `Begun ${time(begin)}`, last ? `; the last tap was ${time(last)}.` : "; nothing was tapped in it."),
    last ? button(`It ended ${time(last)}`, () => amend({ begin, end: last }), "main")
      : button("Strike it out", () => amend({ struck: true }), "main"),
    button("It is still going on", () => dialog.close()),
  );
}
