/**
 * What every entry is stamped with: an id and a moment, both rising, whatever the phone's clock does.
 *
 * The phone's own clock never goes back here: when the real one is set back, the distance is kept and added from
 * then on. The house learns how far this clock is off from `sent_at`, which is told by the same clock, so entries
 * stay in order and come out right, with or without network. All tabs share it through localStorage.
 */
const KEY = "evenrow:clock";
let last = 0;
let ahead = 0;
let turn = 0;

function recall() {
  try {
    const [theirs, distance] = (localStorage.getItem(KEY) || "").split(" ").map(Number);
    if (theirs > last) [last, ahead] = [theirs, distance || 0];
  } catch {
    // no localStorage: this page's own memory has to do
  }
}

function recount(now) {
  if (now > last) turn = 0;
  else if (now < last) ahead += last - now;
  last = Math.max(now, last);
}

/** Tell the phone's own clock in milliseconds. */
export function ownNow() {
  recall();
  return Math.max(Date.now() + ahead, last);
}

/** Tell how far the own clock is ahead of the real one, in milliseconds. */
export function aheadBy() {
  recall();
  return ahead;
}

/** Make the id (UUID version 7, RFC 9562) and the moment of a new entry, after every one made before. */
export function stamp() {
  recall();
  recount(Date.now() + ahead);
  if (turn > 0xff0) recount(last + 1);
  turn += 1 + (crypto.getRandomValues(new Uint8Array(1))[0] & 7);
  try {
    localStorage.setItem(KEY, `${last} ${ahead}`);
  } catch {
    // as above
  }
  return { id: uuid7(last, turn), at: new Date(last).toISOString() };
}

function uuid7(milliseconds, count) {
  const tail = crypto.getRandomValues(new Uint8Array(8));
  tail[0] = (tail[0] & 0x3f) | 0x80;
  const hex = (number, digits) => number.toString(16).padStart(digits, "0");
  const all = hex(milliseconds, 12) + hex(0x7000 | count, 4) + [...tail].map((byte) => hex(byte, 2)).join("");
  return all.replace(/(.{8})(.{4})(.{4})(.{4})/, "$1-$2-$3-$4-");
}
