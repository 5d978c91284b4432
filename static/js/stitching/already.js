import { askNumber, button, el, sheet } from "./sheet.js";

const MOST = 1000; // rows at once, so that the phone keeps up

/** What was on the cloth before: counted for the map, not for pace, thread or hours. */
export function open(stitch) {
  if (stitch.unit === "block") return stitch.open("map", { marking: true });
  const { height } = stitch.plan;
  const from = askNumber("Rows done, from", { value: 1, min: 1, max: height });
  const to = askNumber("To", { value: stitch.place > 1 ? stitch.place - 1 : "", min: 1, max: height });
  const here = stitch.place && askNumber(`Stitches in row ${stitch.place}`, { value: stitch.shown().count });
  const rows = () => {
    const [first, last] = [from.read(), to.read()];
    if (first === null || last === null) return;
    if (last < first) return to.tell(`Row ${last} comes before row ${first}. Turn them round.`);
    if (last - first >= MOST) return to.tell(`At most ${MOST} rows at once; do it in parts.`);
    lay(stitch, Array.from({ length: last - first + 1 }, (_, i) => first + i));
    dialog.close();
  };
  const number = () => {
    const count = here.read();
    if (count === null) return;
    const by = count - stitch.at().stitches;
    if (by) stitch.lay([{ kind: "stitches", ...stitch.where(), by, why: "before" }]);
    dialog.close();
  };
  const dialog = sheet(
    "Already on the cloth",
    el("p", { className: "quiet" }, "Counts for the map, not for pace, thread or hours."),
    el("div", { className: "row" }, from.node, to.node),
    button("These rows are done", rows, "main"),
    here && here.node,
    here && button("That many in this row", number),
  );
}

/** Lay places as done before: each with what it still lacks, all of one act. */
export function lay(stitch, places) {
  const drafts = places.filter((place) => !stitch.at(place).done).flatMap((place) => {
    const { of } = stitch.shown(place);
    const where = stitch.where(place);
    const by = (of ?? stitch.plan.width) - stitch.at(place).stitches;
    return [...(by > 0 ? [{ kind: "stitches", ...where, by, why: "before" }] : []), { kind: "done", ...where, done: true }];
  });
  if (drafts.length) stitch.act(drafts);
}
