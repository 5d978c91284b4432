/** The settled are remembered, the last 5,000 and the last 14 days of them; what is older goes, now and then. */
import { FORTNIGHT } from "./house.js";

const REMEMBERED = 5000;
const DAY = 86_400_000;

/** Forget what need not be remembered, once a day at most. */
export function prune({ store }, now = Date.now()) {
  return store.change(async (t) => {
    const last = (await t.get("facts", "pruned"))?.value || 0;
    if (Math.abs(now - last) < DAY || (await t.count("settled")) <= REMEMBERED) return;
    await t.put("facts", { name: "pruned", value: now });
    const all = (await t.all("settled")).sort((a, b) => b.when - a.when);
    const old = all.slice(REMEMBERED).filter((record) => record.when <= now - FORTNIGHT);
    await Promise.all(old.map((record) => t.drop("settled", record.id)));
  });
}
