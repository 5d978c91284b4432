import { askNumber, button, choose, el, sheet } from "./sheet.js";

/** Move the place over bare cloth. */
export function open(stitch) {
  if (stitch.place === null) return stitch.open("map");
  const { over } = stitch.plan;
  const { ahead } = stitch.shown();
  const { bare } = stitch.at();
  const hint = bare ? `${bare} moved over in this row so far.` : "";
  const asked = askNumber("Cells without a stitch", { min: 1, max: stitch.plan.width, hint });
  const way = choose("bare-way", "Which way", [["1", "Onwards"], ["-1", "Back"]], "1");
  const threads = el("p", { className: "quiet", role: "status" });
  const say = () => {
    const cells = Number(asked.input.value);
    threads.textContent = over === 2 && cells > 0 ? `${cells} bare is ${cells * over} threads.` : "";
  };
  asked.input.addEventListener("input", say);
  const quick = (cells, text = cells) => button(text, () => { asked.input.value = cells; say(); });
  const tiles = el("div", { className: "tiles few" }, [1, 2, 5, 10].map((cells) => quick(cells)), quick(ahead, `${ahead} to the ten-line`));
  const move = () => {
    const cells = asked.read();
    if (cells === null) return;
    stitch.lay([...stitch.sitDown(), { kind: "bare", row: stitch.place, by: cells * Number(way.read()) }]);
    dialog.close();
  };
  const dialog = sheet("Bare cloth", tiles, asked.node, over === 2 && threads, way.node, button("Move over", move, "main"));
}
