// Small copies of photos: light enough to show in a list and to hand over over a weak link.

import { digest } from "./digest.js";
import { addCopy, copy, hasCopy, photo } from "./pictures.js";

const EDGE = 1600, QUALITY = 0.8, LEAST = 1_000;
// One picture is decoded at a time: a large one takes 200 MB while it is.
let chain = Promise.resolve();
// What gave no copy once is not decoded again while this page is open.
const hopeless = new Set();

// The row of a photo's small copy, made now where there is none; null where this browser cannot make one.
export function copyOf(inspection, sha) {
  const made = chain.then(() => make(inspection, sha)).catch(() => { hopeless.add(sha); return null; });
  chain = made;
  return made;
}

async function make(inspection, sha) {
  if (await hasCopy(inspection, sha)) return copy(inspection, sha);
  const row = await photo(inspection, sha);
  if (!row?.bytes || hopeless.has(sha)) return null;
  const small = await shrink(new Blob([row.bytes], { type: row.type }));
  if (!small) throw new Error("no copy is to be had");
  const bytes = await small.arrayBuffer();
  await addCopy(inspection, sha, bytes, await digest(bytes), true);
  return copy(inspection, sha);
}

// At most EDGE pixels on the longer side, upright, as JPEG; null where it would be no gain or came out blank.
async function shrink(blob) {
  const whole = await createImageBitmap(blob, { imageOrientation: "from-image" });
  const scale = Math.min(1, EDGE / Math.max(whole.width, whole.height));
  const [width, height] = [whole.width, whole.height].map((side) => Math.max(1, Math.round(side * scale)));
  try {
    const surface = canvas(width, height);
    surface.getContext("2d").drawImage(whole, 0, 0, width, height);
    const small = await encoded(surface);
    surface.width = 0; // gives the memory back at once
    return small && small.type === "image/jpeg" && small.size > LEAST && small.size < blob.size ? small : null;
  } finally {
    whole.close();
  }
}

function canvas(width, height) {
  if (typeof OffscreenCanvas === "function") {
    const surface = new OffscreenCanvas(width, height);
    if (surface.getContext("2d")) return surface;
  }
  return Object.assign(document.createElement("canvas"), { width, height });
}

function encoded(surface) {
  if (surface.convertToBlob) return surface.convertToBlob({ type: "image/jpeg", quality: QUALITY });
  return new Promise((resolve) => { surface.toBlob(resolve, "image/jpeg", QUALITY); });
}
