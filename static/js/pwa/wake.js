/** The worker's part in sending: when the network comes back and no page is open, it sends what waits. */
import { alone, deliver } from "../journal/sender.js";
import { openStore, openTabs } from "../journal/store.js";

self.addEventListener("sync", (event) => event.tag === "send" && event.waitUntil(wake()));

async function wake() {
  const account = await (await caches.match("/owner", { cacheName: "evenrow-owner" }))?.text();
  if (!account || (await caches.has("evenrow-sign-out"))) return;
  const store = await openStore(account);
  const tell = openTabs(account, () => {});
  const { state } = await alone(`evenrow:${account}`, () => deliver(account, store, () => tell("changed")));
  if (state === "waiting") throw new Error("The house cannot be reached yet."); // then the browser wakes us again
}
