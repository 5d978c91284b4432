import { askNumber, button, el, sheet } from "./sheet.js";

/** The cloth says: take the number that is really there, as a miscount or as unpicked. */
export function open(stitch) {
  if (stitch.place === null) return stitch.open("map");
  const { count } = stitch.shown();
  const asked = askNumber("Stitches really there", { value: count, hint: `${count} are counted here.` });
  const set = (why) => {
    const really = asked.read();
    if (really === null) return;
    if (why === "unpicked" && really >= count) return asked.tell(`Unpicking leaves fewer than ${count}. For more, it was a miscount.`);
    lay(stitch, really, why);
    dialog.close();
  };
  const dialog = sheet(
    `${stitch.name()}: the cloth says`,
    asked.node,
    button("It was miscounted", () => set("corrected"), "main"),
    count > 0 && button("I unpicked back to there", () => set("unpicked")),
    el("p", { className: "quiet" }, "Unpicked thread stays spent. A miscount never was."),
  );
  asked.input.select();
}

/** A closed row or block that turns out short, or is unpicked, is open again; one undo takes back both. */
function lay(stitch, really, why) {
  const { stitches, done } = stitch.at();
  const { of } = stitch.shown();
  const where = stitch.where();
  const by = really - stitches;
  const isShort = why === "unpicked" || (of !== null && really < of);
  const counted = { kind: "stitches", ...where, ...stitch.hand, by, why }; // what she looks at is what she has in hand
  if (by && done && isShort) stitch.act([{ kind: "done", ...where, done: false }, counted], false);
  else if (by) stitch.lay([counted]);
}
