/**
 * What waits, sent batch by batch. The house adds an entry once however often it comes, so whatever is not plainly
 * an answer of its own (an error, a redirect, a café's sign-in page, silence) means: keep, and try again later.
 */
import { nextBatch, park, settle } from "./batches.js";

const MOST = 500;
const PATIENCE = 20_000;
const LOCK_PATIENCE = 5000;

/** Fetch from the house without following anyone elsewhere; gives up after 20 s, the body included. */
export async function ask(path, options, read) {
  const patience = new AbortController();
  const timer = setTimeout(() => patience.abort(), PATIENCE);
  try {
    return await read(await fetch(path, { redirect: "manual", cache: "no-store", signal: patience.signal, ...options }));
  } finally {
    clearTimeout(timer);
  }
}

/**
 * Send until nothing waits or the house cannot be reached. `moved` is called when something was settled or parked;
 * `clock` is the own clock of a page, {ahead, now()}; the worker, which has none, goes by what the page left.
 * Gives {state: "idle" | "waiting" | "sign-in" | "other-account", after?: milliseconds}.
 */
export async function deliver(account, store, moved, clock) {
  for (let size = MOST; ; ) {
    const batch = await store.change((t) => nextBatch(t, size, clock?.ahead));
    const count = batch.entries.length;
    if (!count) return { state: "idle" };
    const sent_at = new Date(clock ? clock.now() : Date.now() + batch.ahead).toISOString();
    const answer = await post({ sent_at, account, known: batch.known, entries: batch.entries }).catch(() => ({ state: "waiting" }));
    if (answer.state === "too-much" && count > 1) {
      size = Math.ceil(count / 2);
      continue;
    }
    if (answer.state !== "settled" && answer.state !== "too-much") return answer;
    const [entry] = batch.entries;
    await store.change((t) =>
      answer.body ? settle(t, answer.body, Date.now()) : park(t, { id: entry.id, entry }, answer.why),
    );
    moved();
    size = Math.min(size * 2, MOST);
  }
}

function post(batch) {
  const headers = { "Content-Type": "application/json" };
  const options = { method: "POST", headers, body: JSON.stringify(batch) };
  return ask("/journal", options, (response) => understand(response, batch.entries));
}

async function understand(response, entries) {
  const said = await response.json().catch(() => null);
  switch (response.status) {
    case 200:
      return isOurs(said, entries) ? { state: "settled", body: said } : { state: "waiting" };
    case 401:
      return { state: "sign-in" };
    case 409:
      return { state: "other-account" };
    case 413:
    case 422:
      return { state: "too-much", why: said?.error || "The house could not take this." };
    default:
      return { state: "waiting", after: secondsIn(response.headers.get("Retry-After")) * 1000 };
  }
}

/** Tell whether an answer is the journal's own and decides at least one of `entries`; else asking on would never end. */
function isOurs(said, entries) {
  if (!said?.house || !Array.isArray(said.accepted) || !Array.isArray(said.refused) || !said.projects) return false;
  const projects = new Map(entries.map((entry) => [entry.id, entry.project]));
  return (
    said.accepted.some((id) => said.projects[projects.get(id)]?.revision >= 0) || said.refused.some(({ id }) => projects.has(id))
  );
}

function secondsIn(text) {
  if (!text) return 0;
  const until = (Date.parse(text) - Date.now()) / 1000;
  return Math.max(0, Number(text) || until || 0);
}

/** Do `work` while no other page does; a page that sleeps on its turn is not waited for long. */
export async function alone(name, work) {
  if (!self.navigator.locks) return work();
  const patience = new AbortController();
  const timer = setTimeout(() => patience.abort(), LOCK_PATIENCE);
  let begun = false;
  try {
    return await navigator.locks.request(name, { signal: patience.signal }, () => {
      begun = true;
      clearTimeout(timer);
      return work();
    });
  } catch (error) {
    if (begun || !patience.signal.aborted) throw error;
    return work();
  }
}
