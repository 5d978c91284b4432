// She is back after a quiet: what the page asks her then, fetched when there has been one.
import { refresh } from "../journal/moments.js";

const PATIENCE = 3000;
const STITCHING = ["stitches", "bare", "done", "begin", "start"];

/** A sitting left running is asked about first; after a long absence, where she stopped is shown, once for each. */
export async function open(stitch, isBack, stitched, forgotten, longAway) {
  const { phone, project } = stitch;
  if (isBack) await Promise.race([refresh(phone, project), new Promise((resolve) => setTimeout(resolve, PATIENCE))]); // she may have stitched elsewhere
  const at = Math.max(stitched(stitch), await tookBack(stitch));
  const now = phone.now();
  const isOpen = () => document.querySelector("dialog[open]");
  if (isOpen()) return;
  const isLeft = stitch.view.sitting && now - at > forgotten;
  if (isLeft) await answered(stitch, isOpen);
  if (now - Math.max(at, stitch.greeted || 0) > longAway && stitch.place !== null) {
    stitch.greeted = now;
    stitch.open("stopped");
  } else if (!isBack && !isLeft) stitch.say("Clean hands?");
}

/** Ask about the sitting; resolves once she is done with that. */
async function answered(stitch, isOpen) {
  await stitch.open("forgotten");
  await new Promise((resolve) => (isOpen() ? isOpen().addEventListener("close", resolve, { once: true }) : resolve()));
}

/** Tell when this phone last took stitching back; that is being there, too, though what it names is gone. */
async function tookBack({ phone, project }) {
  const found = await phone.store.read((t) => Promise.all(["outbox", "settled"].map((name) => t.all(name)))).catch(() => []);
  const hers = found.flat().map(({ entry }) => entry).filter((entry) => entry.project === project);
  const other = new Set(hers.filter(({ kind }) => !STITCHING.includes(kind)).map(({ id }) => id));
  const undos = hers.filter(({ kind, entry }) => kind === "undo" && !other.has(entry));
  return Math.max(0, ...undos.map(({ at }) => Date.parse(at)).filter((at) => at <= phone.now()));
}
