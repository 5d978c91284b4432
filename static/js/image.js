// Drawings of a page as images, to be painted into a picture: a style sheet does not reach into an image, so each shape
// takes along what it looks like.

const TAKEN = ["stroke-dasharray", "vector-effect", "font-weight", "font-size", "fill-opacity", "opacity", "text-anchor"];

/** Load an image from its address. */
export async function loaded(address) {
  const image = new Image();
  image.src = address;
  await image.decode();
  return image;
}

/** Load a drawing of the page as it looks there, its colours by what ``inked`` makes of them, so many px wide and high. */
export async function drawn(svg, wide, high, inked = (colour) => colour) {
  const copy = svg.cloneNode(true);
  const [from, to] = [svg, copy].map((one) => [one, ...one.querySelectorAll("*")]);
  for (const [n, shape] of from.entries()) {
    const style = getComputedStyle(shape);
    for (const name of TAKEN) to[n].setAttribute(name, style.getPropertyValue(name));
    for (const name of ["fill", "stroke"]) {
      const colour = style.getPropertyValue(name);
      to[n].setAttribute(name, colour === "none" ? "none" : inked(colour));
    }
    if (!shape.hasAttribute("stroke-width")) to[n].setAttribute("stroke-width", style.strokeWidth);
  }
  copy.setAttribute("font-family", "sans-serif");
  copy.setAttribute("width", wide);
  copy.setAttribute("height", high);
  return loaded(`data:image/svg+xml,${encodeURIComponent(new XMLSerializer().serializeToString(copy))}`);
}

/** Paint a picture twice as fine as a screen; ``compose`` sets it in ink or only to measure, and gives where it ends. */
export function painted(wide, ground, compose) {
  const high = compose(document.createElement("canvas").getContext("2d"), false);
  const canvas = Object.assign(document.createElement("canvas"), { width: wide * 2, height: Math.ceil(high) * 2 });
  const pen = canvas.getContext("2d");
  pen.scale(2, 2);
  pen.fillStyle = ground;
  pen.fillRect(0, 0, wide, canvas.height);
  compose(pen, true);
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("no picture"))), "image/png");
  });
}

/** Break a text into lines that are not wider than that. */
export function broken(pen, text, wide) {
  const lines = [""];
  for (const word of text.split(" ").flatMap((one) => (pen.measureText(one).width > wide ? [...one] : [`${one} `]))) {
    if (lines.at(-1) && pen.measureText(lines.at(-1) + word.trimEnd()).width > wide) lines.push("");
    lines[lines.length - 1] += word;
  }
  return lines;
}
