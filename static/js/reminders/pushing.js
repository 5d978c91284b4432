/** The push side of this phone: whether it can be reminded, asking the browser for an address, and giving it up. */

const PATIENCE = 10_000; // some browsers never answer

const within = (promise) =>
  Promise.race([promise, new Promise((_, fail) => setTimeout(() => fail(new Error("The browser does not answer.")), PATIENCE))]);

const isInstalled = () => matchMedia("(display-mode: standalone)").matches || navigator.standalone === true;
const isPad = () => /Macintosh/.test(navigator.userAgent) && navigator.maxTouchPoints > 1; // it calls itself one
const isApple = () => /iPhone|iPad/.test(navigator.userAgent) || isPad();

/** Write bytes as base64url without padding. */
export const text = (buffer) =>
  btoa(String.fromCharCode(...new Uint8Array(buffer))).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");

/** Say why this phone cannot be reminded, or nothing if it can. */
export function hindrance(key) {
  if (!isSecureContext) return "Reminders need https. Whoever runs this house can turn it on.";
  if (isApple() && !isInstalled()) return "Put Evenrow on the home screen first, and open it from there: an iPhone or iPad reminds only then.";
  if (!navigator.serviceWorker || !self.PushManager || !self.Notification) return "This browser cannot be reminded. A calendar can.";
  if (Notification.permission === "denied") return "Notifications are blocked for Evenrow. Allow them in the browser's settings, then come back.";
  return key ? "" : "This house has no key for reminders yet. Whoever runs it starts it once.";
}

const registered = () => within(navigator.serviceWorker.ready);

/** Give the address the browser has for us, or null. */
export async function address() {
  const registration = await navigator.serviceWorker?.getRegistration();
  return (await registration?.pushManager?.getSubscription()) || null;
}

/** Tell whether an address was made for this key of the house. */
export const isFor = (subscription, key) => text(subscription.options.applicationServerKey || new ArrayBuffer(0)) === key;

/** Ask the browser for an address, for this key; one for another key is given up first. */
export async function subscribe(key) {
  const old = await address();
  if (old && isFor(old, key)) return old;
  await old?.unsubscribe();
  const { pushManager } = await registered();
  return within(pushManager.subscribe({ userVisibleOnly: true, applicationServerKey: key }));
}

/** Tell the house an address; throws a sentence where it does not take it. `again`: if it was hers when she signed out. */
export async function tell(subscription, key, again = false) {
  const { endpoint, keys } = subscription.toJSON();
  return ask("/reminders/phones.json", { endpoint, keys, key, again });
}

/** Ask the house something; throws a sentence where it says no. */
export async function ask(path, body) {
  const headers = { "Content-Type": "application/json" };
  const options = body ? { method: "POST", headers, body: JSON.stringify(body) } : {};
  const response = await fetch(path, { redirect: "manual", cache: "no-store", ...options }).catch(() => null);
  const said = await response?.json().catch(() => null);
  if (!response) throw new Error("No network: nothing was changed. Try again when it is back.");
  if (!response.ok) throw new Error(said?.error || "The house does not answer as it should. Try again in a while.");
  return said;
}
