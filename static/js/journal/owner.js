/**
 * Whose phone this is: the account of the last signed-in page, until it signs out. It stands in the browser's cache,
 * where the worker reads it too; in localStorage where there is no cache. The same for the mark that she signed out
 * and the house does not know it yet. Where a browser lends neither, nothing is remembered, and nothing fails.
 */
const OWNER = "evenrow-owner";
const LEAVING = "evenrow-sign-out";

const attempt = async (act) => {
  try {
    return await act();
  } catch {
    return undefined;
  }
};
const remember = (key, value) => (value ? localStorage.setItem(key, value) : localStorage.removeItem(key));

/** Name the account; null or undefined if nobody's, or nothing can be remembered. */
export const owner = () =>
  attempt(async () => (self.caches ? (await caches.match("/owner", { cacheName: OWNER }))?.text() : localStorage.getItem(OWNER)));

/** Make it the phone of `account`, or of nobody. */
export const own = (account) =>
  attempt(async () => {
    if (!self.caches) remember(OWNER, account);
    else if (!account) await caches.delete(OWNER);
    else if ((await owner()) !== account) await (await caches.open(OWNER)).put("/owner", new Response(account));
  });

/** Tell whether she signed out here and the house does not know it yet. */
export const isLeaving = () => attempt(() => (self.caches ? caches.has(LEAVING) : Boolean(localStorage.getItem(LEAVING))));

/** Set that mark, or take it away. */
export const markLeaving = (leaving) =>
  attempt(() => {
    if (!self.caches) return remember(LEAVING, leaving && "yes");
    return leaving ? caches.open(LEAVING) : caches.delete(LEAVING);
  });
