// A picture handed on: to the phone's own sheet where that takes pictures, else kept as a file.

/** Tell whether she only closed the phone's own sheet. */
export const isGivenUp = (error) => error.name === "AbortError";

/** Hand a picture on under a name; gives the sentence to say of it, or nothing. */
export async function handOn(blob, name) {
  const file = new File([blob], name, { type: blob.type });
  if (!navigator.canShare?.({ files: [file] })) return keep(blob, name);
  try {
    await navigator.share({ files: [file] });
  } catch (error) {
    if (!isGivenUp(error)) return keep(blob, name);
  }
  return "";
}

function keep(blob, name) {
  const link = Object.assign(document.createElement("a"), { href: URL.createObjectURL(blob), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return "The picture is among this phone's downloads.";
}
