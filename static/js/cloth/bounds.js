// What sizing and packing take: webapp/cloth/bounds.py in JavaScript. What lies outside is a RangeError with a sentence.

export const INCH = 25.4;
export const FORGIVEN = 1e-6; // mm: what arithmetic may lose

function within(value, low, high, sentence, whole = false) {
  if (!(low <= value && value <= high) || (whole && value % 1 !== 0)) throw new RangeError(sentence);
}

/** Refuse a count per inch that no cloth has. */
export const counted = (count) => within(count, 1, 100, "A count is a number from 1 to 100 an inch.");

/** Refuse a stitch over more threads, or parts of one, than stitches are made over. */
export const spanned = (over) => within(over, 1, 3, "A stitch is made over 1, 2 or 3 threads.", true);

/** Refuse a design that is not so many whole stitches wide and high. */
export function stitched(...sides) {
  for (const side of sides) within(side, 1, 10_000, "A design is from 1 to 10,000 whole stitches a side.", true);
}

/** Refuse a margin (mm a side) below nothing or beyond a metre. */
export const edged = (margin) => within(margin, 0, 1000, "A margin is from nothing to 1 m a side.");

/** Refuse a finished design (mm) that has no size, or more than any design has. */
export function drawn(...sides) {
  for (const side of sides) within(side, 0.1, 1_000_000, "A finished design measures something each way.");
}

/** Refuse cloth (mm) under a centimetre or over a hundred metres. */
export function measured(...lengths) {
  for (const length of lengths) within(length, 10, 100_000, "Cloth is measured from 1 cm to 100 m.");
}

/** Refuse a class of none, or of more than two hundred. */
export const numbered = (cuts) => within(cuts, 1, 200, "A class is from 1 to 200 cuts.", true);
