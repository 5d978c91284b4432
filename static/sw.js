/**
 * The worker: keeps what every page needs, so that Evenrow opens without network. The server writes above this
 * what this version is made of: const {version, digest, files, pages} = {…}.
 *
 * A page comes from the network, or after two seconds (or none) from the cache of the account whose phone it is;
 * Stitch of any project from its shell, which the page then fills from the phone's own database. Nothing that
 * changes anything is held back or repeated here.
 */
const SHELL = `evenrow-shell-${version}`;
const STATIC = `evenrow-static-${digest}`;
const OWNER = "evenrow-owner";
const LEAVING = "evenrow-sign-out";
const pagesOf = (account) => `evenrow-pages-${account}`;

const STITCH = /^\/projects\/[0-9a-f-]{36}\/stitch$/;
const DOORS = /^\/(sign-in|sign-out|accounts)\b/;
const PATIENCE = 2000;
const HELPS = /\/(stopped\.json|photographs\/[^/]+)$/; // lie among her pages, kept by stitching/helps.js
const MOST_PAGES = 60;

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(tidy()));
self.addEventListener("message", ({ data }) => data === "take-over" && self.skipWaiting());
self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== location.origin) return;
  if (request.mode === "navigate") {
    if (request.method === "GET") event.respondWith(page(event, url));
    else if (DOORS.test(url.pathname)) event.respondWith(door(request));
  } else if (url.pathname.startsWith("/static/")) event.respondWith(asset(request));
  else if (request.method === "GET" && request.headers.has("HX-Request")) event.respondWith(fragment(request));
});

async function install() {
  await (await caches.open(STATIC)).addAll(files);
  const shell = await caches.open(SHELL);
  await Promise.all(pages.map(async (path) => shell.put(path, await nobodys(path))));
}

/** Fetch a page as nobody sees it, of this very version. */
async function nobodys(path) {
  const response = await fetch(path, { credentials: "omit", cache: "no-store", redirect: "error" });
  const text = await response.clone().text();
  if (!response.ok || !text.includes(`/static/${digest}/`)) throw new Error(`${path} is of another version`);
  return response;
}

const owner = async () => (await caches.match("/owner", { cacheName: OWNER }))?.text();
const kept = (path, cacheName) => caches.match(path, { cacheName, ignoreVary: true, ignoreSearch: cacheName === SHELL });
const asset = async (request) => (await caches.match(request.url, { ignoreVary: true })) || fetch(request);

/** Fetch part of a page; without network there is none, and the page stays as it is. */
const fragment = (request) => fetch(request).catch(() => new Response(null, { status: 204 }));

async function page(event, url) {
  const mine = await owner();
  if ((await caches.has(LEAVING)) && !(await leave())) return (await stored(url)) || kept("/shell/offline", SHELL);
  const asked = fetch(event.request);
  event.waitUntil(asked.then((response) => keep(response.clone(), url.href, mine)).catch(() => {}));
  const spare = await stored(url, mine);
  try {
    const first = await (spare ? Promise.race([asked, new Promise((resolve) => setTimeout(resolve, PATIENCE))]) : asked);
    if (first && !(spare && first.status >= 500)) return first;
  } catch {
    // no network
  }
  return spare || kept("/shell/offline", SHELL);
}

/** Find what this page can be without network. */
async function stored({ pathname, href }, mine) {
  if (STITCH.test(pathname)) return mine && kept("/shell/stitch", SHELL);
  const own = mine && ((await kept(href, pagesOf(mine))) || (pathname === "/" && (await kept("/projects", pagesOf(mine)))));
  return own || (pages.includes(pathname) ? kept(pathname, SHELL) : undefined);
}

/** Keep a page for the account it was drawn for, unless that one signed out meanwhile. */
async function keep(response, href, before) {
  const account = response.headers.get("X-Evenrow-Account");
  const isPage = response.ok && response.headers.get("Content-Type")?.startsWith("text/html");
  if (!isPage || !account || account === "none" || STITCH.test(new URL(href).pathname)) return;
  if (![before, account].includes(await owner())) return;
  const cache = await caches.open(pagesOf(account));
  await cache.put(href, response);
  for (const request of (await pagesIn(cache)).slice(0, -MOST_PAGES)) await cache.delete(request);
}

const pagesIn = async (cache) => (await cache.keys()).filter(({ url }) => !HELPS.test(url));

/** Let her through a door; whose phone it is then, the next page says. */
async function door(request) {
  const response = await fetch(request).catch(() => kept("/shell/offline", SHELL));
  if (response.type !== "opaqueredirect") return response;
  if (request.url.endsWith("/sign-out")) await caches.delete(pagesOf(await owner()));
  await caches.delete(OWNER);
  return response;
}

/** Finish a sign-out that was asked for without network; tells whether it is done. */
async function leave() {
  const response = await fetch("/sign-out", { method: "POST" }).catch(() => null);
  if (response?.headers.get("X-Evenrow-Account") !== "none") return false;
  return caches.delete(LEAVING);
}

/** Throw away what no version, no page that is open and no page that is kept needs. */
async function tidy() {
  await self.clients.claim(); // a first page, too, then has all it may ask for
  const names = await caches.keys();
  for (const name of names) if (name.startsWith("evenrow-shell-") && name !== SHELL) await caches.delete(name);
  if ((await self.clients.matchAll({ includeUncontrolled: true })).length) return;
  const needed = new Set([STATIC]);
  for (const name of names.filter((one) => one.startsWith("evenrow-pages-"))) {
    for (const digest of await digestsIn(name)) needed.add(`evenrow-static-${digest}`);
  }
  for (const name of names) if (name.startsWith("evenrow-static-") && !needed.has(name)) await caches.delete(name);
}

async function digestsIn(name) {
  const cache = await caches.open(name);
  const texts = (await pagesIn(cache)).map(async (request) => (await (await cache.match(request)).text()).match(/\/static\/(\w+)\//)?.[1]);
  return Promise.all(texts);
}
