/** What can be done with the whole of the shopping list: sent to somebody as text, printed. */

/** Print it. */
export const print = () => window.print();

/** Hand the list on as text: to the phone's own sheet, else copied, else shown. */
export async function share(root) {
  const text = textOf(root);
  const tell = (sentence) => (root.querySelector('[data-slot="told"]').textContent = sentence);
  if (navigator.share) {
    try {
      await navigator.share({ text });
      return tell("");
    } catch (error) {
      if (error.name === "AbortError") return tell(""); // she closed the phone's own sheet
    }
  }
  try {
    await navigator.clipboard.writeText(text);
    return tell("The list is copied: paste it where you like.");
  } catch {
    return show(root, text, tell);
  }
}

function show(root, text, tell) {
  const area = root.querySelector(".as-text");
  Object.assign(area, { hidden: false, value: text, rows: Math.min(20, text.split("\n").length + 1) });
  area.focus();
  area.select();
  return tell("Here is the list as text.");
}

function textOf(root) {
  const open = [...root.querySelectorAll("[data-ticks]")].filter((item) => !item.querySelector("input").checked);
  const title = JSON.parse(root.querySelector("[data-title]").textContent);
  return [title, "", ...open.map((item) => `☐ ${item.dataset.text}`)].join("\n");
}
