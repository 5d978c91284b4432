// A slip asked for by its figures: webapp/cloth/slip_asking.py in JavaScript.

import { typed as lengthTyped } from "./lengths.js";
import { ask as askSize } from "./size_asking.js";
import { DAMAGED, fault } from "./slip_text.js";
import { Unsound, read as readThreads, write as writeThreads } from "./slip_threads.js";
import { Mistyped, amount } from "./typed.js";

const OVERS = "A slip is for stitches over one or two threads.";
const OFF = "Write how far the count may be off, like 0.3: at most a quarter of it.";

/** Read the figures of a slip: {typed, values, errors, slip}, the slip null where there is a fault. */
export function ask(typed) {
  const asked = askSize(typed);
  const title = (typed.title ?? "").trim();
  asked.typed.title = title;
  const wrong = fault(title);
  if (wrong) asked.errors.title = wrong;
  if (asked.values.over === "3") asked.errors.over = OVERS;
  asked.values.error = off(asked);
  asked.typed.threads = typed.threads ?? "";
  try {
    asked.values.threads = readThreads(asked.typed.threads);
  } catch (error) {
    if (!(error instanceof Unsound)) throw error;
    asked.errors.threads = DAMAGED;
    asked.typed.threads = "";
  }
  return { ...asked, slip: Object.keys(asked.errors).length ? null : slipOf(asked.values, title) };
}

/** Write a slip as its form has it. */
export function typedOf(slip) {
  const text = (value) => (value === null ? "" : String(value));
  return {
    title: slip.title, width: text(slip.width), height: text(slip.height), count: text(slip.count),
    across: text(slip.across), over: text(slip.over), finish: slip.finish, held: slip.held,
    frays: slip.frays ? "yes" : "", own: slip.own === null ? "" : lengthTyped(slip.own, slip.unit),
    unit: slip.unit, error: text(slip.error), threads: writeThreads(slip.threads),
  };
}

function off({ typed, values, errors }) {
  const text = (typed.error ?? "").trim();
  if (!text || values.count === null) return null;
  let [found, unit] = [0, null];
  try {
    [found, unit] = amount(text, "0.3");
  } catch (error) {
    if (!(error instanceof Mistyped)) throw error;
  }
  if (unit || !(found >= 0.001 && found <= values.count / 4)) errors.error = OFF;
  return found;
}

function slipOf({ width, height, count, across, over, finish, held, frays, own, unit, error, threads }, title) {
  return { title, width, height, count, across, over: Number(over), finish, held, frays: frays === "yes", own, unit, error, threads };
}
