/**
 * Whose phone this is: the account of the last signed-in page, until it signs out. It stands in the browser's cache,
 * where the worker reads it too; in localStorage where there is no cache. The same for the mark that she signed out
 * and the house does not know it yet.
 */
const OWNER = "evenrow-owner";
const LEAVING = "evenrow-sign-out";

const attempt = (act) => {
  try {
    return act();
  } catch {
    return undefined; // nothing can be remembered here
  }
};
const remember = (key, value) => attempt(() => (value ? localStorage.setItem(key, value) : localStorage.removeItem(key)));

/** Name the account; null or undefined if nobody's, or nothing can be remembered. */
export async function owner() {
  if (!self.caches) return attempt(() => localStorage.getItem(OWNER));
  return (await caches.match("/owner", { cacheName: OWNER }))?.text();
}

/** Make it the phone of `account`, or of nobody. */
export async function own(account) {
  if (!self.caches) remember(OWNER, account);
  else if (!account) await caches.delete(OWNER);
  else if ((await owner()) !== account) await (await caches.open(OWNER)).put("/owner", new Response(account));
}

/** Tell whether she signed out here and the house does not know it yet. */
export const isLeaving = async () => (self.caches ? caches.has(LEAVING) : Boolean(attempt(() => localStorage.getItem(LEAVING))));

/** Set that mark, or take it away. */
export async function markLeaving(leaving) {
  if (!self.caches) remember(LEAVING, leaving && "yes");
  else await (leaving ? caches.open(LEAVING) : caches.delete(LEAVING));
}
