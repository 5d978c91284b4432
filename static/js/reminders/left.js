/** "Leave it tonight": until when this phone says nothing, and that the house hears of it, now or later. */
import { ask } from "./pushing.js";

const keyOf = (account) => `evenrow:left:${account}`;

function read(account) {
  try {
    return JSON.parse(localStorage.getItem(keyOf(account)));
  } catch {
    return null;
  }
}

function write(account, record) {
  try {
    if (record) localStorage.setItem(keyOf(account), JSON.stringify(record));
    else localStorage.removeItem(keyOf(account));
  } catch {
    // then the house alone remembers
  }
}

/** Tell until when (ms) nothing is to be said; 0 if it may be. A page drawn for her says what the house thinks. */
export function leftUntil(account) {
  const page = document.querySelector("[data-bedtime]");
  const own = read(account);
  if (page?.dataset.left) return Number(page.dataset.left);
  if (page && own?.told) write(account, null);
  return page && own?.told ? 0 : own?.until || 0;
}

/** Say no more of tonight; tells whether the house knows. */
export async function leave(account, until) {
  write(account, { until, told: false });
  return tellHouse(account);
}

/** Tell the house what it could not be told before. */
export async function tellHouse(account) {
  const own = read(account);
  if (!own || own.told || own.until < Date.now()) return Boolean(own?.told);
  const told = await answer("leave").then(() => true, () => false);
  if (told) write(account, { ...own, told });
  return told;
}

/** Answer for tonight: "leave" or "later". */
export const answer = (word) => ask("/reminders/tonight.json", { answer: word });
