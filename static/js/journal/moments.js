/**
 * What the phone does when it looks up: as the page opens, when the network comes back, when she comes back to the
 * page, and each minute of a sitting. It sends what waits; with nothing waiting, it asks how things stand.
 */
import { take } from "./books.js";
import { seeHouse } from "./house.js";
import { prune } from "./prune.js";
import { ask } from "./sender.js";

const MOST = 30;
const idOf = (path) => path.match(/^\/projects\/([0-9a-f-]{36})/)?.[1];

/** Look up. */
export async function look(phone) {
  await phone.send();
  const project = idOf(location.pathname);
  if (project && document.visibilityState === "visible") await refresh(phone, project);
}

/**
 * Look up for the first time on a page: fetch what it leads to and what may have moved on,
 * so that every project opens without network, visited or not.
 */
export async function lookAround(phone) {
  if (document.referrer) import("../stitching/helps.js").then(({ rememberAside }) => rememberAside(phone)).catch(() => {});
  await look(phone);
  const ids = new Set([...document.links].map((link) => idOf(link.pathname)).filter(Boolean));
  const wanted = [...ids].filter((id) => (phone.plan(id)?.state || "in hand") === "in hand");
  for (const id of wanted.slice(0, MOST)) await refresh(phone, id);
  await prune(phone);
}

/** Ask for the state of a project, unless something waits, which will bring it along. */
export async function refresh(phone, project) {
  if (phone.waiting()) return;
  const held = phone.snapshot(project);
  const query = held ? `?house=${held.house}&plan=${held.plan.revision}` : "";
  const headers = held ? { "If-None-Match": `"${held.revision}"` } : {};
  const read = async (response) => {
    if (response.status === 401) phone.say("sign-in");
    const isHers = response.headers.get("X-Evenrow-Account") === phone.account;
    return response.status === 200 && isHers ? response.json() : null;
  };
  const snapshot = await ask(`/projects/${project}/snapshot${query}`, { headers }, read).catch(() => null);
  if (!snapshot) return;
  await phone.store.change(async (t) => {
    await seeHouse(t, snapshot.house, Date.now());
    await take(t, snapshot);
  });
  await phone.moved();
  if (phone.waiting()) await phone.send(); // another house may lack what the old one had
}
