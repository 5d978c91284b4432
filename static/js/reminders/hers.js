/** Her bedtime and zone: from the page, or as the last page that knew them had them, or what most have. */
export function hoursOf(account) {
  const { bedtime, zone } = document.querySelector("[data-bedtime]")?.dataset || {};
  const key = `evenrow:night:${account}`;
  const hours = bedtime && [bedtime, zone];
  try {
    if (hours) localStorage.setItem(key, hours.join(" "));
    return hours || localStorage.getItem(key).split(" ");
  } catch {
    return hours || ["22:30", Intl.DateTimeFormat().resolvedOptions().timeZone]; // nothing is remembered here
  }
}

/** Write a moment down as her wall shows it, wherever the phone believes to be; with the year if it is not that of `now`. */
export function told(at, account, options, now = at) {
  const [, timeZone] = hoursOf(account);
  const year = (moment) => new Date(moment).toLocaleString([], { year: "numeric", timeZone });
  return new Date(at).toLocaleString([], { ...options, ...(year(at) !== year(now) && { year: "numeric" }), timeZone });
}
