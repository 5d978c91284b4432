/** The entry: the one policy for what may become script, the phone of whoever is signed in, and the islands. */
import { isLeaving, own, owner } from "./journal/owner.js";
import { isTouched } from "./stitching/field.js";

window.trustedTypes?.createPolicy("default", {
  createHTML: (text) => text, // what htmx swaps in comes from the house; scripts in it are stopped by the page's policy
  createScriptURL: (address) => (/^\/sw\.js(\?module)?$/.test(address) ? address : null),
});

const MINUTE = 60_000;
const ISLANDS = {
  stitch: () => import("./stitching/island.js"),
  gauge: () => import("./cloth/island.js"),
  frame: () => import("./reminders/island.js"),
  forms: () => import("./accounts/forms.js"),
  offline: () => import("./pwa/offline.js"),
};
const { account } = document.body.dataset;
const isShell = !account && document.querySelector('[data-island="stitch"], [data-island="offline"]');
const project = location.pathname.split("/")[2];
const embedded = document.querySelector("script[data-snapshot]");

addEventListener("beforeinstallprompt", async (event) => {
  event.preventDefault();
  (await import("./pwa/install.js")).offerInstall(event);
});

async function openHers(hers) {
  const { openPhone } = await import("./journal/phone.js");
  const phone = await openPhone({ account: hers });
  if (embedded) await phone.take({ project, ...JSON.parse(embedded.textContent) });
  return phone;
}

/** Have the phone look up at the right moments; what it then needs is fetched when it does. */
function tend(phone) {
  const look = async () => (await import("./journal/moments.js")).look(phone);
  const status = async () => (await import("./journal/status.js")).showStatus(phone);
  addEventListener("online", look);
  addEventListener("pageshow", ({ persisted }) => persisted && phone.reread().then(look));
  document.addEventListener("visibilitychange", look);
  setInterval(() => !document.hidden && phone.view(project)?.sitting && look(), MINUTE);
  document.addEventListener("submit", (event) => {
    if (![event.target, event.submitter].some((one) => one?.dataset.act === "sign-out")) return;
    event.preventDefault();
    phone.signOut();
  });
  if (phone.waiting() || phone.refused().length) status();
  else phone.addEventListener("status", status, { once: true });
  const isGiven = embedded && phone.snapshot(project)?.house === document.body.dataset.house;
  if (!isGiven) import("./journal/moments.js").then(({ lookAround }) => lookAround(phone));
  else if (phone.waiting()) look();
}

// A tap on what is drawn already is counted as soon as it can be.
const early = [];
document.addEventListener("click", ({ target }) => {
  const field = target.closest('[data-island]:not([data-live]) [data-act="tap"]');
  if (field) early.push(field);
});

// A module that could not be had stays so as long as the page lasts; so the page opens itself again as soon as it can,
// for what was tapped is kept. Not under her finger, over a question, or where she may have filled something in.
const BUSY = ":active, [open], body:not(.counter) label";
let healing = 0;

async function heal() {
  const can = navigator.serviceWorker?.controller || fetch("/health").then((answer) => answer.json()).catch(() => null);
  if ((await can) && !isTouched() && !document.querySelector(BUSY)) location.reload();
}

addEventListener("unhandledrejection", (event) => {
  if (!/import/i.test(event.reason?.message)) return;
  event.preventDefault();
  addEventListener("online", heal);
  navigator.serviceWorker?.addEventListener("controllerchange", heal);
  healing ||= setInterval(heal, 15_000);
});

// Without network: a link whose part of the page cannot be had leads to its whole page; a form says that it failed.
document.addEventListener("htmx:after:request", ({ target, detail }) => {
  if (detail.ctx.response.status === 204 && target.href) location.assign(target.href);
});
document.addEventListener("htmx:error", async ({ target }) => {
  if (!target.matches("form[method=post]")) return;
  (await import("./pwa/notice.js")).notice("failed", "No network: nothing was changed. Try again when it is back.");
});

function bringToLife(element, begin) {
  begin();
  element.dataset.live = "";
  for (const field of early) if (element.contains(field)) field.click();
}

async function start() {
  if ((isShell || !navigator.serviceWorker?.controller) && (await isLeaving())) {
    return (await import("./pwa/signout.js")).finish();
  }
  const hers = account || (isShell && (await owner()));
  const [phone] = await Promise.all([hers ? openHers(hers).catch(() => null) : null, account && own(account)]);
  for (const element of document.querySelectorAll("[data-island]")) {
    ISLANDS[element.dataset.island]?.().then((island) => bringToLife(element, () => island.start(element, phone)));
  }
  if (phone) tend(phone);
  afterLoad(phone);
}

function afterLoad(phone) {
  const later = async () => {
    if (!window.isSecureContext) (await import("./pwa/plain.js")).sayPlain(phone);
    else if (navigator.serviceWorker) (await import("./pwa/register.js")).register(phone);
  };
  if (document.readyState === "complete") later();
  else addEventListener("load", later, { once: true });
}

start();
