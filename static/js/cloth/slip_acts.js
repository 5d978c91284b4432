// What can be done with a slip; each gives the sentence to say of it, or nothing.

import { picture as draw } from "./slip_picture.js";

const NAME = "slip.png";
const isGivenUp = (error) => error.name === "AbortError"; // she closed the phone's own sheet

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
  const blob = await draw(root.querySelector("[data-sheet]"));
  const file = new File([blob], NAME, { type: blob.type });
  if (!navigator.canShare?.({ files: [file] })) return keep(blob);
  try {
    await navigator.share({ files: [file] });
  } catch (error) {
    if (!isGivenUp(error)) return keep(blob);
  }
  return "";
}

function keep(blob) {
  const link = Object.assign(document.createElement("a"), { href: URL.createObjectURL(blob), download: NAME });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return "The picture is among this phone's downloads.";
}
