/** The sheet a notification opens: what is on a frame, and her answer, written down network or not. */
import { owner } from "../journal/owner.js";
import { openPhone } from "../journal/phone.js";
import { asked, noonEnding, place } from "./bedtime.js";
import { hoursOf } from "./hers.js";
import { lookAtAll } from "./house_knows.js";
import { answer } from "./left.js";
import { heldIn, made } from "./notices.js";

const ANSWERED = {
  leave: ["Left for tonight.", "Left for tonight on this phone. Your other phones hear of it when there is network."],
  later: ["You hear of it again in half an hour.", "Kept on this phone. You hear of it again in half an hour if there is network by then."],
};
const SAID = { off: "Off the frame. Good night.", slack: "Slack for the night. Good night." };
const LOOKING = "Looking at what is on a frame…";
const NOTHING = "Nothing this phone knows of is on a frame.";
const soon = () => new Promise((resolve) => setTimeout(resolve, 2000)); // a slow house keeps nobody up
const about = new URLSearchParams(location.search); // of what the notification was: its night, and its work if it was one
const root = document.querySelector("[data-page=tonight]");
const slot = (name) => root.querySelector(`[data-slot=${name}]`);
const say = (words) => { slot("said").textContent = words; };

async function start() {
  const account = await owner();
  const phone = account && (await openPhone({ account }).catch(() => null));
  if (!phone) return say("Nobody is signed in on this phone. Open Evenrow to sign in.");
  const sheet = new Sheet(phone);
  sheet.draw();
  const looked = lookAtAll(phone).catch(() => {}).then(() => sheet.looked());
  const word = sheet.earlier ? "" : location.hash.slice(1); // tonight's work is not what was asked about then
  if (word === "done") await Promise.race([looked, soon()]); // which works are on, the house may know better
  if (word && !sheet.isAnswered()) await sheet.act(word);
  history.replaceState(null, "", location.pathname + location.search); // opened again, it does nothing by itself
}

class Sheet {
  #over = false; // she has answered, otherwise than by the frame
  #isLooking = true; // the house was asked, and did not answer yet

  constructor(phone) {
    this.phone = phone;
    const ended = noonEnding(about.get("night"), hoursOf(phone.account)[1]);
    this.earlier = ended <= phone.now() ? "That was of an earlier night." : "";
    phone.addEventListener("change", () => this.draw());
    phone.addEventListener("status", ({ detail }) => detail.state === "waiting" && wakeLater());
    addEventListener("online", () => phone.send());
    root.addEventListener("submit", (event) => this.submit(event));
    for (const act of ["leave", "later"]) root.querySelector(`[data-act=${act}]`).onclick = () => this.act(act);
  }

  works() {
    const held = this.phone.projects().map((project) => heldIn(this.phone, project)).filter(Boolean);
    const found = held.map((one) => ({ ...one, ask: asked(one.kind, one.state) })).filter((one) => one.ask);
    return found.sort((a, b) => (place(a) < place(b) ? -1 : 1));
  }

  draw() {
    const works = this.#over ? [] : this.works();
    slot("works").replaceChildren(...works.map((one) => made(root, one)));
    slot("ways").hidden = this.isAnswered() && !works.length;
    if (works.length) say(this.earlier);
    else if (!this.#over) say(this.done || `${this.earlier} ${this.#isLooking ? LOOKING : NOTHING}`.trim());
  }

  /** The house has said what it knows, or is not to be had. */
  looked() {
    this.#isLooking = false;
    this.draw();
  }
  isAnswered = () => this.#over || Boolean(this.done);

  submit(event) {
    event.preventDefault();
    const { project, state } = event.submitter.dataset;
    return this.lay([[project, state]]);
  }

  async lay(pairs) {
    this.done = SAID[pairs.some(([, state]) => state === "off") ? "off" : "slack"];
    try {
      for (const [project, state] of pairs) await this.phone.lay(project, [{ kind: "frame", state }]);
      await hush();
    } catch ({ message }) {
      say(message);
    }
  }

  act(name) {
    const works = this.works().filter(({ project }) => [null, project].includes(about.get("work")));
    if (name === "done" && works.length) return this.lay(works.map((one) => [one.project, one.ask]));
    return ANSWERED[name] && this.answer(name);
  }

  /** Take her answer for the night; a slow house keeps nobody up. */
  async answer(word) {
    const [known, kept] = ANSWERED[word];
    const told = answer(this.phone, word);
    await this.close("");
    try {
      say((await Promise.race([told, soon()])) ? known : kept);
      if (await told) say(known);
      else await wakeLater();
    } catch ({ message }) {
      this.#over = false; // nobody knows it: the answers stay, to be given again
      this.draw();
      say(message);
    }
  }

  close(words) {
    this.#over = true;
    this.draw();
    say(words);
    return hush();
  }
}

/** Take away what stands on the lock screen of it. */
async function hush() {
  const registration = await navigator.serviceWorker?.getRegistration();
  for (const one of (await registration?.getNotifications()) || []) one.close();
}

/** Have the browser wake the worker when there is network. */
async function wakeLater() {
  const registration = await navigator.serviceWorker?.getRegistration();
  registration?.sync?.register("send").catch(() => {}); // she may not allow it
}

start();
