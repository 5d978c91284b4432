import { lay as layBefore } from "./already.js";
import { drawing } from "./drawing.js";
import { askNumber, button, el, sheet } from "./sheet.js";
import { after, unpick } from "./unpick.js";

/** The map of the work: tap to choose a place, go there, or unpick back to it. With `marking`, mark blocks done. */
export function open(stitch, { marking = false } = {}) {
  const cloth = drawing(stitch);
  const done = stitch.view[`${stitch.unit}s_done`];
  const count = `${done} ${stitch.unit}${done === 1 ? "" : "s"} done, ${stitch.view.stitches} stitches`;
  const foot = el("div", { className: "stack" });
  const dialog = sheet(marking ? "Already on the cloth" : "The map", el("p", { className: "quiet n" }, count), cloth.svg, foot);
  const touched = (marking ? markBlocks : choosePlace)(stitch, cloth, foot, dialog);
  cloth.svg.addEventListener("pointerdown", (event) => {
    cloth.svg.setPointerCapture(event.pointerId);
    touched(cloth.placeAt(event));
  });
  if (!marking) cloth.svg.addEventListener("pointermove", (event) => event.buttons && touched(cloth.placeAt(event)));
}

function choosePlace(stitch, cloth, foot, dialog) {
  const { plan, unit } = stitch;
  const first = stitch.place ?? (unit === "row" ? 1 : [1, 1]);
  const fields = unit === "row"
    ? [askNumber("Row", { value: first, min: 1, max: plan.height })]
    : [askNumber("Block across", { value: first[0], min: 1, max: Math.ceil(plan.width / 10) }), askNumber("and down", { value: first[1], min: 1, max: Math.ceil(plan.height / 10) })];
  const said = el("p", { className: "n", role: "status" });
  const read = () => {
    const numbers = fields.map((field) => field.read());
    return numbers.includes(null) ? null : unit === "row" ? numbers[0] : numbers;
  };
  const show = (place) => {
    cloth.mark([place], "chosen");
    said.textContent = standing(stitch, place);
  };
  const touched = (place) => {
    [place].flat().forEach((number, i) => (fields[i].input.value = number));
    show(place);
  };
  for (const field of fields) field.input.addEventListener("change", () => read() !== null && show(read()));
  const go = () => read() !== null && (stitch.go(read()), dialog.close());
  foot.append(el("div", { className: "row" }, fields.map((field) => field.node)), said, button("Go there", go, "main"),
    button("Unpick back to here…", () => read() !== null && ask(stitch, read(), foot, dialog)));
  show(first);
  return touched;
}

function standing(stitch, place) {
  const { count, of } = stitch.shown(place);
  const far = stitch.at(place).done ? "done" : count ? "begun" : "untouched";
  return `${stitch.name(place)}: ${far}, ${count}` + (of === null ? "" : ` of ${of}`);
}

function ask(stitch, place, foot, dialog) {
  const places = after(stitch, place);
  const stitches = places.reduce((sum, one) => sum + Math.max(0, one.stitches), 0);
  const what = places.length
    ? `${stitches} stitches in ${places.length} ${stitch.unit}${places.length > 1 ? "s" : ""} after ${stitch.name(place).toLowerCase()} come out. One undo brings them back.`
    : `Nothing is laid after ${stitch.name(place).toLowerCase()}.`;
  foot.replaceChildren(el("p", {}, what),
    ...(places.length ? [button("Unpick", () => { unpick(stitch, places); dialog.close(); }, "main")] : []),
    button("Leave it", () => dialog.close()));
}

function markBlocks(stitch, cloth, foot, dialog) {
  const chosen = new Map();
  const mark = button("Mark them done", () => { layBefore(stitch, [...chosen.values()]); dialog.close(); }, "main", { disabled: true });
  const said = el("p", { className: "quiet n", role: "status" }, "Tap the blocks that are done.");
  foot.append(said, mark);
  return (place) => {
    const key = place.join(".");
    if (!chosen.delete(key)) chosen.set(key, place);
    cloth.mark([...chosen.values()], "chosen");
    mark.disabled = !chosen.size;
    said.textContent = `${chosen.size} chosen`;
  };
}
