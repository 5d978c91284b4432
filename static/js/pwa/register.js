/** The worker: registered once the page is there; a newer one is offered, never forced. */
const ADDRESS = self.SyncManager ? ["/sw.js?module", { type: "module" }] : ["/sw.js", {}];

/** Register the worker, and see to what comes of it. */
export async function register(phone) {
  const registration = await navigator.serviceWorker.register(...ADDRESS);
  if (!registration) return; // a browser may be told not to lend it
  const look = () => registration.active && registration.waiting && offer(registration.waiting);
  registration.addEventListener("updatefound", () => registration.installing?.addEventListener("statechange", look));
  look();
  phone?.addEventListener("status", ({ detail }) => {
    if (detail.state === "waiting") registration.sync?.register("send").catch(() => {}); // she may not allow it
  });
  if (matchMedia("(display-mode: standalone)").matches) await navigator.storage?.persist?.();
}

async function offer(worker) {
  const { notice } = await import("./notice.js");
  notice("newer", "A newer Evenrow is here.", "Use it", () => {
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
    worker.postMessage("take-over");
  });
}
