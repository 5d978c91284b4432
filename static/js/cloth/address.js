// What was typed into the gauge stands in the page's address, so that going back, loading anew and sharing show the same.

import { fieldOf, isBlank, makeRoom } from "./lines.js";

const KINDS = ["squares", "threads"];
const CHOICES = ["kind", "unit", "division", "ends"];
const USUAL = { division: "16", ends: "marks" };
const COLUMNS = ["counted", "length", "part", "way"];

const linesOf = (root) => [...root.querySelectorAll("[data-line]")];

/** Fill in what the address says, where the page came without it: it was kept for the time without network. */
export function fillIn(root, form, given) {
  const asked = withKind(given);
  const counted = asked.getAll("counted");
  if (!counted.length || !linesOf(root).every(isBlank)) return;
  for (const name of CHOICES) if (asked.has(name)) form.elements.namedItem(name).value = asked.get(name);
  counted.slice(0, 12).forEach((_, i) => {
    const line = linesOf(root)[i];
    for (const name of COLUMNS) {
      const typed = asked.getAll(name)[i];
      if (typed !== undefined && !(i === 0 && name === "way")) fieldOf(line, name).value = typed;
    }
    makeRoom(root);
  });
  const isPlain = counted.length === 1 && Object.entries(USUAL).every(([name, usual]) => form.elements.namedItem(name).value === usual);
  root.querySelector("details").open ||= !isPlain;
}

/** Take the name a script counts under for what was counted. */
function withKind(given) {
  const kind = !given.has("counted") && KINDS.find((name) => given.has(name));
  return kind ? new URLSearchParams([...given].map(([name, text]) => (name === kind ? ["counted", text] : [name, text])).concat([["kind", kind]])) : given;
}

/** Write what is typed into the address; while nothing is, it stays bare. */
export function keep(root, form) {
  const lines = linesOf(root).filter((line, i) => i === 0 || !isBlank(line));
  const query = new URLSearchParams();
  if (lines.some((line) => !isBlank(line))) {
    for (const name of CHOICES) {
      const chosen = form.elements.namedItem(name).value;
      if (chosen !== USUAL[name]) query.append(name, chosen);
    }
    for (const name of COLUMNS) {
      const column = lines.map((line) => fieldOf(line, name).value);
      const isTold = name === "way" ? lines.length > 1 : name !== "part" || column.some(Boolean);
      if (isTold) for (const typed of column) query.append(name, typed);
    }
  }
  const search = String(query) && `?${query}`;
  if (search === location.search) return;
  try { history.replaceState(history.state, "", location.pathname + search); } catch { /* too often at once: the next key writes it */ }
}
