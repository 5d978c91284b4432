/** Dress the page for a plan other than the one it was drawn for: title, rows or blocks, and what it is held in. */
export function dress({ element, find, plan, unit, isFramed }) {
  document.title = `${plan.title} · Evenrow`;
  find("[data-slot=title]").textContent = plan.title;
  element.dataset.unit = unit;
  for (const part of ["", "_stitches", "s_done"]) {
    find(`[data-slot=row${part}], [data-slot=block${part}]`).dataset.slot = unit + part;
  }
  find("[data-act=bare]").hidden = unit === "block";
  find("[data-act=frame]").hidden = !isFramed;
  if (!plan.legend) element.querySelector(".strip")?.remove();
}
