// The work drawn as a woven cloth: weft where it is done or begun, bare warp where it is untouched.

const SVG = "http://www.w3.org/2000/svg";
const BOX = { width: 320, height: 340 };

function draw(tag, attributes, ...children) {
  const node = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) node.setAttribute(name, value);
  node.append(...children);
  return node;
}

const rect = (x, y, width, height, more = {}) => draw("rect", { x, y, width: Math.max(0, width), height: Math.max(0, height), ...more });

const patterns = () => [
  draw("pattern", { id: "warp", width: 6, height: 6, patternUnits: "userSpaceOnUse" }, draw("path", { d: "M3 0V6" })),
  draw("pattern", { id: "weft", width: 6, height: 6, patternUnits: "userSpaceOnUse" },
    rect(0, 0, 6, 6), draw("path", { d: "M0 0H6M0 3H6M1.5 0V3M4.5 3V6" })),
];

/** Draw the cloth of a project; gives the drawing, `mark` for places, and `placeAt` for a point on it. */
export function drawing(stitch) {
  const { plan, unit } = stitch;
  const scale = Math.min(BOX.width / plan.width, BOX.height / plan.height);
  const [width, height] = [Math.max(24, plan.width * scale), Math.max(24, plan.height * scale)];
  const [across, down] = [width / plan.width, height / plan.height];
  const line = (row) => (plan.direction === "bottom" ? plan.height - row : row - 1);
  const boxOf = (place) => (unit === "row"
    ? { x: 0, y: line(place) * down, width, height: down }
    : { x: (place[0] - 1) * 10 * across, y: (place[1] - 1) * 10 * down,
        width: Math.min(10, plan.width - (place[0] - 1) * 10) * across, height: Math.min(10, plan.height - (place[1] - 1) * 10) * down });
  const marks = draw("g", { class: "marks" });
  const laid = (unit === "row" ? rowsLaid : blocksLaid)(stitch, boxOf);
  const svg = draw("svg", { class: "cloth", viewBox: `-8 -4 ${width + 16} ${height + 8}`, "aria-hidden": "true" },
    ...patterns(), rect(0, 0, width, height, { class: "ground" }), rect(0, 0, width, height, { fill: "url(#warp)" }), ...laid, marks);
  return {
    svg,
    mark: (places, kind) => marks.replaceChildren(...places.map((place) => markOf(boxOf(place), kind))),
    placeAt: (event) => {
      const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
      const cell = (at, size, most) => Math.min(most, Math.max(1, Math.floor(at / size) + 1));
      if (unit === "row") return line(cell(point.y, down, plan.height)) + 1;
      return [cell(point.x, across * 10, Math.ceil(plan.width / 10)), cell(point.y, down * 10, Math.ceil(plan.height / 10))];
    },
  };
}

const markOf = ({ x, y, width, height }, kind) => rect(x - 3, y - 2, width + 6, Math.max(height, 2) + 4, { class: kind, rx: 3 });

/** Rows done one after another are one piece of cloth; one begun is woven as far as it goes. */
function rowsLaid(stitch, boxOf) {
  const pieces = [];
  for (const row of Object.keys(stitch.view.rows).map(Number).sort((a, b) => a - b)) {
    if (row > stitch.plan.height) continue;
    const { x, y, width, height } = boxOf(row);
    const { done } = stitch.at(row);
    const { count, of } = stitch.shown(row);
    const part = done ? 1 : Math.min(1, count / (of ?? stitch.plan.width));
    const left = (stitch.at(row).start?.way ?? stitch.plan.start_way) === "left";
    const last = pieces.at(-1);
    if (done && last?.done && Math.abs(row - last.row) === 1) {
      last.y = Math.min(last.y, y);
      last.height += height;
      last.row = row;
    } else if (part > 0) pieces.push({ row, done, x: left ? x + width * (1 - part) : x, y, width: width * part, height });
  }
  return pieces.map(({ x, y, width, height }) => rect(x, y, width, Math.max(height, 0.8), { fill: "url(#weft)" }));
}

function blocksLaid(stitch, boxOf) {
  return Object.entries(stitch.view.blocks).map(([key, { done }]) => {
    const place = key.split(".").map(Number);
    const { x, y, width, height } = boxOf(place);
    const { count, of } = stitch.shown(place);
    const part = done ? 1 : Math.min(1, count / of);
    return rect(x + 0.5, y + 0.5, width - 1, height * part - 1, { fill: "url(#weft)" });
  });
}
