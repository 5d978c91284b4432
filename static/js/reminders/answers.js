/**
 * Her answer for the night that the house has not heard yet: kept as a fact beside the journal's, where the worker
 * finds it too, and told when what waits is sent. One is enough: a later answer takes the place of an earlier one.
 */
import { ask } from "../journal/sender.js";

const NAME = "night";
const UNREADABLE = 422;

/** Keep an answer, {answer, at}: "leave" or "later", and when she gave it. */
export const keep = (store, value) => store.change((t) => t.put("facts", { name: NAME, value }));

/** Tell the house what is kept; gives whether nothing is left to tell. */
export async function tell(account, store) {
  const kept = (await store.read((t) => t.get("facts", NAME)))?.value;
  if (!kept) return true;
  if (!(await send({ ...kept, account }).catch(() => false))) return false;
  await store.change(async (t) => (await t.get("facts", NAME))?.value.at === kept.at && t.drop("facts", NAME));
  return true;
}

/** Send one; tells whether the house has it, or never will. A café's sign-in page is no answer. */
export function send(body) {
  const options = { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) };
  const read = async (response) => response.status === UNREADABLE || (response.ok && (await response.json()).answered === true);
  return ask("/reminders/tonight.json", options, read);
}
