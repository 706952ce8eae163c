// The last resort: what this device has as one file, which works on plain http and without any
// contact: every entry, also those of others, which the computer may have lost, and the photos that
// wait. The file is put together from small pieces, one photo at a time, so that
// hundreds of megabytes need no single string.

import { make } from "../page/elements.js";
import { allEntries } from "../storage/entry_store.js";
import { queuedPhotos, readPhoto, refusedPhotos } from "../storage/photo_store.js";

/** @import { Log } from "../record/log.js" */

// Divisible by three, so that the pieces' base64 joins without padding in between.
const PIECE_BYTES = 3 * 16 * 1024;
// The browser may begin to save only after the click has returned.
const KEEP_ADDRESS_MS = 60_000;

/**
 * Offer the file of what this device has.
 *
 * @param {Log} log
 */
export async function saveWaiting(log) {
  const { inspection, device } = log;
  const address = URL.createObjectURL(await waitingFile(inspection, device));
  const download = `waiting-${inspection}-${device}.json`;
  make("a", "", { href: address, download }).click();
  setTimeout(() => URL.revokeObjectURL(address), KEEP_ADDRESS_MS);
}

/**
 * The file: {"format", "version", "inspection", "device", "entries": [...],
 * "photos": [{"sha256", "kind", "base64"}]}.
 *
 * @param {string} inspection
 * @param {string} device
 * @returns {Promise<Blob>}
 */
async function waitingFile(inspection, device) {
  const rows = await allEntries(inspection);
  const entries = rows.map((row) => row.entry);
  const format = "inspector-waiting";
  const head = JSON.stringify({ format, version: 1, inspection, device, entries });
  const photos = await photosAsJson(inspection);
  const separated = photos.flatMap((photo, index) => (index ? [",", photo] : [photo]));
  const parts = [head.slice(0, -1), ',"photos":[', ...separated, "]}\n"];
  return new Blob(parts, { type: "application/json" });
}

/**
 * @param {string} inspection
 * @returns {Promise<Blob[]>} the JSON object of each photo
 */
async function photosAsJson(inspection) {
  const digests = [...(await queuedPhotos(inspection)), ...(await refusedPhotos(inspection))];
  const photos = [];
  for (const sha of digests) {
    const row = await readPhoto(inspection, sha);
    if (!row?.bytes) continue;
    const kind = row.type.replace("image/", "");
    // Each photo becomes a Blob of its own at once: the browser may put it on disk, and the text
    // can be dropped from memory.
    const head = `{"sha256":"${sha}","kind":"${kind}","base64":"`;
    photos.push(new Blob([head, ...base64(new Uint8Array(row.bytes)), '"}']));
  }
  return photos;
}

/**
 * @param {Uint8Array} bytes
 * @returns {string[]} in pieces
 */
function base64(bytes) {
  const pieces = [];
  for (let start = 0; start < bytes.length; start += PIECE_BYTES) {
    const piece = bytes.subarray(start, start + PIECE_BYTES);
    const characters = Array.from(piece, (byte) => String.fromCharCode(byte));
    pieces.push(btoa(characters.join("")));
  }
  return pieces;
}
