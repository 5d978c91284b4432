/** Which projects of hers the house knows of, asked where this phone may know none of them, and how they are held. */
import { refresh } from "../journal/moments.js";
import { ask } from "../journal/sender.js";

const MOST = 30;
const PAGES = ["/frame/banner", "/projects"]; // what is due first, then what lies on top
const ID = /\/(?:frame|projects)\/([0-9a-f]{8}-[0-9a-f-]{27})\b/g;

/** Send what waits, then bring what this phone knows of her work up to date; resolves also where the house is silent. */
export async function lookAtAll(phone) {
  await phone.send();
  const pages = await Promise.all(PAGES.map((path) => ask(path, {}, (answer) => (answer.ok ? answer.text() : "")).catch(() => "")));
  const named = pages.flatMap((page) => [...page.matchAll(ID)].map(([, id]) => id));
  const isInHand = (id) => (phone.plan(id)?.state || "in hand") === "in hand";
  const wanted = [...new Set([...phone.projects(), ...named.filter(isInHand).slice(0, MOST)])];
  await Promise.all(wanted.map((id) => refresh(phone, id)));
}
