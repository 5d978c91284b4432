// What can be done with a slip; each gives the sentence to say of it, or nothing.

import { handOn, isGivenUp } from "../handed.js";
import { picture as draw } from "./slip_picture.js";

/** Print it. */
export function print() {
  window.print();
  return "";
}

/** Hand the link on. */
export async function share(root, url) {
  const title = root.querySelector('[data-slot="title"]').textContent;
  try {
    await navigator.share({ title, url });
  } catch (error) {
    if (!isGivenUp(error)) return "It could not be shared: copy the link instead.";
  }
  return "";
}

/** Copy the link. */
export async function copy(_root, url) {
  try {
    await navigator.clipboard.writeText(url);
    return "The link is copied.";
  } catch {
    return "It could not be copied: take the link from the browser's address line.";
  }
}

/** Make a picture of it: handed to the phone's own sheet where that takes pictures, else kept as a file. */
export async function picture(root) {
  return handOn(await draw(root.querySelector("[data-sheet]")), "slip.png");
}
