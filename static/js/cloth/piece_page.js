// The page of a piece of cloth, come alive.

import { begin, showTexts } from "./asking_page.js";
import { ask, slots } from "./piece.js";
import { frame, shapes } from "./piece_drawing.js";

function paint(root, tables, asked) {
  showTexts(root, slots(asked, tables));
  const drawn = shapes(asked, tables.margins);
  root.querySelector('[data-slot="drawing"]').setAttribute("viewBox", frame(drawn));
  for (const [name, numbers] of Object.entries(drawn)) {
    const rect = root.querySelector(`[data-shape="${name}"]`);
    for (const [key, value] of Object.entries(numbers)) rect.setAttribute(key, value);
  }
}

const root = document.querySelector('[data-bench="piece"]');
if (root) {
  const tables = JSON.parse(root.querySelector("[data-table]").textContent);
  begin(root, { ask, paint: (asked) => paint(root, tables, asked) });
}
