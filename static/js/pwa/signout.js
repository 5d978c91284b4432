/**
 * Signing out: what waits is sent first. Without network her pages and snapshots go, and a mark makes the next
 * contact a sign-out; what waits stays under its account until that signs in again.
 */
import { waits } from "../journal/books.js";
import { markLeaving, own } from "../journal/owner.js";

const PATIENCE = 8000;
const LEFT = "evenrow:left"; // how much was not sent when she signed out

const RENEWED = "evenrow:renewed"; // when reminders were last seen to: who signs in next has them seen to at once

/** Sign out of this phone. */
export async function signOut(phone) {
  await Promise.race([phone.send(), new Promise((resolve) => setTimeout(resolve, PATIENCE))]);
  remember(phone.waiting());
  await markLeaving(true);
  await Promise.allSettled([phone.store.change(forget), own(null), self.caches?.delete(`evenrow-pages-${phone.account}`)]);
  await tellHouse();
  phone.tell("signed-out");
  location.replace("/");
}

/** Finish a sign-out that the house does not know of, as soon as it can be reached. */
export async function finish() {
  if (document.body.dataset.account) document.body.hidden = true; // drawn for who is signed out here
  for (const why of document.querySelectorAll('[data-slot="why"]')) why.textContent = parting();
  if (await tellHouse()) location.replace("/");
  else addEventListener("online", finish, { once: true });
}

function remember(left) {
  try {
    localStorage.setItem(LEFT, left);
    localStorage.removeItem(RENEWED);
  } catch {
    // then it is not told how much
  }
}

function parting() {
  const left = Number(localStorage.getItem(LEFT));
  const kept = left ? ` What you had not sent (${left}) is kept on it, and goes when you sign in again.` : "";
  return `You are signed out on this phone. Signing in needs the network.${kept}`;
}

async function tellHouse() {
  const response = await fetch("/sign-out", { method: "POST" }).catch(() => null);
  const done = response?.headers.get("X-Evenrow-Account") === "none";
  if (done) await markLeaving(false);
  return done;
}

/** Forget what came from the house; what waits, was refused or is settled stays. */
async function forget(t) {
  for (const { project } of await t.all("snapshots")) await t.drop("snapshots", project);
  for (const record of await t.all("outbox")) if (!waits(record)) await t.drop("outbox", record.id);
}
