/**
 * The fold: every number on every screen, out of the entries alone, whatever order they came in.
 * The same as webapp/journal/fold.py, where what a snapshot carries is said; shared/vectors/fold.json binds the two.
 */
import { hand, isAfter, register, tally, undoes } from "./keys.js";
import { view } from "./view.js";

const NOTHING = { revision: 0, sums: {}, threads: {}, latest: {}, tail: [], hand: { row: null, block: null }, frames: [], sittings: {}, partial: [] };

const keyed = (entry, value) => [entry.at, entry.id, value];
const drop = (map, key, value) => (value == null ? delete map[key] : (map[key] = value));

/** Work out the view of a project from all its entries. */
export const fold = (plan, entries) => advance({ ...NOTHING, plan }, entries);

/** Go on from a snapshot: the view after `entries`, none of which the snapshot holds. */
export function advance(snapshot, entries) {
  const known = new Set(snapshot.tail.map((e) => e.id));
  const fresh = new Map();
  for (const e of entries) if (!known.has(e.id) && !fresh.has(e.id)) fresh.set(e.id, e);
  const undone = undoneBy(snapshot, fresh.values());
  const isUndone = (e) => undone.has(`undone entry ${e.id}`) || undone.has(`undone act ${e.act}`);
  const dead = snapshot.tail.filter(isUndone);
  const kept = snapshot.tail.filter((e) => !isUndone(e));
  const live = [...fresh.values()].filter((e) => e.kind !== "undo" && !isUndone(e));

  const sums = { ...snapshot.sums };
  const threads = { ...snapshot.threads };
  for (const [some, sign] of [[dead, -1], [live, 1]]) for (const e of some) countIn(sums, e, sign), windIn(threads, e, sign);
  const latest = { ...snapshot.latest };
  fallBack(latest, dead, snapshot.tail, kept);
  raise(latest, live);
  const since = [...kept, ...live];
  return view(snapshot.plan, snapshot.revision + fresh.size, sums, latest, {
    threads,
    hands: latestHands(snapshot.hand, since),
    frames: [...snapshot.frames, ...since.filter((e) => e.kind === "frame").map((e) => keyed(e, e.state))],
    sittings: sittingStates(snapshot.sittings, dead, live),
  });
}

/** Bring a stored snapshot up to one that holds only what changed since; gives the whole. */
export function merge(stored, delta) {
  const whole = { ...delta, since: 0 };
  for (const part of ["rows", "blocks", "sums", "latest"]) {
    whole[part] = { ...stored[part] };
    for (const [key, value] of Object.entries(delta[part])) drop(whole[part], key, value);
  }
  return whole;
}

function undoneBy(snapshot, entries) {
  const named = new Set([...entries].map(undoes).filter(Boolean));
  for (const act of snapshot.partial) named.delete(`undone act ${act}`);
  for (const key of Object.keys(snapshot.latest)) if (key.startsWith("undone ")) named.add(key);
  return named;
}

function countIn(sums, entry, sign) {
  const key = tally(entry);
  if (key === null) return;
  const [stitches, bare, touches] = sums[key] || [0, 0, 0];
  const by = entry.kind === "stitches" || entry.kind === "bare" ? sign * entry.by : 0;
  const total = entry.kind === "bare" ? [stitches, bare + by, touches + sign] : [stitches + by, bare, touches + sign];
  drop(sums, key, total[2] === 0 ? null : total);
}

// Unpicked thread stays spent; what was there before, or miscounted, spent none here.
function windIn(threads, { kind, thread, pass, by, why }, sign) {
  if (kind !== "stitches" || !thread) return;
  const passes = { ...threads[thread] };
  const [laid, spent, touches] = passes[(pass ||= "cross")] || [0, 0, 0];
  drop(passes, pass, touches + sign ? [laid + sign * by, spent + (why && why !== "stitched" ? 0 : sign * by), touches + sign] : null);
  drop(threads, thread, Object.keys(passes).length ? passes : null);
}

function fallBack(latest, dead, tail, kept) {
  const of = (entry) => (register(entry) || [null])[0];
  for (const key of new Set(dead.map(of).filter(Boolean))) {
    drop(latest, key, tail.find((e) => of(e) === key).replaced);
    raise(latest, kept.filter((e) => of(e) === key));
  }
}

function raise(latest, entries) {
  for (const entry of entries) {
    const [key, value] = register(entry) || [];
    if (key && (!latest[key] || isAfter([entry.at, entry.id], latest[key]))) latest[key] = keyed(entry, value);
  }
}

function latestHands(before, entries) {
  const hands = { ...before };
  for (const entry of entries) {
    const which = hand(entry);
    if (which && (!hands[which] || isAfter([entry.at, entry.id], hands[which]))) hands[which] = keyed(entry, entry[which]);
  }
  return hands;
}

function sittingStates(before, dead, live) {
  const sittings = { ...before };
  const count = (entry, sign) => {
    if (entry.kind === "begin") sittings[entry.id] = [sign > 0 ? entry.at : null, (sittings[entry.id] || [null, 0])[1]];
    if (entry.kind !== "end" && entry.kind !== "amend") return;
    const [begin, closers] = sittings[entry.sitting] || [null, 0];
    sittings[entry.sitting] = [begin, closers + sign];
  };
  for (const entry of dead) count(entry, -1);
  for (const entry of live) count(entry, 1);
  return sittings;
}
