// How large a screen's pixels are, set by laying a bank card on the glass, and how far that may be off. Pure: lengths in
// mm, pixels are the device's own. An axis is {side, pixels}: so many pixels along that side of the card.
//
// The error follows JCGM 100. Either edge is read to one pixel or 0.1 mm, whichever is more (the eye is not straight
// above it; common practice, no source), the card is as long as the standard allows; both rectangular, given at 95 %:
//   u² = (2 edge² + card²) / 3,  error = 1.96 u / side

export const INCH = 25.4;

/** The sides of a card of size ID-1, ISO/IEC 7810. */
export const CARD = { long: 85.6, short: 53.98 };
const ALLOWED = { long: 0.125, short: 0.055 }; // what an unused card may be off, by the same standard; from memory
const EDGE = 0.1;
const NORMAL = 1.96;
const COARSEST = 60; // pixels an inch; a wall display
const FINEST = 1200; // half as fine again as the finest telephone

/** Give {perMm, error, density} of one axis; error is relative, at 95 %. RangeError where no screen is like that. */
export function measured({ side, pixels }) {
  const perMm = pixels / CARD[side];
  const density = perMm * INCH;
  if (!(density >= COARSEST)) throw new RangeError(`That would be ${said(density)} pixels an inch: no screen is so coarse. Lay a bank card on the glass.`);
  if (density > FINEST) throw new RangeError(`That would be ${said(density)} pixels an inch: no screen is so fine. Lay a bank card on the glass.`);
  const edge = Math.max(EDGE, 1 / perMm);
  const u = Math.sqrt((2 * edge * edge + ALLOWED[side] * ALLOWED[side]) / 3);
  return { perMm, density, error: (NORMAL * u) / CARD[side] };
}

const said = (density) => (density > 0 ? Math.round(density) : "no");

/** Tell whether two axes are as large as each other within their errors: {agree, differ, allowed}, relative. */
export function compared(one, other) {
  const differ = Math.abs(one.perMm / other.perMm - 1);
  const allowed = Math.hypot(one.error, other.error);
  return { agree: differ <= allowed, differ, allowed };
}

/** Write a share, rounded up to a tenth of a per cent. */
export const perCent = (share) => `${Math.ceil(share * 1000 - 1e-9) / 10}\u00a0%`;

/** Say why two axes cannot be kept, or null if they can. */
export function quarrel(one, other) {
  const { agree, differ, allowed } = compared(one, other);
  if (agree) return null;
  return `Across and down differ by ${perCent(differ)}; setting allows ${perCent(allowed)}. Set both again, looking straight down on each edge.`;
}

/** Name the axis of the screen itself that runs across or down the page; `turned` is a screen wider than high. */
export const axisOf = (way, turned) => ((way === "across") === turned ? "tall" : "narrow");

/** Take what was kept for a device if it still makes sense, else null. */
export function trusted(kept) {
  try {
    const [narrow, tall] = [measured(kept.axes.narrow), measured(kept.axes.tall)];
    return compared(narrow, tall).agree && kept.screen.length === 2 && kept.ratio > 0 && kept.zoom > 0 ? { narrow, tall } : null;
  } catch {
    return null;
  }
}

const near = (one, other, share) => Math.abs(one / other - 1) <= share;

/** Say why a setting is no longer true of the device as it is, or null. */
export function outdated(kept, now) {
  if (kept.screen.some((side, n) => side !== now.screen[n])) return "This is another screen than the one that was set. Set it again.";
  if (!near(kept.ratio, now.ratio, 0.001) || !near(kept.zoom, now.zoom, 0.03)) return "The zoom has changed since this screen was set. Set it again.";
  return null;
}

/** Tell whether the page is pinched larger, so that nothing drawn on it is the size it was drawn. */
export const pinched = (now) => Math.abs(now.scale - 1) > 0.005;
