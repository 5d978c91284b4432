/**
 * Once a day, where there is work on a frame, and after signing in: an address the browser or the house has changed is
 * told anew, and one that was hers when she signed out. It is another's where another signs in: then the house has none.
 */
import { address, ask, isFor, subscribe, tell } from "./pushing.js";

const KEY = "evenrow:renewed";
const DAY = 86_400_000;

/** Renew what this phone is reminded by, if it was not done today. */
export async function renew(account) {
  const [who, when] = (localStorage.getItem(KEY) || "").split(" ");
  if (who === account && Date.now() - Number(when) < DAY) return;
  if (await renewNow()) localStorage.setItem(KEY, `${account} ${Date.now()}`);
}

/** Renew it now, if it is reminded; what she turned off stays off. Tells whether it was looked at. */
export async function renewNow() {
  if (self.Notification?.permission !== "granted") return false;
  const own = await address();
  const { on, key, endpoint, told } = await ask("/reminders/phones.json");
  const isCurrent = own && key && isFor(own, key);
  if (!on) {
    if (isCurrent) await tell(own, key, true);
  } else if (key && !(isCurrent && own.endpoint === endpoint && told === key)) await tell(await subscribe(key), key);
  return true;
}
