/**
 * What is changed together, each as the work of one transaction (see store.js).
 *
 * A record of the outbox waits until the house says that it has the entry; then it has `landed`, at the revision
 * its project had by then, and stays here until a snapshot of that revision or a later one is taken: so a number
 * never drops between the two. `tried` is marked before a request leaves: from then on the house may have it,
 * whatever became of the answer. `again`: sent once more to a changed house; the old snapshot already counts it.
 */
import { merge } from "./fold.js";

/** Tell whether the house has not confirmed a record of the outbox. */
export const waits = (record) => record.landed === undefined;

/** Read everything but the settled. */
export async function everything(t) {
  const [outbox, refused, snapshots, facts] = await Promise.all(["outbox", "refused", "snapshots", "facts"].map(t.all));
  return { outbox, refused, snapshots, facts: Object.fromEntries(facts.map(({ name, value }) => [name, value])) };
}

/** Write records down, but none that is settled, refused or here already; gives those that are in the outbox then. */
export async function keep(t, records) {
  const keepOne = async (record) => {
    const { id } = record;
    if ((await t.get("settled", id)) || (await t.get("refused", id))) return null;
    const found = await t.get("outbox", id);
    if (!found) await t.put(record.why ? "refused" : "outbox", record);
    return found || record;
  };
  return (await Promise.all(records.map(keepOne))).filter((record) => record && !record.why);
}

/** Write down records made just now: no questions, so that as little time as can be lies between tap and disk. */
export async function keepFresh(t, records) {
  await Promise.all(records.map((record) => t.put("outbox", record)));
  return records;
}

/** Take a snapshot that came with a page, if it is of the house we know. */
export async function offer(t, snapshot) {
  const known = await t.get("facts", "house");
  if (!known) await t.put("facts", { name: "house", value: snapshot.house });
  if (!known || known.value === snapshot.house) await take(t, snapshot);
}

/**
 * Take a snapshot: not an older one than we have, and not while something tried would still wait after it, of which
 * nobody knows whether it is in there. What it shows to have landed leaves the outbox.
 */
export async function take(t, offered) {
  const stored = await t.get("snapshots", offered.project);
  const records = (await t.all("outbox")).filter((r) => r.entry.project === offered.project);
  const fits = !offered.since || stored?.revision >= offered.since;
  const sure = records.every((r) => !r.tried || r.landed <= offered.revision);
  const taken = fits && sure && !isOlder(offered, stored);
  const held = taken ? (offered.since ? merge(stored, offered) : offered) : stored;
  if (taken) await t.put("snapshots", held);
  await Promise.all(records.filter((r) => r.landed <= held?.revision).map((r) => t.drop("outbox", r.id)));
}

const isOlder = (a, b) =>
  b && (a.revision < b.revision || (a.revision === b.revision && a.plan.revision < b.plan.revision));
