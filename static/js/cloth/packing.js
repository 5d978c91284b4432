// Equal cuts from a piece or off the bolt, in strips: webapp/cloth/packing.py in JavaScript, where the rules are written out.
// Lengths in mm; a strip is [x, y, width, height], x from the left, y from the top.

import { FORGIVEN, measured, numbered } from "./bounds.js";

const many = (length, each) => Math.max(0, Math.floor((length + FORGIVEN) / each));

/** Lay n equal cuts on a piece: {cuts, length, left, most, rows, turned}, or null where it does not give so many; turned: [width, height] a turned one lies in. */
export function classCuts(n, cutWidth, cutHeight, pieceWidth, pieceHeight, turn = true, turned = null) {
  measured(pieceHeight);
  const given = givenOf(n, cutWidth, cutHeight, pieceWidth, turn, turned);
  const best = bestOf(given);
  return best && best.length <= pieceHeight + FORGIVEN ? drawn(given, best, pieceHeight) : null;
}

/** Give the shortest length off a bolt for n equal cuts, not rounded; a RangeError where it is too narrow. */
export function offTheBolt(n, cutWidth, cutHeight, boltWidth, turn = true, turned = null) {
  const given = givenOf(n, cutWidth, cutHeight, boltWidth, turn, turned);
  const best = bestOf(given);
  if (!best) throw new RangeError("The bolt is narrower than one cut.");
  return drawn(given, best, best.length);
}

function givenOf(n, width, height, across, turn, turned) {
  const [wide, high] = turned ?? [height, width];
  numbered(n);
  measured(width, height, across, wide, high);
  return { n, width, height, across, turn: turn && (width !== wide || height !== high), wide, high };
}

const abreast = ({ across, width, turn, wide }) => [many(across, width), turn ? many(across, wide) : 0];

function mostOf(given, length) {
  const [straight, turned] = abreast(given);
  let most = 0;
  for (let a = 0; a <= many(length, given.height); a += 1) {
    most = Math.max(most, a * straight + many(length - a * given.height, given.high) * turned);
  }
  for (const [a, b] of columns(given, Infinity)) most = Math.max(most, held(given, a, b, length));
  return most;
}

function bestOf(given) {
  let best = null;
  for (const plan of [...inRows(given), ...inColumns(given)]) {
    if (!best || plan.length < best.length - FORGIVEN) best = plan;
  }
  return best;
}

function* inRows(given) {
  const [one, other] = abreast(given);
  for (let turned = 0; turned <= (other ? Math.ceil(given.n / other) : 0); turned += 1) {
    const wanted = Math.max(0, given.n - turned * other);
    if (wanted && !one) continue;
    const straight = wanted ? Math.ceil(wanted / one) : 0;
    yield { rows: true, straight, turned, length: straight * given.height + turned * given.high };
  }
}

function* columns(given, n) {
  for (let straight = Math.min(many(given.across, given.width), n); straight >= 0; straight -= 1) {
    const room = given.turn ? many(given.across - straight * given.width, given.wide) : 0;
    yield [straight, Math.min(room, n)];
  }
}

const held = (given, straight, turned, length) => straight * many(length, given.height) + turned * many(length, given.high);

const multiples = (count, each) => Array.from({ length: count }, (_, i) => (i + 1) * each);

function* inColumns(given) {
  for (const [straight, turned] of columns(given, given.n)) {
    const lengths = straight ? multiples(Math.ceil(given.n / straight), given.height) : [];
    if (turned) lengths.push(...multiples(Math.ceil(given.n / turned), given.high));
    const enough = lengths.filter((each) => held(given, straight, turned, each) >= given.n);
    if (enough.length) yield { rows: false, straight, turned, length: Math.min(...enough) };
  }
}

function drawn(given, plan, pieceHeight) {
  const onItsSide = { ...given, width: given.height, height: given.width, across: plan.length, wide: given.high, high: given.wide };
  let [cuts, left, turned] = laid(plan.rows ? given : onItsSide, plan);
  if (!plan.rows) {
    [cuts, left] = [cuts, left].map((strips) => strips.map(([x, y, width, height]) => [y, x, height, width]));
    const used = plan.straight * given.width + plan.turned * given.wide;
    left.push([used, 0, given.across - used, plan.length]);
  }
  left.push([0, plan.length, given.across, pieceHeight - plan.length]);
  return { cuts, length: plan.length, left: joined(left), most: mostOf(given, pieceHeight), rows: plan.rows, turned };
}

function laid(given, plan) {
  const [cuts, left] = [[], []];
  let turned = 0;
  for (let i = 0; i < plan.straight + plan.turned; i += 1) {
    const asIs = i < plan.straight;
    const [width, height] = asIs ? [given.width, given.height] : [given.wide, given.high];
    const y = Math.min(i, plan.straight) * given.height + Math.max(0, i - plan.straight) * given.high;
    const here = Math.min(many(given.across, width), given.n - cuts.length);
    for (let k = 0; k < here; k += 1) cuts.push([k * width, y, width, height]);
    left.push([here * width, y, given.across - here * width, height]);
    turned += asIs ? 0 : here;
  }
  return [cuts, left, turned];
}

function joined(strips) {
  const found = [];
  for (const strip of strips.filter(([, , width, height]) => width > FORGIVEN && height > FORGIVEN)) {
    const whole = found.length ? wholeOf(found.at(-1), strip) : null;
    if (whole) found[found.length - 1] = whole;
    else found.push(strip);
  }
  return found;
}

const alike = (one, other) => Math.abs(one - other) < FORGIVEN;

function wholeOf([x, y, width, height], [x2, y2, width2, height2]) {
  if (alike(x, x2) && alike(width, width2) && alike(y + height, y2)) return [x, y, width, height + height2];
  if (alike(y, y2) && alike(height, height2) && alike(x + width, x2)) return [x, y, width + width2, height];
  return null;
}
