// The page of quick thread, come alive.

import { begin, showTexts } from "../cloth/asking_page.js";
import { ask } from "./quick.js";
import { slots } from "./quick_saying.js";

const root = document.querySelector('[data-bench="quick"]');
if (root) {
  const tables = JSON.parse(root.querySelector("[data-table]").textContent);
  const paint = (asked) => showTexts(root, slots(asked, tables));
  begin(root, { ask: (typed) => ask(typed, tables), paint });
}
