// Small copies of photos: light enough to show in a list and to hand over over a weak link.

import { make } from "../page/elements.js";
import { addCopy, hasCopy, readCopy, readPhoto } from "../storage/photo_store.js";
import { digest } from "./digest.js";

/** @import { CopyRow } from "../storage/photo_store.js" */

const LONGEST_SIDE = 1600;
const QUALITY = 0.8;
// A blank picture, as some browsers draw when short of memory, is smaller than this as JPEG.
const LEAST_BYTES = 1_000;
// Pictures are decoded one after the other: a large picture takes 200 MB meanwhile.
/** @type {Promise<unknown>} */
let chain = Promise.resolve();
// A photo that gave no copy once is not decoded again while this page is open.
/** @type {Set<string>} */
const hopeless = new Set();

/**
 * The row of a photo's small copy, made now where there is none; null where this browser cannot
 * make it.
 *
 * @param {string} inspection
 * @param {string} sha
 * @returns {Promise<CopyRow | null | undefined>}
 */
export function copyOf(inspection, sha) {
  const made = chain
    .then(() => makeCopy(inspection, sha))
    .catch(() => {
      hopeless.add(sha);
      return null;
    });
  chain = made;
  return made;
}

/**
 * @param {string} inspection
 * @param {string} sha
 */
async function makeCopy(inspection, sha) {
  if (await hasCopy(inspection, sha)) return readCopy(inspection, sha);
  const row = await readPhoto(inspection, sha);
  if (!row?.bytes || hopeless.has(sha)) return null;
  const small = await shrink(new Blob([row.bytes], { type: row.type }));
  if (!small) throw new Error("this browser makes no copy of it");
  const bytes = await small.arrayBuffer();
  await addCopy(inspection, sha, bytes, await digest(bytes), true);
  return readCopy(inspection, sha);
}

/**
 * The picture upright as JPEG, its longer side at most LONGEST_SIDE; null where that saves nothing
 * or came out blank.
 *
 * @param {Blob} blob
 * @returns {Promise<Blob | null>}
 */
async function shrink(blob) {
  const whole = await createImageBitmap(blob, { imageOrientation: "from-image" });
  try {
    const small = await drawSmall(whole);
    const isJpeg = small?.type === "image/jpeg";
    if (!small || !isJpeg || small.size <= LEAST_BYTES) return null;
    return small.size < blob.size ? small : null;
  } finally {
    whole.close();
  }
}

/**
 * @param {ImageBitmap} whole
 * @returns {Promise<Blob | null>}
 */
async function drawSmall(whole) {
  const scale = Math.min(1, LONGEST_SIDE / Math.max(whole.width, whole.height));
  const width = Math.max(1, Math.round(whole.width * scale));
  const height = Math.max(1, Math.round(whole.height * scale));
  const canvas = makeCanvas(width, height);
  const surface = /** @type {CanvasRenderingContext2D} */ (canvas.getContext("2d"));
  surface.drawImage(whole, 0, 0, width, height);
  const small = await encode(canvas);
  canvas.width = 0; // gives the memory back at once
  return small;
}

/**
 * @param {number} width
 * @param {number} height
 * @returns {OffscreenCanvas | HTMLCanvasElement}
 */
function makeCanvas(width, height) {
  if (typeof OffscreenCanvas === "function") {
    const canvas = new OffscreenCanvas(width, height);
    // Some browsers have the class and cannot draw on it.
    if (canvas.getContext("2d")) return canvas;
  }
  return make("canvas", "", { width, height });
}

/**
 * @param {OffscreenCanvas | HTMLCanvasElement} canvas
 * @returns {Promise<Blob | null>}
 */
function encode(canvas) {
  if ("convertToBlob" in canvas) {
    return canvas.convertToBlob({ type: "image/jpeg", quality: QUALITY });
  }
  return new Promise((resolve) => {
    canvas.toBlob(resolve, "image/jpeg", QUALITY);
  });
}
