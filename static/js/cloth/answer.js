// Everything the gauge answers, from readings and the table of standards: webapp/cloth/answer.py in JavaScript. Figures
// only, unrounded; counts per inch, lengths in mm. The table is {standards, none_weight, steps}.

import { INCH, combine, measure, student } from "./gauge.js";
import { distance, judge, likeliest, settlingLength } from "./naming.js";

const standardsOf = (table, kind) => table.standards.filter((s) => s.kinds.includes(kind));

/** Answer for readings of one cloth, at least one of them along. */
export function answer(readings, kind, unit, table) {
  const standards = standardsOf(table, kind);
  const lengthwise = readings.filter((r) => r.way === "along");
  const crosswise = readings.filter((r) => r.way === "across");
  const along = measure(lengthwise);
  const across = crosswise.length ? measure(crosswise) : null;
  const square = across && compare(along, across);
  const used = !square || square.verdict === "square" ? readings : lengthwise;
  const measured = measure(used);
  const judged = judge(measured, standards, table.none_weight);
  const fits = likeliest(judged) !== null;
  const holes = measure(used.map((r) => ({ ...r, counted: r.counted - 1 })));
  const longest = used.reduce((best, r) => (r.length > best.length ? r : best));
  const otherUnit = unit === "in" ? 2.54 : 1 / 2.54;
  const others = standardsOf(table, kind === "squares" ? "threads" : "squares");
  return {
    kind, unit, measured, along, across, square, judged,
    holes: holes.count,
    holes_name: likeliest(judge(holes, standards, table.none_weight)),
    over_two: kind === "threads" ? measured.count / 2 : null,
    asked_length: asked(measured, table.steps),
    settling: settlingLength(longest, judged, standards),
    other_unit: fits ? null : fitting(measured, otherUnit, standards),
    other_kind: fits ? null : fitting(measured, 1, others),
  };
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
