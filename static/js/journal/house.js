/** Which house this is: after a restore it is another one, which may lack what we sent to the old. */
import { waits } from "./books.js";

/** How long settled entries are kept for a house that lost them, in milliseconds. */
export const FORTNIGHT = 14 * 86_400_000;

/**
 * See to it, within a transaction, that the house is the one we knew. If not, no snapshot of the old one counts
 * against a new one (it is shown until that comes), and what was settled lately is sent again; ids make it harmless.
 */
export async function seeHouse(t, house, now) {
  const known = (await t.get("facts", "house"))?.value;
  if (known !== house) await t.put("facts", { name: "house", value: house });
  if (!known || known === house) return;
  for (const snapshot of await t.all("snapshots")) await t.put("snapshots", { ...snapshot, revision: -1 });
  const landed = (await t.all("outbox")).filter((record) => !waits(record));
  for (const record of await t.all("settled")) if (record.when > now - FORTNIGHT) await sendAgain(t, record, true);
  for (const record of landed) await sendAgain(t, record, record.again);
}

async function sendAgain(t, { id, entry }, again) {
  await t.drop("settled", id);
  await t.put("outbox", { id, entry, tried: true, again });
}
