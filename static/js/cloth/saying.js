// What the gauge says: webapp/cloth/saying.py in JavaScript, word for word.

import { changedInWords } from "./changed.js";
import { INCH } from "./gauge.js";
import { likeliest } from "./naming.js";
import { headline as unevenHeadline, holes as unevenHoles, overTwo as unevenOverTwo, squareness as unevenSquareness, verdict as unevenVerdict } from "./uneven.js";
import { CLOTHS, join, lengthOf, perCent, tenth } from "./words.js";

const TOO_LONG = 12 * INCH;
const FEW = 3;

const fitsOf = (judged) => judged.names.filter((name) => name.verdict === "could be");

/** Give the answer: the figure to be shown large, and what it is a figure of. */
export function headline(answer) {
  const { kind, judged, measured, ways } = answer;
  if (ways) return unevenHeadline(answer);
  const counts = fitsOf(judged).map((n) => n.count);
  if (!counts.length) return [tenth(measured.count), `${kind} an inch`];
  const figure = counts.length < FEW ? join(counts, "or") : `${counts[0]} to ${counts.at(-1)}`;
  return [String(figure), `count ${CLOTHS[kind]}`];
}

/** Give what is to be said, as [part, sentence], most important first. */
export function sentences(answer) {
  return [
    ["answer", `${headline(answer).join(" ")}.`],
    ["verdict", verdict(answer)],
    ["rest", rest(answer)],
    ["changed", changed(answer)],
    ["square", squareness(answer)],
    ["over", overTwo(answer)],
    ["hint", hint(answer)],
    ["holes", holes(answer)],
    ["care", care(answer)],
  ].filter(([, sentence]) => sentence);
}

function verdict(answer) {
  if (answer.ways) return unevenVerdict(answer);
  const { judged } = answer;
  if (judged.sure !== null) return changed(answer) ? "Sure, as measured." : "Sure.";
  const fits = fitsOf(judged).sort((a, b) => b.likelihood - a.likelihood);
  if (!fits.length) return between(answer);
  const [likely] = fits;
  if (fits.length > FEW) return `Not sure: the likeliest is ${likely.count} (${perCent(likely.likelihood)}).`;
  if (fits.length > 1) return `Not sure: ${join(fits.map((n) => `${n.count} (${perCent(n.likelihood)})`), "or")}.`;
  if (judged.names.every((n) => n === likely || n.verdict === "ruled out")) {
    return "Most likely: no other count that is sold fits.";
  }
  return `Most likely (${perCent(likely.likelihood)}).`;
}

function between(answer) {
  const { count } = answer.measured;
  const below = answer.judged.names.filter((n) => n.count < count).at(-1);
  const above = answer.judged.names.find((n) => n.count > count);
  if (!below) return `Coarser than ${above.count}.`;
  return above ? `Between ${below.count} and ${above.count}.` : `Finer than ${below.count}.`;
}

function rest(answer) {
  const { judged } = answer;
  const anyFits = fitsOf(judged).length > 0;
  const doubted = judged.names.filter((n) => n.verdict === "unlikely").map((n) => n.count);
  const become = changed(answer) ? answer.changed.map((one) => one.count) : [];
  const out = anyFits ? ruledOutBeside(judged).map((n) => n.count).filter((count) => !become.includes(count)) : [];
  const are = (counts) => `${join(counts)} ${counts.length > 1 ? "are" : "is"}`;
  const said = [];
  if (doubted.length && doubted.length <= FEW) said.push(`${are(doubted)} ${anyFits ? "unlikely" : "not ruled out"}.`);
  if (out.length) said.push(`${are(out)} ruled out.`);
  return said.join(" ");
}

function changed(answer) {
  const named = likeliest(answer.judged) !== null;
  return !named && hint(answer) ? "" : changedInWords(answer.changed, named);
}

function ruledOutBeside({ names }) {
  const left = names.map((n, i) => (n.verdict === "ruled out" ? -1 : i)).filter((i) => i >= 0);
  return left.length ? [names[left[0] - 1], names[left.at(-1) + 1]].filter(Boolean) : [];
}

function squareness(answer) {
  if (answer.ways) return unevenSquareness(answer);
  return answer.square ? "Square: along and across agree as far as measured." : "";
}

function overTwo(answer) {
  if (answer.over_two === null) return "";
  if (answer.ways) return unevenOverTwo(answer);
  const [stitches, name] = [tenth(answer.over_two), answer.over_two_name];
  if (name === null) return `Over two, ${stitches} stitches an inch.`;
  return `Over two, the same as ${name} count${stitches === String(name) ? "" : `; as measured, ${stitches}`}.`;
}

function hint(answer) {
  if (answer.other_kind !== null) {
    return `If you counted ${answer.kind === "squares" ? "threads" : "squares"}, it is near ${answer.other_kind}.`;
  }
  if (answer.other_unit === null) return "";
  return `If the tape was in ${answer.unit === "in" ? "centimetres" : "inches"}, it is near ${answer.other_unit}.`;
}

function holes(answer) {
  if (answer.ways) return unevenHoles(answer);
  const said = `Counted holes? Then ${tenth(answer.holes)}`;
  if (answer.holes_name === null) return `${said}, no standard count.`;
  return `${said}, ${answer.holes_name === likeliest(answer.judged) ? "still" : "likeliest"} ${answer.holes_name}.`;
}

function care(answer) {
  const { settling, asked_length: least, unit, judged, measured: of } = answer;
  if (of.spread * of.spread > of.part * of.part + of.tape * of.tape) {
    return "The places differ by more than the measuring explains: count another, or two.";
  }
  if (settling === null) return least === null ? "" : `Better: measure ${lengthOf(least, unit)} or more.`;
  if (settling <= of.length) return "Count again, in another place, to be sure.";
  if (settling > TOO_LONG) return "To be sure takes more than can be counted: take it as measured.";
  const likely = likeliest(judged);
  const others = judged.names.filter((n) => n.verdict !== "ruled out" && n.count !== likely).map((n) => n.count);
  const aim = others.length && others.length <= FEW ? `tell it from ${join(others, "or")}` : "be sure";
  return `Measure ${lengthOf(settling, unit)} to ${aim}.`;
}
