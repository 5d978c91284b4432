/**
 * When to send: a second after a tap, at once when asked, and after a failure later and later, up to five minutes.
 * One run at a time on this page; what comes in meanwhile goes along or is sent after.
 */
import { tellHouse } from "../reminders/left.js";
import { owner } from "./owner.js";
import { alone, deliver } from "./sender.js";
import { aheadBy, ownNow } from "./stamps.js";

const GATHERED = 1000;
const LONGEST = 300_000;

/** Sends for a phone. */
export class Courier {
  #running = null;
  #more = false;
  #timer = 0;
  #failures = 0;
  #notBefore = 0; // the house asked to be left alone until then

  constructor(phone) {
    this.phone = phone;
  }

  /** Send a little later, together with what else is tapped by then; while a retry is due, with that. */
  soon() {
    if (this.#running) this.#more = true;
    else this.#timer ||= setTimeout(() => this.#go(), GATHERED);
  }

  /** Send now, unless the house asked to wait. */
  now() {
    return performance.now() < this.#notBefore ? Promise.resolve() : this.#go();
  }

  #go() {
    clearTimeout(this.#timer);
    this.#timer = 0;
    this.#more = true;
    return (this.#running ||= this.#runs().finally(() => (this.#running = null)));
  }

  async #runs() {
    let outcome = { state: "idle" };
    while (this.#more && outcome.state === "idle") {
      this.#more = false;
      outcome = await this.#run();
      if (outcome.state === "idle") await tellHouse(this.phone).catch(() => {}); // what she answered for the night
    }
    if (outcome.state === "idle") this.#failures = 0;
    else this.#later(outcome.after || 0);
  }

  async #run() {
    const { phone } = this;
    await phone.keeper.flush();
    if (!phone.waiting() || phone.state === "outdated") return { state: "idle" };
    if (phone.state === "idle") phone.say("sending"); // what is amiss stays said until it is mended
    const isHers = [phone.account, undefined].includes(await owner());
    const outcome = isHers ? await this.#deliver() : { state: "other-account" };
    if (outcome.state === "idle" && phone.isHeldUp()) outcome.state = "waiting";
    phone.say(outcome.state);
    return outcome;
  }

  #deliver() {
    const { account, store } = this.phone;
    const moved = () => this.phone.moved();
    const work = () => deliver(account, store, moved, { ahead: aheadBy(), now: ownNow });
    return alone(`evenrow:${account}`, work).catch(() => ({ state: "waiting" }));
  }

  #later(after) {
    const delay = Math.min(LONGEST, GATHERED * 2 ** this.#failures++) * (0.5 + Math.random() / 2);
    const wait = Math.min(LONGEST, Math.max(delay, after));
    if (after) this.#notBefore = performance.now() + wait;
    this.#timer = setTimeout(() => this.#go(), wait);
  }
}
