import { told } from "../reminders/hers.js";
import { button, el, sheet } from "./sheet.js";
import { inHand, inWords, parked } from "./threads.js";

const FROM = { top: "rows from the top", bottom: "rows from the bottom", middle: "rows both ways from the first" };

function method({ working, direction, start_way, over }) {
  const way = working === "blocks" ? "blocks of ten by ten" : `${FROM[direction]}, to the ${start_way}`;
  return `Worked by ${way}, over ${over === 2 ? "two threads" : "one"}.`;
}

/** Say what is in hand, in how many strands, and which needles wait where. */
function threads(stitch) {
  const held = inHand(stitch);
  const waiting = Object.entries(parked(stitch)).map(([key, at]) => [stitch.plan.legend?.find((line) => line.key === key), at]);
  const said = waiting.filter(([line]) => line).map(([line, at]) => `${line.name} at ${inWords(stitch, at)}`);
  return [
    held && el("p", {}, `In hand: ${held.name}, ${held.strands === 1 ? "one strand" : `${held.strands} strands`}.`),
    said.length > 0 && el("p", { className: "n" }, `Parked: ${said.join("; ")}.`),
  ];
}

/** After a long absence: where she stopped, how it is worked, and whether the count still holds. */
export function open(stitch) {
  const { note } = stitch.view;
  const day = (at) => told(at, stitch.phone.account, { day: "numeric", month: "long" });
  const dialog = sheet(
    "Where I stopped",
    note && el("p", { className: "card" }, note.text, el("br"), el("span", { className: "quiet" }, day(note.at))),
    el("p", {}, method(stitch.plan)),
    ...threads(stitch),
    el("p", { className: "ask-count n" }, `${stitch.name()}: is it ${stitch.shown().count}?`),
    button("Yes, it is", () => dialog.close(), "main"),
    button("The cloth says…", () => { dialog.close(); stitch.open("says"); }),
  );
}
