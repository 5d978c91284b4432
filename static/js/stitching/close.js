import { button, el, sheet } from "./sheet.js";

/** A row short or over is questioned then and there, never closed silently. */
export function open(stitch) {
  const { count, of } = stitch.shown();
  const how = count < of ? "short" : "over";
  const shut = () => { dialog.close(); stitch.do("close"); };
  const dialog = sheet(
    `${stitch.name()} has ${count} of ${of}`,
    el("p", {}, count < of ? `${of - count} fewer than the pattern has.` : `${count - of} more than the pattern has.`),
    button(`Close it ${how}`, shut),
    button("The cloth says…", () => { dialog.close(); stitch.open("says"); }),
    button("Go on stitching", () => dialog.close(), "main"),
  );
}
