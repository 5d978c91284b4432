/**
 * The worker's part in sending: when the network comes back and no page is open, it sends what waits, and tells her
 * answer for the night.
 */
import { alone, deliver } from "../journal/sender.js";
import { openStore, openTabs } from "../journal/store.js";
import { tell as tellAnswer } from "../reminders/answers.js";

self.addEventListener("sync", (event) => event.tag === "send" && event.waitUntil(wake()));

async function wake() {
  const account = await (await caches.match("/owner", { cacheName: "evenrow-owner" }))?.text();
  if (!account || (await caches.has("evenrow-sign-out"))) return;
  const store = await openStore(account);
  const tell = openTabs(account, () => {});
  const { state } = await alone(`evenrow:${account}`, () => deliver(account, store, () => tell("changed")));
  const isAnswered = await tellAnswer(account, store);
  if (state !== "waiting" && isAnswered) return;
  throw new Error("The house cannot be reached yet."); // then the browser wakes us again
}
