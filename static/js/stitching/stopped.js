import { told } from "../reminders/hers.js";
import { help } from "./helps.js";
import { button, el, sheet } from "./sheet.js";
import { inHand, inWords, parked } from "./threads.js";

const FROM = { top: "rows from the top", bottom: "rows from the bottom", middle: "rows both ways from the first" };

const strands = (many) => (many === 1 ? "one strand" : `${many} strands`);

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
    held && el("p", {}, `In hand: ${held.name}, ${strands(held.strands)}.`),
    said.length > 0 && el("p", { className: "n" }, `Parked: ${said.join("; ")}.`),
  ];
}

/** Put in what the phone does not know of itself: the sheet stands on its foot, so nothing moves under her thumb. */
async function addHelp(stitch, dialog, how, line, day) {
  const found = await help(stitch).catch(() => null);
  if (!found) return;
  const { needle, photograph } = found;
  const figure = photograph && (await pictured(photograph, stitch, line, day));
  const before = dialog.scrollHeight;
  how.append(` Needle ${needle.usual}${inHand(stitch) ? "" : `, ${strands(found.strands)} as usual`}.`);
  if (figure) dialog.querySelector(".line").after(figure);
  dialog.scrollTop += dialog.scrollHeight - before;
}

/** Show the photograph; it leads to its story, where it is large. */
async function pictured({ picture, line, at, width, height }, { project }, said, day) {
  const image = el("img", { src: URL.createObjectURL(picture), width, height, alt: line || `The work on ${day(at)}` });
  await image.decode().catch(() => {});
  const below = line === said ? "" : `${line} `;
  const caption = el("figcaption", {}, below, el("span", { className: "quiet" }, day(at)));
  return el("figure", { className: "stopped" }, el("a", { href: `/projects/${project}/story` }, image), caption);
}

/** After a long absence: where she stopped, how it is worked, and whether the count still holds. */
export function open(stitch) {
  const { note } = stitch.view;
  const day = (at) => told(at, stitch.phone.account, { day: "numeric", month: "long" }, stitch.phone.now());
  const how = el("p", {}, method(stitch.plan));
  const dialog = sheet(
    "Where I stopped",
    note && el("p", { className: "card" }, note.text, el("br"), el("span", { className: "quiet" }, day(note.at))),
    how,
    ...threads(stitch),
    el("p", { className: "ask-count n" }, `${stitch.name()}: is it ${stitch.shown().count}?`),
    button("Yes, it is", () => dialog.close(), "main"),
    button("The cloth says…", () => { dialog.close(); stitch.open("says"); }),
  );
  addHelp(stitch, dialog, how, note?.text, day);
}
