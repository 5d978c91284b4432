import { feel, keep } from "./device.js";
import { inHand, inWords, inkOn, isShort, left, long, needles, park, parked, pickUp, putDown, written } from "./threads.js";

// The strip of needles between what her buttons do and the field; fetched where a project has a legend.
const LONG = 600; // ms that a press lies to park a needle
const AFTER = 500; // ms: what a first tap begins is said first
const SLIP = 12; // px it may wander

const href = new URL("../../css/strip.css", import.meta.url);
document.head.append(Object.assign(document.createElement("link"), { rel: "stylesheet", href }));

let strip = null;
let drawn = ""; // what the strip was drawn for
const warned = new Set();

/** Keep the strip as it is in hand, and say once when a thread may not reach. */
export function paint(stitch) {
  if (stitch.hand.thread && !inHand(stitch)) putDown(stitch); // its line was taken out of the legend
  if (!stitch.plan.legend) return;
  if (!strip?.isConnected) [strip, drawn] = [stitch.element.querySelector(".strip") || made(stitch), ""];
  if (strip.dataset.unit) keep("thread unit", strip.dataset.unit);
  const lines = needles(stitch);
  const state = JSON.stringify([stitch.plan.revision, stitch.hand, parked(stitch), lines.map(({ key }) => key)]);
  if (state !== drawn) {
    strip.replaceChildren(...lines.map((line) => chip(stitch, line)), more(lines));
    drawn = state;
    strip.querySelector("[aria-pressed=true]")?.scrollIntoView({ block: "nearest", inline: "nearest" });
  }
  const line = inHand(stitch);
  if (!line) return;
  const told = strip.querySelector("[aria-pressed=true] small");
  const text = said(stitch, line);
  if (told && told.textContent !== text) told.textContent = text;
  warn(stitch, line);
}

function made(stitch) {
  strip = document.createElement("div");
  strip.className = "strip";
  stitch.find("main").append(strip);
  return strip;
}

const said = (stitch, line) => `${left(stitch, line)} left · ${long(left(stitch, line) * line.each)}`;

function warn(stitch, line) {
  if (warned.has(line.key) || !isShort(stitch, line)) return;
  warned.add(line.key);
  const words = `${line.name}: what is left may not reach. Buy more of the same lot while it is there.`;
  const look = () => location.assign(`/projects/${stitch.project}/thread/running`);
  setTimeout(() => stitch.say(words, "Look", look), AFTER);
}

/** Draw a swatch with a line's symbol, readable on its colour. */
export function swatch({ symbol, colour, name }) {
  const node = document.createElement("i");
  node.className = "swatch";
  node.textContent = symbol || [...name][0];
  if (symbol.length > 2) node.dataset.long = "";
  if (colour) Object.assign(node.style, { background: colour, color: inkOn(colour) });
  return node;
}

function chip(stitch, line) {
  const isHeld = stitch.hand.thread === line.key;
  const at = parked(stitch)[line.key];
  const node = document.createElement("button");
  const name = document.createElement("span");
  name.textContent = !isHeld && at ? written(at) : line.name;
  Object.assign(node, { type: "button", className: "chip" });
  node.setAttribute("aria-pressed", String(isHeld));
  node.setAttribute("aria-label", `${line.name}${at ? `, parked at ${inWords(stitch, at)}` : ""}${isHeld ? ": in hand" : ""}`);
  node.toggleAttribute("data-parked", Boolean(at));
  node.append(swatch(line), name, ...(isHeld ? [document.createElement("small")] : []));
  listen(stitch, node, line);
  return node;
}

/** A tap picks a needle up, or asks about the one in hand; a long press parks it here. */
function listen(stitch, node, line) {
  let timer;
  let from = null;
  let isParked = false;
  const end = () => clearTimeout(timer);
  node.addEventListener("pointerdown", (event) => {
    isParked = false;
    from = event;
    timer = setTimeout(() => {
      isParked = true;
      feel("ten");
      park(stitch, line.key);
    }, LONG);
  });
  node.addEventListener("pointermove", ({ clientX, clientY }) => from && Math.hypot(clientX - from.clientX, clientY - from.clientY) > SLIP && end());
  for (const kind of ["pointerup", "pointercancel", "pointerleave"]) node.addEventListener(kind, end);
  node.addEventListener("contextmenu", (event) => event.preventDefault());
  node.addEventListener("click", () => {
    if (isParked) return;
    if (stitch.hand.thread === line.key) stitch.open("needle", line);
    else pickUp(stitch, line.key);
  });
}

function more(lines) {
  const node = document.createElement("button");
  Object.assign(node, { type: "button", className: "chip plain", textContent: lines.length ? "…" : "Choose needles" });
  if (lines.length) node.setAttribute("aria-label", "Choose needles");
  node.dataset.act = "needles";
  return node;
}
