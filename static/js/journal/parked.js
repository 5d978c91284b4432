/** What the house would not have: why, and what she may do about it. Nothing here is ever dropped. */
import { told } from "../reminders/hers.js";
import { button, el, sheet } from "../stitching/sheet.js";
import { unpark } from "./batches.js";

const NAMES = { stitches: "Stitches", bare: "Bare cloth", done: "Done", start: "Where it begins", begin: "A sitting begun", end: "A sitting ended", amend: "Times fixed", frame: "The frame", undo: "Undo", have: "Shopping list" };

/** Show the refused entries of a phone in a sheet. */
export function showParked(phone) {
  const refused = phone.refused();
  const again = () => {
    dialog.close();
    sendAgain(phone);
  };
  const dialog = sheet(
    refused.length === 1 ? "One thing was refused" : `${refused.length} things were refused`,
    el("p", { className: "quiet" }, "Kept on this phone, and not counted."),
    el("ul", { className: "kept stack" }, refused.map((one) => line(one, phone.account))),
    button("Send again", again, "main"),
    button("Save to a file", () => save(refused)),
  );
}

function line({ entry, why }, account) {
  const place = entry.row ? `, row ${entry.row}` : entry.block ? `, block ${entry.block.join(", ")}` : "";
  const what = `${NAMES[entry.kind] || entry.kind}${place}${entry.by ? `: ${entry.by}` : ""}`;
  const when = told(entry.at, account, { dateStyle: "medium", timeStyle: "short" });
  return el("li", { className: "card" }, el("b", {}, what), el("p", {}, why), el("small", { className: "quiet" }, when));
}

async function sendAgain(phone) {
  await phone.store.change(unpark);
  await phone.moved();
  await phone.send();
}

function save(refused) {
  const href = URL.createObjectURL(new Blob([JSON.stringify(refused, null, 2)], { type: "application/json" }));
  el("a", { href, download: "evenrow-refused.json" }).click();
  setTimeout(() => URL.revokeObjectURL(href), 60_000);
}
