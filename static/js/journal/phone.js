/**
 * The phone's side of the journal, for one account: what is tapped is written down first, then shown, then sent.
 *
 * Events: "change" {project, own} when what is to be shown of a project changed, `own` for this page's own taps;
 * "status" {waiting, refused, state}: state is idle, sending, waiting, sign-in, other-account, not-kept or outdated.
 */
import { everything, offer } from "./books.js";
import { Keeper, openLedge } from "./ledge.js";
import { Shown } from "./shown.js";
import { ownNow, stamp } from "./stamps.js";
import { openStore, openTabs } from "./store.js";

const opened = new Map();

/** Neither store took an entry; so it must not be shown. */
export class NotKept extends Error {}

/** Open the phone of an account, once a page. */
export function openPhone({ account }) {
  if (!opened.has(account)) opened.set(account, start(account));
  return opened.get(account);
}

async function start(account) {
  const ledge = openLedge(account);
  let phone = null;
  const store = await openStore(account, () => phone?.say("outdated")).catch(async () => {
    return (await import("./spare.js")).spareStore(ledge);
  });
  phone = new Phone(account, ledge, store);
  await phone.keeper.recall();
  await phone.reread();
  return phone;
}

/** One account on this phone. */
class Phone extends EventTarget {
  state = "idle";
  #shown = new Shown();
  #sending = null;

  constructor(account, ledge, store) {
    super();
    Object.assign(this, { account, store });
    this.keeper = new Keeper(ledge, store, this.#shown, () => this.tell("changed"), () => this.reread());
    this.tell = openTabs(account, (word) => (word === "signed-out" ? location.replace("/") : this.reread()));
  }

  projects = () => this.#shown.projects();
  snapshot = (project) => this.#shown.snapshot(project);
  plan = (project) => this.snapshot(project)?.plan || null;
  view = (project) => this.#shown.view(project);
  last = (project) => this.#shown.last(project);
  waiting = () => this.#shown.waiting();
  refused = () => this.#shown.refused;
  isHeldUp = () => this.#shown.held.size > 0;

  /** Tell the time as the house has it, in milliseconds. */
  now = () => ownNow() + (this.#shown.facts.offset || 0);

  /** Write entries down; resolves with them as soon as one store has them, at once if the ledge does. */
  lay(project, drafts) {
    const entries = drafts.map((draft) => ({ ...stamp(), ...draft, project }));
    const written = this.keeper.put(entries.map((entry) => ({ id: entry.id, entry })));
    const laid = () => this.#laid(project) || entries;
    return written ? written.then(laid, (cause) => this.#notKept(cause)) : Promise.resolve(laid());
  }

  #laid(project) {
    this.#shown.changed();
    this.#changed(project, true);
    this.say(this.state === "not-kept" ? "idle" : this.state);
    this.#courier().then((courier) => courier.soon()); // where it cannot be had, app.js opens the page again
  }

  #notKept(cause) {
    this.say("not-kept");
    throw new NotKept("This phone has no room left, so that was not kept.", { cause });
  }

  /** Take the snapshot that came with a page. */
  async take(snapshot) {
    if (!this.snapshot(snapshot.project)) this.#shown.offer(snapshot);
    await this.store.change((t) => offer(t, snapshot)).catch(() => {}); // then it is shown while this page lasts
    await this.reread();
  }

  /** Read anew what this or another page changed. */
  async reread() {
    this.#shown.read(await this.store.read(everything));
    for (const project of this.projects()) this.#changed(project, false);
    this.say();
  }

  /** Show, here and on the other pages, what was changed in the store. */
  async moved() {
    this.tell("changed");
    await this.reread();
  }

  /** Send what waits now; resolves when that is done, or has to wait again. */
  send = async () => (await this.#courier()).now();

  #courier() {
    return (this.#sending ||= import("./courier.js").then(({ Courier }) => new Courier(this)));
  }

  /** Sign out of this phone; see pwa/signout.js. */
  signOut = async () => (await import("../pwa/signout.js")).signOut(this);

  /** Tell how things stand. */
  say(state = this.state) {
    if (this.state !== "outdated") this.state = state;
    const detail = { waiting: this.waiting(), refused: this.refused().length, state: this.state };
    this.dispatchEvent(new CustomEvent("status", { detail }));
  }

  #changed(project, own) {
    this.dispatchEvent(new CustomEvent("change", { detail: { project, own } }));
  }
}
