// Everything the page of size and cut says, slot by slot: webapp/cloth/size_saying.py in JavaScript, from an answer of
// size_answer.js.

import { INCH } from "./bounds.js";
import { area, both, inches, laid, laidArea, toCut } from "./lengths.js";
import { ring } from "./size_answer.js";
import { finished, makeCloth } from "./sizing.js";

const SQUARES_TO = 22;
const WHY = {
  framed: "framed and laced", usual: "the usual", small: "a small finish", ornament: "an ornament", own: "your own",
  hoop: "what a hoop grips", clamps: "what clamps grip", scroll: "what a scroll frame takes", stretched: "what stretching takes",
};
const HOLDS = { clamps: "Frame with clamps", scroll: "Scroll frame", stretched: "Stretcher bars" };

/** Give every text of the answer by its slot. */
export function slots(found) {
  const { sized, unit, needle } = found;
  const [cut, cutOther] = toCut(sized.cut_width, sized.cut_height, unit);
  const [done, doneOther] = both(sized.finished_width, sized.finished_height, unit);
  return {
    cut, "cut-other": cutOther, finished: done, "finished-other": doneOther,
    margin: `${laid(found.margin.mm, unit, "up")} a side${found.least ? " at least" : ""}`,
    why: why(found),
    middle: `${halfway(sized.width)} across`,
    "middle-down": `${halfway(sized.height)} down`,
    first: first(found),
    "first-other": laidArea(sized.first_in, sized.first_down, unit),
    needle: ranged(needle.usual, needle.low, needle.high),
    "needle-more": found.beside,
    strands: strands(found.strands),
    hoop: hoop(found),
    care: care(found),
    wide: laid(sized.cut_width, unit),
    high: laid(sized.cut_height, unit),
    sources: sources(found), unit,
    ...sides(found),
  };
}

function why(found) {
  const { margin: { decided, parts }, finish, held, unit, least } = found;
  const reason = WHY[{ finish, frame: held }[decided] ?? "own"];
  const frays = parts.find((part) => part.what === "frays");
  const said = frays ? `${reason}, and ${laid(frays.mm, unit)} that may fray` : reason;
  return least ? `${said}; a hoop of ${laid(ring(found), unit)} asks for ${laid(least, unit, "up")} each way` : said;
}

function halfway(stitches) {
  const half = Math.floor(stitches / 2);
  return stitches % 2 ? `stitch ${half + 1}` : `between ${half} and ${half + 1}`;
}

function first({ sized, cloth }) {
  const what = cloth.over === 1 && cloth.across <= SQUARES_TO ? "squares" : "threads";
  return `${sized.threads_in} ${what} in, ${sized.threads_down} down`;
}

const ranged = (usual, low, high) => (low === high ? String(usual) : `${usual} (${low} to ${high})`);

function strands(of) {
  const half = of.half ? `, half crosses ${of.half}` : "";
  return `${ranged(of.usual, of.low, of.high)}${half}, backstitch ${ranged(of.back_usual, of.back_low, of.back_high)}`;
}

function hoop(found) {
  const { held, unit, sized, hoop: { diameter, frame } } = found;
  if (held === "hand") return "In hand";
  const open = laidArea(sized.finished_width, sized.finished_height, unit, "up");
  if (held !== "hoop") return `${HOLDS[held]}, open at least ${open}`;
  if (diameter === null) return `No hoop goes round it: a frame, open at least ${open}`;
  const sold = unit === "cm" ? ` (${laid(diameter * INCH, "in")})` : "";
  return `Hoop of ${laid(diameter * INCH, unit)}${sold}${frame ? ", or a frame" : ""}`;
}

function care(found) {
  const { sized, unit, cloth, widest } = found;
  const shorter = Math.min(sized.cut_width, sized.cut_height);
  const said = [];
  if (found.least) {
    const bare = laidArea(found.unheld.cut_width, found.unheld.cut_height, unit);
    said.push(`That is for the hoop: in the hand ${bare} would do.`);
  }
  if (found.held === "hoop" && !ring(found)) said.push("A hoop moved from place to place would close on stitches.");
  if (shorter > widest) said.push(`Cloth is seldom sold wider than ${laid(widest, unit)}.`);
  if (cloth.across !== cloth.down) {
    const even = finished(makeCloth(cloth.across, cloth.across, cloth.over), sized.width, sized.height);
    said.push(`On square cloth of ${inches(cloth.across * INCH)} it would be ${both(...even, unit)[0]}.`);
  }
  return said.join(" ");
}

function sides({ sides: grounds, unit }) {
  return Object.fromEntries(grounds.flatMap(({ sized: on }, row) => [
    [`side-${row}`, bare(area(on.finished_width, on.finished_height, unit))],
    [`side-${row}-cut`, bare(laidArea(on.cut_width, on.cut_height, unit))],
  ]));
}

const bare = (text) => text.slice(0, text.lastIndexOf(" ")).replace(" ×", "\u00a0×"); // a line breaks after the sign

function sources(found) {
  const named = Object.entries(found.cited).filter(([, names]) => names.length).map(([what, names]) => `${what}: ${names.join(", ")}`);
  return `${named.join("; ")}. Sources differ; a needle of another size does little harm.`;
}
