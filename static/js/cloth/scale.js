// The line under the figure: webapp/cloth/scale.py in JavaScript, drawn as templates/cloth/_answer.html draws it.

const SVG = "http://www.w3.org/2000/svg";
const LEFT = 20;
const RIGHT = 306;
const SHOWN = 4;
const APART = 20;

/** Lay the counts round the interval out along the line: {marks, low, high, at}. */
export function scale(measured, judged) {
  const counts = judged.names.map((name) => name.count);
  const [first, last] = around(counts, measured.low, measured.high);
  const least = Math.min(counts[first], measured.low);
  const most = Math.max(counts[last], measured.high);
  const place = (count) => Math.floor((LEFT + ((RIGHT - LEFT) * (count - least)) / (most - least)) * 10 + 0.5) / 10;
  const marks = judged.names.slice(first, last + 1).map(({ count, verdict }) => ({ x: place(count), count, verdict, written: false }));
  const fits = marks.filter((mark) => mark.verdict === "could be");
  for (const mark of [...fits, ...marks.filter((one) => !fits.includes(one))]) {
    mark.written = marks.every((other) => !other.written || Math.abs(other.x - mark.x) >= APART);
  }
  return { marks, low: place(measured.low), high: place(measured.high), at: place(measured.count) };
}

function around(counts, low, high) {
  let first = Math.max(0, counts.findLastIndex((count) => count <= low));
  let last = counts.findIndex((count) => count >= high);
  if (last < 0) last = counts.length - 1;
  while (last - first < SHOWN - 1) {
    if (last < counts.length - 1) last += 1;
    if (first > 0 && last - first < SHOWN - 1) first -= 1;
  }
  return [first, last];
}

function node(tag, attributes, text = "") {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  made.textContent = text;
  return made;
}

/** Draw the line anew in an svg. */
export function drawScale(svg, { marks, low, high, at }) {
  const drawn = marks.flatMap(({ x, count, verdict, written }) => {
    const kind = verdict.replace(" ", "-");
    return [
      node("circle", { class: kind, cx: x, cy: 30, r: verdict === "ruled out" ? 4 : 5 }),
      node("text", { class: kind, x, y: 58, "text-anchor": "middle" }, written ? count : ""),
    ];
  });
  svg.replaceChildren(
    node("line", { x1: LEFT, y1: 30, x2: RIGHT, y2: 30 }),
    node("rect", { x: low, y: 20, width: Math.max(2, high - low), height: 20, rx: 5 }),
    ...drawn,
    node("rect", { class: "at", x: at - 2, y: 15, width: 4, height: 30, rx: 2 }),
  );
}
