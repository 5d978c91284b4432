import { button, el, sheet } from "./sheet.js";
import { swatch } from "./strip.js";
import { MOST, choose, left, needles } from "./threads.js";

/** Choose from the legend whose thread is in a needle: up to twelve. */
export function open(stitch) {
  const chosen = new Set(needles(stitch).map(({ key }) => key));
  const count = el("p", { className: "quiet n", role: "status" });
  const tell = () => { count.textContent = `${chosen.size} of ${MOST} needles.`; };
  const ticks = stitch.plan.legend.map((line) => {
    const input = el("input", { type: "checkbox", checked: chosen.has(line.key) });
    input.onchange = () => {
      if (input.checked && chosen.size >= MOST) input.checked = false;
      chosen[input.checked ? "add" : "delete"](line.key);
      tell();
    };
    return el("label", { className: "tick" }, input, swatch(line), el("span", {}, line.name, el("small", { className: "quiet" }, ` ${left(stitch, line)} left`)));
  });
  const done = () => {
    choose(stitch, stitch.plan.legend.map(({ key }) => key).filter((key) => chosen.has(key)));
    dialog.close();
    stitch.repaint();
  };
  const dialog = sheet("Needles in hand", count, el("div", { className: "stack" }, ticks), button("Take these", done, "main"));
  tell();
}
