// Everything the gauge answers, from readings and the table of standards: webapp/cloth/answer.py in JavaScript. Figures
// only, unrounded; counts per inch, lengths in mm. The table is {standards, none_weight, steps}.

import { changed } from "./changed.js";
import { INCH, combine, measure, student } from "./gauge.js";
import { distance, either, judge, likeliest, settlingLength } from "./naming.js";

const standardsOf = (table, kind) => table.standards.filter((s) => s.kinds.includes(kind));

/** Answer for readings of one cloth, at least one of them along. */
export function answer(readings, kind, unit, table) {
  const standards = standardsOf(table, kind);
  const judgedOf = (measured) => judge(measured, standards, table.none_weight);
  const lengthwise = readings.filter((r) => r.way === "along");
  const crosswise = readings.filter((r) => r.way === "across");
  const along = measure(lengthwise);
  const across = crosswise.length ? measure(crosswise) : null;
  const square = across && compare(along, across);
  const apart = square !== null && square.verdict !== "square";
  const used = apart ? lengthwise : readings;
  const measured = measure(used);
  const ways = apart ? [judgedOf(measured), judgedOf(across)] : null;
  const judged = ways ? either(...ways) : judgedOf(measured);
  const fits = likeliest(judged) !== null;
  const holes = holesOf(used);
  const longest = used.reduce((best, r) => (r.length > best.length ? r : best));
  const otherUnit = unit === "in" ? 2.54 : 1 / 2.54;
  const others = standardsOf(table, kind === "squares" ? "threads" : "squares");
  return {
    kind, unit, measured, along, across, square, judged, ways,
    changed: ways ? [] : changed(measured, judged, standards),
    holes: holes.count,
    holes_name: likeliest(judgedOf(holes)),
    holes_across: apart ? holesOf(crosswise).count : null,
    over_two: kind === "threads" ? measured.count / 2 : null,
    over_two_name: kind === "threads" ? overTwo(judged, table) : null,
    asked_length: asked(measured, table.steps),
    settling: ways ? null : settlingLength(longest, judged, standards),
    other_unit: fits ? null : fitting(measured, otherUnit, standards),
    other_kind: fits ? null : fitting(measured, 1, others),
  };
}

const holesOf = (readings) => measure(readings.map((r) => ({ ...r, counted: r.counted - 1 })));

function overTwo(judged, table) {
  const fits = judged.names.filter((name) => name.verdict === "could be").map((name) => name.count / 2);
  return fits.length === 1 && standardsOf(table, "squares").some((s) => s.count === fits[0]) ? fits[0] : null;
}

/** Tell whether the cloth is square, and what 100 squares or threads of it measure either way. */
export function compare(along, across) {
  const [u, freedom] = combine([[along.uncertainty, along.freedom], [across.uncertainty, across.freedom]]);
  const [factor, sure] = student(freedom);
  const off = Math.abs(along.middle - across.middle) / u;
  const ratio = along.count / across.count;
  return {
    verdict: off <= factor ? "square" : off <= sure ? "perhaps" : "uneven",
    along_mm: (100 * INCH) / along.count,
    across_mm: (100 * INCH) / across.count,
    percent: (ratio - 1) * 100,
  };
}

function asked(measured, steps) {
  const dense = (measured.count * 100) / INCH;
  const [, least] = steps.find(([upto]) => dense <= upto) ?? steps.at(-1);
  return measured.length < least ? least : null;
}

function fitting(measured, times, standards) {
  const count = measured.middle * times;
  const reach = measured.factor * measured.uncertainty * times;
  const off = (s) => Math.abs(s.count - count);
  const near = standards.filter((s) => distance(count, s) <= reach);
  return near.length ? near.reduce((best, s) => (off(s) < off(best) ? s : best)).count : null;
}
