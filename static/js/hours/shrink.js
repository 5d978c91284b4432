// A photograph made smaller on the phone: a camera's is many times what is kept, and a slow line is spared.

const LONGEST = 2000; // px; the house scales to what it keeps

/** Put a smaller one in a field's place, turned upright; what cannot be read here is left as it is. */
export async function shrink(field) {
  const [file] = field.files;
  const image = file && (await createImageBitmap(file).catch(() => null));
  const scale = image ? LONGEST / Math.max(image.width, image.height) : 1;
  if (scale >= 1) return;
  const [width, height] = [image.width, image.height].map((side) => Math.round(side * scale));
  const canvas = Object.assign(document.createElement("canvas"), { width, height });
  canvas.getContext("2d").drawImage(image, 0, 0, width, height);
  const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", 0.9));
  if (!blob || field.files[0] !== file) return;
  const held = new DataTransfer();
  held.items.add(new File([blob], "photograph.jpg", { type: blob.type }));
  field.files = held.files;
}
