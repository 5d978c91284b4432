// What the gauge hands on to size and cut, a piece, a class and the slip: webapp/cloth/onward.py in JavaScript, where it is
// said which way is which.

const hundredth = (count) => String(Math.floor(count * 100 + 0.5) / 100);
const off = ({ count, low, high }) => Math.max(high - count, count - low);

/** Give the measured count, and that down the design where it may differ, with how far it may be off. */
export function onward({ kind, unit, measured, ways, along, across }) {
  const counts = ways ? { count: hundredth(across.count), across: hundredth(along.count) } : { count: hundredth(measured.count) };
  const most = ways ? Math.max(off(across), off(along)) : off(measured);
  const error = String(Math.ceil(most * 100 - 1e-9) / 100);
  return { ...counts, over: kind === "threads" ? "2" : "1", unit, error };
}

/** Let the links to what comes next carry what was measured; with nothing measured they carry nothing. */
export function lead(found) {
  const query = found ? String(new URLSearchParams(onward(found))) : "";
  for (const link of document.querySelectorAll("a[data-onward]")) link.search = query;
}
