import { due, nightAt, place } from "./bedtime.js";
import { hoursOf } from "./hers.js";
import { leftUntil, tellHouse } from "./left.js";
import { heldIn, made, titleIn } from "./notices.js";
import { renew } from "./renew.js";

const MINUTE = 60_000;
const ASK_AGAIN = 5; // minutes

/** Keeps the notice of what to do with the work for the night right while a page is open. */
export function see(element, phone) {
  const notice = new Notice(element, phone);
  const draw = () => notice.draw();
  phone.addEventListener("change", ({ detail }) => notice.isNews(detail.project) && draw());
  phone.addEventListener("status", ({ detail }) => notice.hear(detail));
  document.addEventListener("visibilitychange", draw);
  element.addEventListener("submit", (event) => notice.answer(event));
  new MutationObserver(draw).observe(notice.list, { childList: true }); // what htmx brought, put right by what waits here
  setInterval(() => notice.tick(), MINUTE);
  draw();
  const later = () => Promise.all([tellHouse(phone), renew(phone.account)]).catch(() => {}); // the next page will do
  setTimeout(later, MINUTE / 30);
}

class Notice {
  #answered = new Set(); // projects answered for here, until the house knows
  #minutes = 0;
  #drawn = new Map(); // project → how it was held when last drawn

  constructor(element, phone) {
    this.element = element;
    this.phone = phone;
    this.list = element.querySelector("#frame");
    this.hours = hoursOf(phone.account);
  }

  /** Tell whether a project is held otherwise than was drawn; a tap tells nothing new. */
  isNews(project) {
    return String(this.#drawn.get(project)) !== String(Object.values(heldIn(this.phone, project) || {}));
  }

  /** Show what is due by what this phone knows; of projects it does not know, what the house said. */
  draw() {
    const now = this.phone.now();
    const held = this.phone.projects().map((project) => heldIn(this.phone, project)).filter(Boolean);
    this.#drawn = new Map(held.map((one) => [one.project, Object.values(one)]));
    const away = this.phone.projects().filter((project) => this.phone.plan(project)?.away);
    const known = new Set([...held.map((one) => one.project), ...away, ...this.#answered]);
    const shown = [...this.list.children];
    const isLeft = leftUntil(this.phone.account) > now;
    const others = !isLeft && nightAt(now, ...this.hours) ? shown.filter((one) => !known.has(one.dataset.project)) : [];
    const next = (isLeft ? [] : due(held, now, ...this.hours)).map((one) => shown.find((old) => says(old, one)) || made(this.element, one));
    next.push(...others);
    next.sort((a, b) => (place(a.dataset) < place(b.dataset) ? -1 : 1));
    const isSame = next.length === shown.length && next.every((one, n) => one === shown[n]);
    if (!isSame) this.list.replaceChildren(...next);
  }

  /** Write down how the work is held now; if this phone cannot keep it, let the form go to the house. */
  async answer(event) {
    const { target, submitter } = event;
    if (target.dataset.plain) return;
    event.preventDefault();
    const { project, state } = submitter.dataset;
    try {
      await this.phone.lay(project, [{ kind: "frame", state }]);
      this.#answered.add(project);
      this.draw();
    } catch {
      target.dataset.plain = "yes";
      target.requestSubmit(submitter);
    }
  }

  /** Once the house has what was answered here, ask it how things stand. */
  hear({ state, waiting }) {
    if (state !== "idle" || waiting || !this.#answered.size) return;
    this.#answered.clear();
    askAgain();
  }

  /** Each minute it may be bedtime, or noon; now and then another phone may have answered. */
  tick() {
    this.draw();
    this.#minutes += 1;
    const canAsk = document.body.dataset.account && navigator.onLine && !document.hidden;
    if (canAsk && this.#minutes % ASK_AGAIN === 0) askAgain();
  }
}

const askAgain = () => document.body.dispatchEvent(new CustomEvent("evenrow:frame"));

const says = (notice, { project, kind, title }) =>
  notice.dataset.project === project && notice.dataset.kind === kind && titleIn(notice).textContent === title;
