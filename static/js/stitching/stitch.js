import { stamp } from "../journal/stamps.js";
import { feel, keep, kept } from "./device.js";
import { scene } from "./place.js";

const JOINED = 30 * 60_000;
const UNLENT = "This needs the network once; the page opens itself again then.";
const PATIENCE = 8; // taps that a line waits for an answer

/** The page of one project: what is under her thumb, and what her acts lay. Sheets and map are given it. */
export class Stitch {
  place = null;

  constructor(element, phone, project) {
    const found = new Map();
    Object.assign(this, { element, phone, project, hand: kept(`hand ${project}`) || {} });
    this.all = (selector) => found.get(selector) || found.set(selector, [...element.querySelectorAll(selector)]).get(selector);
    this.find = (selector) => this.all(selector)[0];
    this.step = kept(`step ${project}`);
  }

  get plan() { return this.phone.plan(this.project); }
  get view() { return this.phone.view(this.project); }
  get unit() { return this.plan.working === "blocks" ? "block" : "row"; }
  get isFramed() { return ["hoop", "clamps", "scroll"].includes(this.plan.frame); }

  /** What is at a place: raw stitches, bare cells, whether it is done, where it was begun. */
  at(place = this.place) {
    const { rows, blocks, bares, starts } = this.view;
    const known = Array.isArray(place) ? blocks[place.join(".")] : rows[place];
    return { stitches: 0, done: false, ...known, bare: bares[place] || 0, start: starts[place] };
  }

  shown(place = this.place) {
    const { stitches, bare, start } = this.at(place);
    return scene(this.plan, place, stitches, bare, start);
  }

  where(place = this.place) { return { [this.unit]: place }; }

  name(place = this.place) { return `${this.unit === "row" ? "Row" : "Block"} ${[place].flat().join(", ")}`; }

  /** Lay entries; gives them once they are kept, else null (the phone says so). With `follow` the page goes where they lead. */
  lay(drafts, follow = false) {
    this.following = follow;
    return this.phone.lay(this.project, drafts).catch(() => null);
  }

  /** Lay entries of one act: one undo takes all of them back. */
  act(drafts, follow = true) {
    const act = stamp().id;
    return this.lay(drafts.map((draft) => ({ ...draft, act })), follow);
  }

  /** A sitting begins with its first stitch, and puts the work on its frame. */
  sitDown() {
    if (this.view.sitting) return [];
    const off = this.isFramed && this.view.frame?.state !== "on";
    return [{ kind: "begin" }, ...(off ? [{ kind: "frame", state: "on" }] : [])];
  }

  /** Say what began with what was just laid: that the work is on its frame. */
  async tell(laying) {
    const entries = (await laying) || [];
    if (entries[0]?.kind === "begin") this.say("");
    const frame = entries.find((entry) => entry.kind === "frame");
    if (frame) this.say("On the frame.", "Not on it", () => this.lay([{ kind: "undo", entry: frame.id }]), () => this.view.frame?.state === "on");
  }

  /** Lay what a tap lays: the step she set, or a run of `by`. */
  tap(by) {
    if (this.place === null) return this.do("over");
    if (by === undefined && this.step === "row") return this.do("finish");
    const before = this.shown();
    const size = by ?? this.size(before);
    const where = this.where();
    const again = this.at().done ? [{ kind: "done", ...where, done: false }] : [];
    const laid = { kind: "stitches", ...where, ...this.hand, by: size };
    const laying = again.length ? this.reopen(again, laid) : this.lay([...this.sitDown(), laid]);
    const left = before.of === null ? 0 : before.of - before.count;
    feel(left > 0 && left <= size ? "end" : size >= before.ahead ? "ten" : "tap");
    if (this.patience && !--this.patience) this.say("");
    return this.tell(laying);
  }

  /** Lay on a closed row or block: it is open again, and one undo takes back both. */
  reopen(again, laid) {
    const sitting = this.sitDown();
    if (sitting.length) this.tell(this.lay(sitting));
    const told = `${this.name()} was done. It is open again.`;
    return this.act([...again, laid], false).then((entries) => (entries && this.say(told), entries));
  }

  size({ ahead, left }) { return this.step === "ten" ? Math.min(ahead, left || ahead) : Number(this.step); }

  /** Milliseconds before a short pause, which count to this sitting. */
  joined() {
    const paused = kept(`pause ${this.project}`);
    const since = paused && Date.parse(this.view.sitting?.begin ?? new Date(this.phone.now()).toISOString()) - paused.end;
    return paused && since < JOINED ? paused.before : 0;
  }

  minutes() { return Math.max(0, Math.floor((this.phone.now() - Date.parse(this.view.sitting.begin) + this.joined()) / 60_000)); }

  clock() { return this.view.sitting ? `${this.minutes()} min` : this.joined() ? "Go on" : "Begin"; }

  set(step) { keep(`step ${this.project}`, (this.step = step)); }

  /** Say one line over the field, as long as it `holds`, with at most one answer; taps go through it. */
  say(text, answer = "", act = null, holds = null) {
    const [line, words, button] = [".say", ".say span", ".say .btn"].map(this.find);
    line.hidden = !text;
    line.parentNode.classList.toggle("said", Boolean(text));
    words.textContent = text;
    button.hidden = !answer;
    button.textContent = answer;
    button.onclick = () => { this.say(""); act(); };
    Object.assign(this, { holds, patience: text ? PATIENCE : 0 });
  }

  /** Do what a button of hers says, pressed `at` this time. */
  do(name, at = performance.now()) { return import("./acts.js").then((acts) => acts[name](this, at)).catch((error) => this.unlent(error)); }

  /** Open a sheet, fetched when it is first wanted. */
  open(name, ...given) { return import("./sheets.js").then((sheets) => sheets.open(name, this, ...given)).catch((error) => this.unlent(error)); }

  /** Say what cannot be had, and let app.js hear it, which opens the page again. */
  unlent(error) { throw /import/i.test(error.message) && this.say(UNLENT), error; }
}
