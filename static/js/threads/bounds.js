// What an estimate takes: webapp/threads/bounds.py in JavaScript. Whatever lies outside is refused with a sentence.

const MOST = 10_000_000;

/** Between these her own figure lies. */
export const FACTOR = [0.2, 5];

function within(value, low, high, sentence, whole = false) {
  if (!(value >= low && value <= high) || (whole && value % 1 !== 0)) throw new RangeError(sentence);
}

/** Refuse what no line of a legend has. */
export function estimated(counts, worked, patches, own) {
  for (const many of counts) within(many, 0, MOST, "Stitches are whole numbers from 0 to 10,000,000.", true);
  within(worked.together, 1, 24, "The needle holds 1 to 24 strands.", true);
  within(worked.strands, 1, worked.together, "A part has at least one of the strands.", true);
  within(worked.working, 150, 5000, "A working length is from 15 cm to 5 m (6 in to 5 yards).");
  within(worked.diameter, 0.01, 5, "A strand is from 0.01 to 5 mm thick.");
  if (worked.loop && worked.together % 2) throw new RangeError("A loop begins only an even number of strands.");
  if (patches !== null) within(patches, 1, MOST, "Patches are counted from 1.", true);
  if (!own) return;
  within(own.factor, ...FACTOR, "Her own figure is between a fifth and five times the drawing's.");
  within(own.spread, 0, 0.5, "Her own figure may be off by half of itself at most.");
}
