// The page of cloth for a class, come alive.

import { begin, showTexts } from "./asking_page.js";
import { rows, texts } from "./class_threads.js";
import { ask, drawing, slots } from "./classroom.js";
import { fillRows } from "./rows.js";

const SVG = "http://www.w3.org/2000/svg";

function rect(name, strip) {
  const made = document.createElementNS(SVG, "rect");
  made.setAttribute("class", name);
  ["x", "y", "width", "height"].forEach((key, i) => made.setAttribute(key, strip[i]));
  return made;
}

function paint(root, tables, asked) {
  showTexts(root, { ...slots(asked, tables, tables.straightened), ...texts(asked.values, tables) });
  const threads = rows(asked.values, tables.threads);
  fillRows(root.querySelector("[data-rows]"), threads, ["symbol", "thread", "buy"]);
  root.querySelector("[data-threads]").hidden = !threads.length;
  const [box, cuts, left] = drawing(asked, tables);
  const svg = root.querySelector('[data-slot="drawing"]');
  svg.setAttribute("viewBox", box);
  svg.replaceChildren(...left.map((strip) => rect("left", strip)), ...cuts.map((strip) => rect("cut", strip)));
}

const root = document.querySelector('[data-bench="class"]');
if (root) {
  const tables = JSON.parse(root.querySelector("[data-table]").textContent);
  begin(root, { ask, paint: (asked) => paint(root, tables, asked) });
}
