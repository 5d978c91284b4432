/** What the house would not have: why, and what she may do about it. Nothing here is ever dropped. */
import { unpark } from "./batches.js";

const NAMES = { stitches: "Stitches", bare: "Bare cloth", done: "Done", start: "Where it begins", begin: "A sitting begun", end: "A sitting ended", amend: "Times fixed", frame: "The frame", undo: "Undo", have: "Shopping list" };

const make = (tag, { on, ...values }, ...children) => {
  const made = Object.assign(document.createElement(tag), values);
  if (on) made.addEventListener("click", on);
  made.append(...children);
  return made;
};

/** Show the refused entries of a phone in a dialog. */
export function showParked(phone) {
  const refused = phone.refused();
  const again = () => {
    dialog.close();
    sendAgain(phone);
  };
  const dialog = make("dialog", { className: "parked" },
    make("div", { className: "stack" },
      make("h2", { textContent: refused.length === 1 ? "One thing was refused" : `${refused.length} things were refused` }),
      make("p", { className: "quiet", textContent: "Kept on this phone, and not counted." }),
      make("ul", { className: "plain stack" }, ...refused.map(line)),
      make("button", { className: "btn main", type: "button", textContent: "Send again", on: again }),
      make("button", { className: "btn", type: "button", textContent: "Save to a file", on: () => save(refused) }),
      make("button", { className: "btn plain", type: "button", textContent: "Close", on: () => dialog.close() })));
  dialog.addEventListener("close", () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
}

function line({ entry, why }) {
  const place = entry.row ? `, row ${entry.row}` : entry.block ? `, block ${entry.block.join(", ")}` : "";
  const what = `${NAMES[entry.kind] || entry.kind}${place}${entry.by ? `: ${entry.by}` : ""}`;
  const when = new Date(entry.at).toLocaleString([], { dateStyle: "medium", timeStyle: "short" });
  return make("li", { className: "card" }, make("b", { textContent: what }), make("p", { textContent: why }), make("small", { className: "quiet", textContent: when }));
}

async function sendAgain(phone) {
  await phone.store.change(unpark);
  await phone.moved();
  await phone.send();
}

function save(refused) {
  const href = URL.createObjectURL(new Blob([JSON.stringify(refused, null, 2)], { type: "application/json" }));
  make("a", { href, download: "evenrow-refused.json" }).click();
  setTimeout(() => URL.revokeObjectURL(href), 60_000);
}
