import { askNumber, button, choose, sheet } from "./sheet.js";

/** Where on the chart this row is begun, and to which side. */
export function open(stitch) {
  if (stitch.place === null) return stitch.open("map");
  const { plan } = stitch;
  const { column, way } = stitch.at().start || { column: plan.start_column, way: plan.start_way };
  const asked = askNumber("Begun at the chart's column", { value: column, min: 1, max: plan.width, hint: `1 is at the left, ${plan.width} at the right.` });
  const side = choose("begun-way", "And worked", [["right", "To the right"], ["left", "To the left"]], way);
  const set = () => {
    const found = asked.read();
    if (found === null) return;
    stitch.lay([{ kind: "start", row: stitch.place, column: found, way: side.read() }]);
    dialog.close();
  };
  const dialog = sheet(`${stitch.name()}: where it begins`, asked.node, side.node, button("Set", set, "main"));
}
