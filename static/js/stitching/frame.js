const NEXT = {
  hoop: { on: "off" }, clamps: { on: "off" }, scroll: { on: "slack", slack: "off" },
};
const SAID = { on: "On the frame.", slack: "Slackened.", off: "Off the frame." };

/** Say that the work was put on, slackened or taken off; one tap takes it back. */
export async function open(stitch) {
  const state = NEXT[stitch.plan.frame][stitch.view.frame?.state] || "on";
  const laid = await stitch.lay([{ kind: "frame", state }]);
  if (laid) stitch.say(SAID[state], "Undo", () => stitch.lay([{ kind: "undo", entry: laid[0].id }]), () => stitch.view.frame?.state === state);
}
