/** Once a day, where there is work on a frame: an address the browser or the house has changed is told anew. */
import { address, ask, isFor, subscribe, tell } from "./pushing.js";

const KEY = "evenrow:renewed";
const DAY = 86_400_000;

/** Renew what this phone is reminded by, if it is; what she turned off stays off. */
export async function renew() {
  const last = Number(localStorage.getItem(KEY));
  if (Date.now() - last < DAY || Notification.permission !== "granted") return;
  const own = await address();
  const { on, key, endpoint } = await ask("/reminders/phones.json");
  localStorage.setItem(KEY, Date.now());
  if (on && key && !(own?.endpoint === endpoint && isFor(own, key))) await tell(await subscribe(key), key);
}
