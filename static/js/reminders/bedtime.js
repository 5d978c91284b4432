// What to do with the work for the night; the same as webapp/reminders/bedtime.py, bound by
// shared/vectors/bedtime.json.

const DAY = 86_400_000;
const KINDS = ["clamps", "hoop", "scroll"]; // in the order they are said: clamps may lie on stitches
const clocks = new Map();

// The wall's time at a moment, as if the wall hung in UTC.
function wallAt(moment, zone) {
  if (!clocks.has(zone)) {
    const parts = { year: "numeric", month: "numeric", day: "numeric", hour: "numeric", minute: "numeric", second: "numeric" };
    clocks.set(zone, new Intl.DateTimeFormat("en", { timeZone: zone, hourCycle: "h23", ...parts }));
  }
  const shown = {};
  for (const { type, value } of clocks.get(zone).formatToParts(moment)) shown[type] = Number(value);
  return Date.UTC(shown.year, shown.month - 1, shown.day, shown.hour, shown.minute, shown.second);
}

// The moment at which the wall shows a time: of two the first; one that is skipped by the offset before.
function shownAt(wall, zone) {
  const moments = [wall - DAY, wall + DAY].map((near) => wall - (wallAt(near, zone) - near));
  const real = moments.filter((moment) => wallAt(moment, zone) === wall);
  return real.length ? Math.min(...real) : moments[0];
}

/** Gives her bedtime ("22:30", in her zone) and the noon after it (ms), if a moment lies between them; or null. */
export function nightAt(moment, bedtime, zone) {
  const [hours, minutes] = bedtime.split(":").map(Number);
  const today = Math.floor(wallAt(moment, zone) / DAY) * DAY;
  const nights = [today - DAY, today].map((day) => {
    const noon = day + DAY / 2 + (hours >= 12 ? DAY : 0);
    return [shownAt(day + (hours * 60 + minutes) * 60_000, zone), shownAt(noon, zone)];
  });
  return nights.find(([begin, noon]) => begin <= moment && moment < noon) || null;
}

/** Gives the noon (ms) with which the night ends that a moment is of, or the coming one: the next on her wall. */
export function noonAfter(moment, zone) {
  const today = Math.floor(wallAt(moment, zone) / DAY) * DAY;
  const noons = [0, 1, 2].map((days) => shownAt(today + days * DAY + DAY / 2, zone));
  return noons.find((noon) => moment < noon);
}

/** Gives the noon (ms) with which the night ends that is named by the date before it ("2026-11-20"); NaN if none is. */
export function noonEnding(night, zone) {
  const noon = /^\d{4}-\d\d-\d\d$/.test(night) ? Date.parse(`${night}T12:00Z`) : NaN;
  return noon ? shownAt(noon + DAY, zone) : NaN;
}

/** Tells the state a frame of this kind and state should be brought to for the night, or null. */
export function asked(kind, state) {
  if (state !== "on" && state !== "slack") return null;
  if (kind === "scroll") return state === "on" ? "slack" : null;
  return kind === "hoop" || kind === "clamps" ? "off" : null;
}

/** Gives what notices are put in order by: clamps first, then by project. */
export const place = ({ kind, project }) => `${KINDS.indexOf(kind)} ${project}`;

/**
 * Lists what must be said now of held works ({project, kind, state, since}), each with what is asked: clamps first.
 * What was put on past the middle of the night is tomorrow's: by then she is up again and at it.
 */
export function due(held, moment, bedtime, zone) {
  const night = nightAt(moment, bedtime, zone);
  if (!night) return [];
  const tonight = held.filter(({ since }) => since && Date.parse(since) < (night[0] + night[1]) / 2);
  const found = tonight.map((one) => ({ ...one, ask: asked(one.kind, one.state) })).filter((one) => one.ask);
  return found.sort((a, b) => (place(a) < place(b) ? -1 : 1));
}
