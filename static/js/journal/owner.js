/** Whose phone this is: the account of the last signed-in page, until it signs out; told to the worker too. */
const OWNER = "evenrow:account";
const LEAVING = "evenrow-sign-out"; // the mark that the next contact with the house is to be a sign-out

const attempt = (act) => {
  try {
    return act();
  } catch {
    return undefined; // nothing can be remembered here
  }
};

/** Name the account; null if nobody's, undefined where nothing can be remembered. */
export const owner = () => attempt(() => localStorage.getItem(OWNER));

/** Tell whether pages of `account` may still act for it here. */
export const isOwner = (account) => [undefined, account].includes(owner());

/** Make it the phone of `account`, or of nobody. */
export async function own(account) {
  attempt(() => (account ? localStorage.setItem(OWNER, account) : localStorage.removeItem(OWNER)));
  if (!self.caches) return;
  if (account) await (await caches.open("evenrow-owner")).put("/owner", new Response(account));
  else await caches.delete("evenrow-owner");
}

/** Tell whether she signed out here and the house does not know it yet. */
export const isLeaving = async () => (self.caches ? caches.has(LEAVING) : Boolean(attempt(() => localStorage.getItem(LEAVING))));

/** Set the mark, or take it away. */
export async function markLeaving(leaving) {
  if (!self.caches) attempt(() => (leaving ? localStorage.setItem(LEAVING, "1") : localStorage.removeItem(LEAVING)));
  else await (leaving ? caches.open(LEAVING) : caches.delete(LEAVING));
}
