// The photos kept on this device: originals until the computer has them, small copies to show and
// to hand over first. Pixels are ArrayBuffers with a type, because some browsers cannot store a
// Blob.

import { HANDED, QUEUED, read, REFUSED, run, updateRow } from "./database.js";

/**
 * @typedef {object} PhotoRow an original
 * @property {string} inspection
 * @property {string} sha SHA-256 of the original bytes, in hexadecimal
 * @property {ArrayBuffer | null} bytes null once the computer has the original
 * @property {string} type
 * @property {number} handed QUEUED, HANDED or REFUSED
 * @property {string} why the computer's sentence where it was refused
 */

/**
 * @typedef {object} CopyRow a small copy
 * @property {string} inspection
 * @property {string} sha SHA-256 of the original that it shows
 * @property {ArrayBuffer} bytes
 * @property {string} digest SHA-256 of the copy's own bytes; "" for the computer's thumbnail
 * @property {string} type
 * @property {number} handed
 * @property {string} why
 */

/**
 * Keep an original. The same picture taken again fills a row whose bytes were removed or refused.
 *
 * @param {string} inspection
 * @param {string} sha
 * @param {ArrayBuffer} bytes
 * @param {string} type
 * @returns {Promise<void>}
 */
export function addPhoto(inspection, sha, bytes, type) {
  return run(["photos"], "readwrite", (transaction) => {
    const store = transaction.objectStore("photos");
    const request = store.get([inspection, sha]);
    request.onsuccess = () => {
      /** @type {PhotoRow | undefined} */
      const row = request.result;
      if (row?.bytes && row.handed !== REFUSED) return;
      const handed = row?.handed === HANDED ? HANDED : QUEUED;
      store.put({ inspection, sha, type, bytes, handed, why: "" });
    };
  });
}

/**
 * Keep a small copy.
 *
 * @param {string} inspection
 * @param {string} sha
 * @param {ArrayBuffer} bytes
 * @param {string} digest
 * @param {boolean} madeHere whether it waits to be handed over; the computer's own thumbnail does
 *   not
 * @returns {Promise<void>}
 */
export function addCopy(inspection, sha, bytes, digest, madeHere) {
  return run(["copies"], "readwrite", (transaction) => {
    const handed = madeHere ? QUEUED : HANDED;
    /** @type {CopyRow} */
    const row = { inspection, sha, bytes, digest, type: "image/jpeg", handed, why: "" };
    transaction.objectStore("copies").put(row);
  });
}

/**
 * @param {string} inspection
 * @param {string} sha
 * @returns {Promise<PhotoRow | undefined>}
 */
export function readPhoto(inspection, sha) {
  return read("photos", (store) => store.get([inspection, sha]));
}

/**
 * @param {string} inspection
 * @param {string} sha
 * @returns {Promise<CopyRow | undefined>}
 */
export function readCopy(inspection, sha) {
  return read("copies", (store) => store.get([inspection, sha]));
}

/**
 * @param {string} inspection
 * @param {string} sha
 * @returns {Promise<boolean>}
 */
export async function hasCopy(inspection, sha) {
  const key = await read("copies", (store) => store.getKey([inspection, sha]));
  return key !== undefined;
}

/**
 * The digests of the photos whose row in a store is marked so.
 *
 * @param {string} store
 * @param {number} mark
 * @param {string} inspection
 * @returns {Promise<string[]>}
 */
async function marked(store, mark, inspection) {
  const keys = await read(store, (rows) => rows.index("queue").getAllKeys([inspection, mark]));
  return keys.map((key) => /** @type {[string, string]} */ (key)[1]);
}

/** @param {string} inspection */
export const queuedPhotos = (inspection) => marked("photos", QUEUED, inspection);
/** @param {string} inspection */
export const queuedCopies = (inspection) => marked("copies", QUEUED, inspection);
/** @param {string} inspection */
export const refusedPhotos = (inspection) => marked("photos", REFUSED, inspection);

/**
 * Mark an original as handed over, or as refused where a sentence says why.
 *
 * @param {string} inspection
 * @param {string} sha
 * @param {string} [why]
 */
export function markPhoto(inspection, sha, why = "") {
  return updatePhoto(inspection, sha, (row) => ({ ...row, handed: why ? REFUSED : HANDED, why }));
}

/**
 * Mark a small copy as done with. A copy that was refused does not wait either: its original
 * follows.
 *
 * @param {string} inspection
 * @param {string} sha
 * @param {string} [why]
 */
export function markCopy(inspection, sha, why = "") {
  return updateRow(
    "copies",
    [inspection, sha],
    /** @param {CopyRow} row */
    (row) => ({ ...row, handed: HANDED, why }),
  );
}

/**
 * Remove the bytes of an original that the computer has, where a small copy stays here to look at.
 *
 * @param {string} inspection
 * @param {string} sha
 */
export async function removeOriginal(inspection, sha) {
  const copy = await readCopy(inspection, sha);
  if (!copy?.bytes) return;
  await updatePhoto(inspection, sha, (row) =>
    row.handed === HANDED ? { ...row, bytes: null } : row,
  );
}

/**
 * Let refused photos wait once more, because a photo can be damaged on the way; a broken photo is
 * refused again with its sentence.
 *
 * @param {string} inspection
 * @param {string[] | null} [shas] all that were refused where it is left out
 */
export async function requeuePhotos(inspection, shas = null) {
  for (const sha of shas ?? (await refusedPhotos(inspection))) {
    await updatePhoto(inspection, sha, (row) => ({ ...row, handed: QUEUED, why: "" }));
  }
}

/**
 * @param {string} inspection
 * @param {string} sha
 * @param {(row: PhotoRow) => PhotoRow} change
 */
function updatePhoto(inspection, sha, change) {
  return updateRow("photos", [inspection, sha], change);
}
