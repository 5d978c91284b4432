import { button, sheet } from "./sheet.js";

const ROWS = [["1", "1"], ["2", "2"], ["5", "5"], ["10", "10"], ["ten", "To the ten-line"], ["row", "The row"]];

/** Ask what each tap lays. */
export function open(stitch) {
  const choices = ROWS.map(([step, text]) => {
    const words = step === "row" && stitch.unit === "block" ? "The block" : text;
    return button(words, () => { stitch.set(step); dialog.close(); stitch.repaint(); }, "", { "aria-pressed": String(stitch.step === step) });
  });
  const list = document.createElement("div");
  list.className = "tiles few";
  list.append(...choices);
  const hint = document.createElement("p");
  hint.className = "quiet";
  hint.textContent = "Or touch the field and slide: a run of 1 to 20 is laid when you let go.";
  const dialog = sheet("Each tap lays", list, hint);
}
