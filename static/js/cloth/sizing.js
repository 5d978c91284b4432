// How large a design comes out, how big to cut, and what a piece takes: webapp/cloth/sizing.py in JavaScript, where the
// geometry is written out. A cloth is {across, down, over}; lengths in mm, counts per inch, designs in whole stitches.

import { FORGIVEN, INCH, counted, edged, measured, spanned, stitched } from "./bounds.js";

export const STEPS = { in: 6.35, cm: 5 };

/** Make a cloth of a count along the design's width and one along its height, over so many threads. */
export function makeCloth(across, down, over = 1) {
  counted(across);
  counted(down);
  spanned(over);
  return { across, down, over };
}

/** Give the same cloth turned by a quarter. */
export const turnedCloth = ({ across, down, over }) => ({ across: down, down: across, over });

/** Give the finished [width, height], mm, of so many stitches. */
export function finished(cloth, width, height) {
  stitched(width, height);
  return [(width * cloth.over * INCH) / cloth.across, (height * cloth.over * INCH) / cloth.down];
}

/** Give the next whole step, mm, at or above a length. */
export const roundUp = (length, step) => Math.ceil((length - FORGIVEN) / step) * step;

/** Size a design with a margin a side, its cut rounded up to a step, and never under `least` each way. */
export function size(cloth, width, height, margin, step, least = 0) {
  edged(margin);
  const [across, down] = finished(cloth, width, height);
  const [exactWidth, exactHeight] = [across, down].map((side) => Math.max(side + 2 * margin, least));
  const [cutWidth, cutHeight] = [roundUp(exactWidth, step), roundUp(exactHeight, step)];
  const [firstIn, firstDown] = [Math.max(0, (cutWidth - across) / 2), Math.max(0, (cutHeight - down) / 2)];
  return {
    width, height, finished_width: across, finished_height: down, margin,
    exact_width: exactWidth, exact_height: exactHeight, cut_width: cutWidth, cut_height: cutHeight,
    first_in: firstIn, first_down: firstDown,
    threads_in: Math.floor((firstIn * cloth.across) / INCH + 0.5),
    threads_down: Math.floor((firstDown * cloth.down) / INCH + 0.5),
    middle: [width / 2, height / 2],
  };
}

/** Give the most stitches [across, down] a piece takes inside its margins; 0 where there is no room. */
export function largest(cloth, pieceWidth, pieceHeight, margin) {
  measured(pieceWidth, pieceHeight);
  edged(margin);
  return [room(pieceWidth - 2 * margin, cloth.across, cloth.over), room(pieceHeight - 2 * margin, cloth.down, cloth.over)];
}

const room = (length, count, over) => Math.max(0, Math.floor(((length + FORGIVEN) * count) / (over * INCH)));

/** Lay a design on a piece, or on the piece turned by a quarter; cloth and piece are as they lie before it is turned. */
export function fit(cloth, width, height, margin, pieceWidth, pieceHeight, turned = false) {
  measured(pieceWidth, pieceHeight);
  edged(margin);
  const [wide, high] = turned ? [pieceHeight, pieceWidth] : [pieceWidth, pieceHeight];
  const [across, down] = finished(turned ? turnedCloth(cloth) : cloth, width, height);
  const [spareAcross, spareDown] = [wide - across - 2 * margin, high - down - 2 * margin];
  return {
    fits: spareAcross >= -FORGIVEN && spareDown >= -FORGIVEN, turned,
    spare_across: spareAcross, spare_down: spareDown,
    margin_across: (wide - across) / 2, margin_down: (high - down) / 2,
  };
}

/** Tell of several even cloths, each [count, over], which way a design fits a piece: {count, over, straight, turned}, null where not. */
export function whichFit(width, height, margin, pieceWidth, pieceHeight, grounds) {
  return grounds.map(([count, over]) => {
    const cloth = makeCloth(count, count, over);
    const [straight, turned] = [false, true]
      .map((way) => fit(cloth, width, height, margin, pieceWidth, pieceHeight, way))
      .map((way) => (way.fits ? way : null));
    return { count, over, straight, turned };
  });
}
