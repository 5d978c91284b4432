// The thread of one stitch, hole by hole: webapp/threads/geometry.py in JavaScript, where the drawing is told. A ground
// is {across, down, thick}; lengths in mm.

export const METHODS = ["rows", "each"];
export const INCH = 25.4;
export const THICK = 0.5;
export const STRAND = 0.2;
export const WRAPS = 2;
export const NEEDLE = 0.7;
export const STITCHES = ["full", "half", "quarter", "three_quarter", "back", "knots", "beads"];

/** Give the ground of cloth of a count an inch over so many threads, `down` the other way if not alike. */
export function groundOf(count, over = 1, down = null, thick = THICK) {
  for (const one of [count, down ?? count]) {
    if (!(one >= 1 && one <= 100)) throw new RangeError("A count is a number from 1 to 100 an inch.");
  }
  if (![1, 2, 3].includes(over)) throw new RangeError("A stitch is made over 1, 2 or 3 threads.");
  return check({ across: (over * INCH) / count, down: (over * INCH) / (down ?? count), thick });
}

/** Give the ground back, or refuse it with a sentence. */
export function check(ground) {
  const { across, down, thick } = ground;
  if (!(across >= 0.1 && across <= 100 && down >= 0.1 && down <= 100)) throw new RangeError("Stitches lie from 0.1 to 100 mm apart.");
  if (!(thick >= 0 && thick <= 5)) throw new RangeError("Cloth is from nothing to 5 mm thick.");
  return ground;
}

/** Give how thick so many strands are in the needle, mm. */
export const bundle = (strands, diameter = STRAND) => diameter * Math.sqrt(strands);

/** Give the mm of thread of one stitch on the face and behind, up to where the next begins. */
export function stitch(what, ground, method, thread, wraps = WRAPS) {
  if (!METHODS.includes(method)) throw new RangeError("Crosses are worked in rows out and back, or each is finished at once.");
  if (!(wraps >= 1 && wraps <= 9)) throw new RangeError("A French knot is wrapped 1 to 9 times.");
  const { across, down, thick } = check(ground);
  const [leg, straight] = [Math.sqrt(across * across + down * down), (across + down) / 2];
  const crest = thick + thread;
  const over = (span) => Math.sqrt(span * span + crest * crest);
  switch (what) {
    case "full": return 2 * over(leg) + over(down) + (method === "rows" ? over(down) : over(leg));
    case "half": case "beads": return over(leg) + over(down);
    case "quarter": return 2 * over(leg / 2);
    case "three_quarter": return over(leg) + over(down) + 2 * over(leg / 2);
    case "back": return over(straight) + over(2 * straight);
    case "knots": return wraps * Math.PI * (NEEDLE + thread) + over(leg / 2) + over(leg);
    default: throw new RangeError("There is no such stitch.");
  }
}
