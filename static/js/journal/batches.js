/** Batches on their way to the house and back, each step the work of one transaction. */
import { everything, take, waits } from "./books.js";
import { seeHouse } from "./house.js";

/** Take the oldest that wait for a request, at most `most`, and mark them tried. */
export async function nextBatch(t, most, ahead) {
  const { outbox, snapshots, facts } = await everything(t);
  if (ahead !== undefined && ahead !== (facts.ahead || 0)) await t.put("facts", { name: "ahead", value: ahead });
  const records = outbox.filter(waits).slice(0, most);
  await Promise.all(records.filter((r) => !r.tried).map((r) => t.put("outbox", { ...r, tried: true })));
  const projects = new Set(records.map((r) => r.entry.project));
  const stored = snapshots.filter((s) => projects.has(s.project) && s.revision > 0);
  return {
    entries: records.map((r) => r.entry),
    known: Object.fromEntries(stored.map((s) => [s.project, s.revision])),
    ahead: ahead ?? facts.ahead ?? 0,
  };
}

/** Write down what the house answered to a batch. */
export async function settle(t, answer, now) {
  await seeHouse(t, answer.house, now);
  await t.put("facts", { name: "offset", value: answer.offset });
  const outbox = new Map((await t.all("outbox")).map((record) => [record.id, record]));
  for (const id of answer.accepted) {
    const record = outbox.get(id);
    const landed = answer.projects[record?.entry.project]?.revision;
    if (landed === undefined) continue;
    await t.put("outbox", { ...record, landed });
    await t.put("settled", { id, entry: record.entry, when: now });
  }
  for (const { id, why } of answer.refused) if (outbox.has(id)) await park(t, outbox.get(id), why);
  for (const snapshot of Object.values(answer.projects)) await take(t, snapshot);
}

/** Set one record aside, with the reason. */
export async function park(t, { id, entry }, why) {
  await t.drop("outbox", id);
  await t.put("refused", { id, entry, why });
}

/** Let everything that was set aside wait again. */
export async function unpark(t) {
  for (const { id, entry } of await t.all("refused")) {
    await t.drop("refused", id);
    await t.put("outbox", { id, entry, tried: true });
  }
}
