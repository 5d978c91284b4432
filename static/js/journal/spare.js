/**
 * The store where the browser has no database: what waits and what was refused stays on the ledge, durably; the
 * rest is in memory, and comes again with the next page. The same tools as store.js, without its transactions:
 * works are done one after another.
 */
const KEYS = { settled: "id", snapshots: "project", facts: "name" };

/** Make a store of a ledge. */
export function spareStore(ledge) {
  const memory = Object.fromEntries(Object.keys(KEYS).map((name) => [name, new Map()]));
  const isOf = (name) => (record) => ("why" in record) === (name === "refused");
  const t = {
    all: async (name) => (memory[name] ? [...memory[name].values()] : ledge.all().filter(isOf(name))),
    get: async (name, key) => (memory[name] ? memory[name].get(key) : [ledge.get(key)].filter(Boolean).find(isOf(name))),
    count: async (name) => (await t.all(name)).length,
    async put(name, value) {
      if (memory[name]) memory[name].set(value[KEYS[name]], value);
      else if (!ledge.put([value])) throw new Error("the ledge is full");
    },
    async drop(name, key) {
      if (memory[name]) memory[name].delete(key);
      else ledge.drop([key]);
    },
  };
  let turn = Promise.resolve();
  const change = (work) => {
    const done = turn.then(() => work(t));
    turn = done.catch(() => {});
    return done;
  };
  return { isSpare: true, change, read: change };
}
