import { keep, kept } from "./device.js";
import { button, el, sheet } from "./sheet.js";

function tick(text, name, otherwise, changed = () => {}) {
  const input = el("input", { type: "checkbox", checked: kept(name) ?? otherwise });
  input.onchange = () => { keep(name, input.checked); changed(); };
  return el("label", { className: "tick" }, input, text);
}

/** All that is not wanted at every row. */
export function open(stitch) {
  const to = (name) => () => { dialog.close(); stitch.open(name); };
  const rows = stitch.unit === "row";
  const dialog = sheet(
    "More",
    el("div", { className: "tiles" },
      button("The map", to("map")),
      button("Passes", to("passes")),
      stitch.plan.legend && button("Needles", to("needles")),
      rows && button("Where this row begins", to("begun")),
      button("Already on the cloth", to("already"), "", { id: "already" }),
      el("a", { className: "btn", href: `/projects/${stitch.project}` }, "The project")),
    el("h2", {}, "On this phone"),
    tick("A sound with every tap", "sound", !navigator.vibrate),
    tick("Say when to rest eyes and hands", "rest", true),
  );
}
