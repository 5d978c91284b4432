/** The time zone this phone keeps, by its IANA name, or nothing where it will not say. */
export const phoneZone = () => Intl.DateTimeFormat().resolvedOptions().timeZone ?? "";

/** Fill what asks for the zone and has none yet. */
export function fillZones(root) {
  for (const input of root.querySelectorAll('input[data-fill="zone"]')) input.value ||= phoneZone();
}
