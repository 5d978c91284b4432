// The line under the figure: webapp/cloth/scale.py in JavaScript, drawn as templates/cloth/_answer.html draws it.

const SVG = "http://www.w3.org/2000/svg";
const LEFT = 20;
const RIGHT = 306;
const SHOWN = 4;
const APART = 20;

/** Lay the counts round the interval out along the line: {marks, low, high, at, across}. */
export function scale(measured, judged, across = null) {
  const counts = judged.names.map((name) => name.count);
  const [low, high] = [Math.min(measured.low, across?.low ?? Infinity), Math.max(measured.high, across?.high ?? 0)];
  const [first, last] = around(counts, low, high);
  const [least, most] = [Math.min(counts[first], low), Math.max(counts[last], high)];
  const place = (count) => Math.floor((LEFT + ((RIGHT - LEFT) * (count - least)) / (most - least)) * 10 + 0.5) / 10;
  const marks = judged.names.slice(first, last + 1).map(({ count, verdict }) => ({ x: place(count), count, verdict, written: false }));
  const fits = marks.filter((mark) => mark.verdict === "could be");
  for (const mark of [...fits, ...marks.filter((one) => !fits.includes(one))]) {
    mark.written = marks.every((other) => !other.written || Math.abs(other.x - mark.x) >= APART);
  }
  const placed = (of) => [of.low, of.high, of.count].map(place);
  const [from, to, at] = placed(measured);
  return { marks, low: from, high: to, at, across: across && placed(across) };
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
export function drawScale(svg, { marks, low, high, at, across }) {
  const bands = [[low, high, at], ...(across ? [across] : [])];
  const drawn = marks.flatMap(({ x, count, verdict, written }) => {
    const kind = verdict.replace(" ", "-");
    return [
      node("circle", { class: kind, cx: x, cy: 30, r: verdict === "ruled out" ? 4 : 5 }),
      node("text", { class: kind, x, y: 58, "text-anchor": "middle" }, written ? count : ""),
    ];
  });
  svg.replaceChildren(
    node("line", { x1: LEFT, y1: 30, x2: RIGHT, y2: 30 }),
    ...bands.map(([from, to]) => node("rect", { x: from, y: 20, width: Math.max(2, to - from), height: 20, rx: 5 })),
    ...drawn,
    ...bands.map(([, , mark]) => node("rect", { class: "at", x: mark - 2, y: 15, width: 4, height: 30, rx: 2 })),
  );
}
