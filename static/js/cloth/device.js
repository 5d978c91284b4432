/** The device as it is now, what is kept for it, and word when it changes. */

const KEPT = "evenrow.screen";
const UNIT = "evenrow.gauge.unit"; // the same tape as the gauge's

/** Tell how the screen shows this page; `turned` is a screen that lies wider than high. */
export function facts() {
  const { width, height, orientation } = screen;
  const turned = orientation?.type ? orientation.type.startsWith("landscape") : width > height;
  return {
    ratio: devicePixelRatio,
    screen: [Math.min(width, height), Math.max(width, height)],
    scale: visualViewport?.scale ?? 1,
    zoom: matchMedia("(pointer: coarse)").matches ? outerWidth / innerWidth || 1 : 1, // some zoom without the ratio showing it
    turned,
  };
}

/** Call back whenever zoom, pixels or the window may have changed. */
export function watch(changed) {
  const arm = () => {
    const query = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
    query.addEventListener("change", () => changed(arm()), { once: true });
  };
  arm();
  addEventListener("resize", () => changed());
  document.addEventListener("visibilitychange", () => changed());
  visualViewport?.addEventListener("resize", () => changed());
}

/** Read what was set for this device, if anything. */
export function recall() {
  try { return JSON.parse(localStorage.getItem(KEPT)); } catch { return null; }
}

/** Keep a setting for this device; tells whether it could be. */
export function keep(setting) {
  try { localStorage.setItem(KEPT, JSON.stringify(setting)); return true; } catch { return false; }
}

/** Read whether she measures in inches or centimetres. */
export function unit() {
  try { return localStorage.getItem(UNIT) === "cm" ? "cm" : "in"; } catch { return "in"; }
}

/** Keep what she measures in. */
export function keepUnit(chosen) {
  try { localStorage.setItem(UNIT, chosen); } catch { /* it is chosen again next time */ }
}
