/**
 * "Leave it tonight" and "In half an hour": until when this phone says nothing, and that the house hears of it, now
 * or later. What is to be drawn by is in localStorage, for it is asked for on every page before anything is open.
 */
import { keep, send, tell } from "./answers.js";
import { noonAfter } from "./bedtime.js";
import { hoursOf } from "./hers.js";

const HALF_AN_HOUR = 1_800_000;
const keyOf = (account) => `evenrow:left:${account}`;

/** Give her last answer for the night it is: {answer, at, until, noon, kept, told}; null if there is none. */
function read(account) {
  try {
    const own = JSON.parse(localStorage.getItem(keyOf(account)));
    return own?.noon > Date.now() ? own : null;
  } catch {
    return null;
  }
}

function write(account, record) {
  try {
    localStorage.setItem(keyOf(account), JSON.stringify(record));
    return true;
  } catch {
    return false; // then the house alone remembers
  }
}

/** Tell until when (ms) nothing is to be said; 0 if it may be. What the house has heard, its pages know. */
export function leftUntil(account) {
  const page = document.querySelector("[data-bedtime]");
  const own = read(account);
  if (own && !(own.told && page)) return own.until;
  return Math.max(Number(page?.dataset.left) || 0, own?.answer === "later" ? own.until : 0);
}

/** Keep her answer, "leave" or "later"; tells whether the house knows. Throws if nobody does. */
export async function answer(phone, word) {
  const now = phone.now();
  const noon = noonAfter(now, hoursOf(phone.account)[1]);
  const given = { answer: word, at: new Date(now).toISOString() };
  const record = { ...given, until: word === "leave" ? noon : now + HALF_AN_HOUR, noon };
  const isRemembered = write(phone.account, record);
  const kept = await keep(phone.store, given).then(() => true, () => false);
  write(phone.account, { ...record, kept: kept && !phone.store.isSpare }); // a spare store forgets with the page
  const told = await (kept ? tellHouse(phone) : send({ ...given, account: phone.account })).catch(() => false);
  if (!told && !kept && !isRemembered) throw new Error("This phone could not keep that, and the house did not hear it. Try again.");
  return told;
}

/** Tell the house what it could not be told before; tells whether it knows all. */
export async function tellHouse({ account, store }) {
  const own = read(account);
  if (own && !own.told && !own.kept) await keep(store, { answer: own.answer, at: own.at });
  const told = await tell(account, store);
  const still = read(account);
  if (told && still && still.at === own?.at) write(account, { ...still, told });
  return told;
}
