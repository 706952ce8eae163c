// Photos after the site data were cleared: a file that was chosen on this page can be read once
// more, as long as the camera's own copy of it is there.

import { addPhoto, queuedPhotos } from "./photo_store.js";

/** @import { Memory } from "./memory.js" */

/**
 * Put the photos back that waited to be handed over.
 *
 * @param {Memory} memory
 * @returns {Promise<{ photos: number, lost: number }>} how many are back, and how many are not
 */
export async function putBackPhotos(memory) {
  const present = await queuedPhotos(memory.inspection);
  const missing = memory.waitingPhotos.filter((sha) => !present.includes(sha));
  const back = await Promise.all(missing.map((sha) => putBack(memory, sha)));
  const photos = back.filter(Boolean).length;
  return { photos, lost: missing.length - photos };
}

/**
 * @param {Memory} memory
 * @param {string} sha
 * @returns {Promise<boolean>} whether it could be read
 */
async function putBack({ files, inspection }, sha) {
  const file = files.get(sha);
  // A browser refuses to read a file that was changed since it was chosen.
  const bytes = await file?.arrayBuffer().catch(() => null);
  if (!file || !bytes) return false;
  await addPhoto(inspection, sha, bytes, file.type);
  return true;
}
