/**
 * The ledge: where a tap stands, in localStorage, from the moment it is made until the store has it.
 * One key an entry, set at once. A browser that is killed may bring a removed key back: `keep` (books.js) drops what
 * is settled. A record is {id, entry, tried?, landed?, why?}; more than {id, entry} only where there is no database.
 */
import { painted } from "../painted.js";
import { keep, keepFresh } from "./books.js";

/** Open the ledge of one account. */
export function openLedge(account) {
  const prefix = `evenrow:${account}:entry:`;
  const drop = (ids) => ids.forEach((id) => localStorage.removeItem(prefix + id));

  function get(id) {
    try {
      return JSON.parse(localStorage.getItem(prefix + id));
    } catch {
      return null; // not ours to throw away, nor to understand
    }
  }

  /** Set records down, all or none; tells whether it was done. */
  function put(records) {
    const done = [];
    try {
      for (const record of records) {
        localStorage.setItem(prefix + record.id, JSON.stringify(record));
        done.push(record.id);
      }
      return true;
    } catch {
      if (done.length) drop(done);
      return false;
    }
  }

  /** List what stands here, in the order of ids. */
  function all() {
    try {
      const keys = Object.keys(localStorage).filter((key) => key.startsWith(prefix));
      return keys.sort().map((key) => get(key.slice(prefix.length))).filter(Boolean);
    } catch {
      return [];
    }
  }

  return { put, drop, all, get };
}

/**
 * Writes entries down: on the ledge at once, then in the store; from the one only when they are in the other.
 * What stands on the ledge alone is in `shown.held`; `stored` is called when the store has more, `overtaken` when
 * another page saw to some of it.
 */
export class Keeper {
  #moving = null;
  #fresh = new Set(); // ids made here just now, which nobody can have seen to yet

  constructor(ledge, store, shown, stored, overtaken) {
    Object.assign(this, { ledge, store, shown, stored, overtaken });
  }

  /** Take up what a page before this one left on the ledge. */
  recall() {
    this.#hold(this.ledge.all());
    return this.flush();
  }

  /** Write records down; gives nothing when the ledge has them, else a promise of the store's: it waits for the paint. */
  put(records) {
    for (const { id } of records) this.#fresh.add(id);
    if (!this.ledge.put(records)) return this.#store(records);
    this.#hold(records);
    painted().then(() => this.flush());
    return null;
  }

  /** Move what stands on the ledge into the store; what cannot be moved stays, and counts. */
  flush() {
    return (this.#moving ||= this.#move().catch(() => {}).finally(() => (this.#moving = null)));
  }

  #hold(records) {
    for (const record of records) this.shown.held.set(record.id, record);
  }

  async #move() {
    while (this.shown.held.size) {
      const records = [...this.shown.held.values()];
      await this.#store(records);
      if (!this.store.isSpare) this.ledge.drop(records.map((record) => record.id));
    }
  }

  async #store(records) {
    const isFresh = records.every(({ id }) => this.#fresh.delete(id));
    const kept = await this.store.change((t) => (isFresh ? keepFresh(t, records) : keep(t, records)));
    for (const { id } of records) this.shown.held.delete(id);
    this.shown.outbox.push(...kept);
    this.stored();
    if (kept.length < records.length) await this.overtaken();
  }
}
