/**
 * This page's memory of what is to be shown: for each project the snapshot and, on top of it by the fold, what
 * waits. It is what the store said last, and what stands only on the ledge yet.
 */
import { advance } from "./fold.js";

const waits = (record) => record.landed === undefined;
const undoneIn = (latest = {}) => Object.keys(latest).map((key) => key.match(/^undone \w+ (.*)/)?.[1]).filter(Boolean);

/** What one page shows for one account. */
export class Shown {
  held = new Map(); // on the ledge alone: id → record
  outbox = [];
  refused = [];
  facts = {};
  #snapshots = new Map();
  #offered = new Map(); // shown while nothing else is known of a project
  #views = new Map();

  /** Take over what the store says. */
  read({ outbox, refused, snapshots, facts }) {
    Object.assign(this, { outbox, refused, facts });
    this.#snapshots = new Map(snapshots.map((snapshot) => [snapshot.project, snapshot]));
    this.changed();
  }

  /** Show a snapshot that is not taken (yet), if there is nothing to go on from. */
  offer(snapshot) {
    this.#offered.set(snapshot.project, snapshot);
    this.changed();
  }

  /** Work the views out anew when they are asked for next. */
  changed() {
    this.#views.clear();
  }

  /** List the projects of which anything is known. */
  projects() {
    return [...new Set([...this.#snapshots.keys(), ...this.#offered.keys()])];
  }

  /** Give the snapshot that is gone on from, or null. */
  snapshot(project) {
    return this.#snapshots.get(project) || this.#offered.get(project) || null;
  }

  /** Count what the house has not confirmed. */
  waiting() {
    return this.held.size + this.outbox.filter(waits).length;
  }

  /** Give the view of a project, or null if nothing is known of it. */
  view(project) {
    const snapshot = this.snapshot(project);
    if (snapshot && !this.#views.has(project)) this.#views.set(project, advance(snapshot, this.#entries(project)));
    return this.#views.get(project) || null;
  }

  /** List the live entries that an undo may name, newest last. */
  last(project) {
    const snapshot = this.snapshot(project);
    const entries = [...(snapshot?.tail || []), ...this.#entries(project)];
    const undone = new Set(undoneIn(snapshot?.latest));
    for (const entry of entries) if (entry.kind === "undo") undone.add(entry.entry || entry.act);
    const live = entries.filter((e) => e.kind !== "undo" && !undone.has(e.id) && !undone.has(e.act));
    return live.sort((a, b) => (a.at === b.at ? a.id > b.id : a.at > b.at) - 0.5);
  }

  /** List what goes on top of the snapshot, by the house's clock. */
  #entries(project) {
    const stored = this.#snapshots.get(project);
    const revision = this.snapshot(project)?.revision;
    // Without a snapshot of our own, the one shown may hold what was tried: better a tap late than twice.
    const isOnTop = (r) => !r.again && (waits(r) ? stored || !r.tried : r.landed > revision);
    const records = [...this.outbox.filter(isOnTop), ...this.held.values()];
    return records.map((record) => record.entry).filter((e) => e.project === project).map((e) => this.#corrected(e));
  }

  #corrected(entry) {
    const { offset } = this.facts;
    return offset ? { ...entry, at: new Date(Date.parse(entry.at) + offset).toISOString() } : entry;
  }
}
