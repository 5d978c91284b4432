/** Setting the screen: a card is laid on the glass, and an edge moved until the drawn one is as large. */

import { moved } from "./edge.js";
import { CARD, INCH, measured, quarrel } from "./screen.js";

const WIDE = 600; // from so many CSS pixels a card lies crossways on any screen
const START = 8; // CSS pixels: where the card's first edge lies
const KNOB = 64; // and the room its handle needs beyond the card
const LEAST = 40;
const UNSEEN = 0.97; // the second side starts too small, so that it is set and not just agreed to
const TALL = CARD.long / CARD.short;
const GUESS = 160; // CSS pixels an inch, on most telephones

const sideOf = (way) => (way === "across" && innerWidth >= WIDE ? "long" : "short");
const words = (way) => (way === "down" || sideOf(way) === "long" ? "crossways" : "upright");

/** Work the setting in `root` on `glass`; `done({across, down})` is called with what was set. */
export function openSetting(root, glass, done) {
  const knob = root.querySelector('[data-act="edge"]');
  const slot = (name) => root.querySelector(`[data-slot="${name}"]`);
  const state = { way: "across", pixels: 0, axes: {} };
  const ratio = () => devicePixelRatio;
  const most = () => {
    const { width, height } = glass.size;
    return (state.way === "across" ? width : height - Math.round(KNOB * ratio())) - Math.round((START + 2) * ratio());
  };
  const say = (sentence) => { slot("wrong").textContent = sentence; };

  function turnTo(way, pixels) {
    Object.assign(state, { way, pixels });
    root.dataset.way = way;
    root.dataset.card = words(way);
    slot("step").textContent = way === "across" ? "1 of 2" : "2 of 2";
    glass.again();
  }
  function move(pixels) {
    state.pixels = pixels;
    say("");
    glass.again();
    if (state.pixels < pixels) say("The glass ends here. A card that is larger does not fit: this screen cannot be set.");
  }
  function begin(why = "") {
    state.axes = {};
    say(why);
    turnTo("across", Math.round((CARD[sideOf("across")] / INCH) * GUESS * devicePixelRatio));
  }
  function fits() {
    try {
      const axis = { side: sideOf(state.way), pixels: state.pixels };
      const { perMm } = measured(axis);
      state.axes[state.way] = axis;
      if (state.way === "down") return finish();
      say("");
      return turnTo("down", Math.round(CARD[sideOf("down")] * perMm * UNSEEN));
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return say(error.message);
    }
  }
  function finish() {
    const why = quarrel(measured(state.axes.across), measured(state.axes.down));
    return why ? begin(why) : done(state.axes);
  }
  function paint(context, { width, height, colours }) {
    const start = Math.round(START * ratio());
    state.pixels = Math.max(Math.round(LEAST * ratio()), Math.min(most(), Math.round(state.pixels)));
    const across = state.way === "across";
    const room = across ? height - Math.round(KNOB * ratio()) : width - 2 * start;
    const other = Math.min(room, Math.round(state.pixels * (sideOf(state.way) === "short" ? TALL : 1 / TALL)));
    const hangs = other === room; // over the top, or over both sides
    context.fillStyle = colours.fill;
    if (across) context.fillRect(start, hangs ? 0 : start, state.pixels, other);
    else context.fillRect(hangs ? 0 : start, start, hangs ? width : other, state.pixels);
    const [edge, beyond] = [start + state.pixels, hangs ? room : start + other].map((one) => one / ratio());
    place(across ? edge : beyond / 2, across ? beyond : edge, width / ratio());
  }
  function place(left, top, width) {
    knob.style.left = `${Math.min(width - KNOB, Math.max(0, left - KNOB / 2))}px`;
    knob.style.top = `${top}px`;
    const values = { now: state.pixels, min: Math.round(LEAST * ratio()), max: most(), text: `${state.pixels} pixels` };
    for (const [name, value] of Object.entries(values)) knob.setAttribute(`aria-value${name}`, value);
    knob.setAttribute("aria-orientation", state.way === "across" ? "horizontal" : "vertical");
  }
  moved(root, { pixels: () => state.pixels, way: () => state.way, ratio, move });
  root.querySelector('[data-act="fits"]').addEventListener("click", fits);
  return { begin, paint };
}
