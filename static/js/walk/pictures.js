// The photos kept on this device: originals until the computer has them, small copies to show and to hand over first.
// Pixels are ArrayBuffers with a type, because some browsers cannot store a Blob.

import { amend, HANDED, QUEUED, read, REFUSED, run } from "./database.js";

export function addPhoto(inspection, sha, bytes, type) {
  return run(["photos"], "readwrite", (transaction) => {
    const store = transaction.objectStore("photos");
    store.get([inspection, sha]).onsuccess = (event) => {
      const row = event.target.result;
      // The same picture taken in again fills a row whose bytes were let go or refused.
      if (!row?.bytes || row.handed === REFUSED) store.put({ inspection, sha, type, bytes, handed: row?.handed === HANDED ? HANDED : QUEUED, why: "" });
    };
  });
}

// A small copy: made here (it waits to be handed over), or the computer's own thumbnail (it does not).
export function addCopy(inspection, sha, bytes, digest, own) {
  return run(["copies"], "readwrite", (transaction) => {
    const row = { inspection, sha, bytes, digest, type: "image/jpeg", handed: own ? QUEUED : HANDED, why: "" };
    transaction.objectStore("copies").put(row);
  });
}

export const photo = (inspection, sha) => read("photos", (store) => store.get([inspection, sha]));
export const copy = (inspection, sha) => read("copies", (store) => store.get([inspection, sha]));
export const hasCopy = async (inspection, sha) => (await read("copies", (store) => store.getKey([inspection, sha]))) !== undefined;

const keys = (store, state) => async (inspection) => {
  const found = await read(store, (rows) => rows.index("queue").getAllKeys([inspection, state]));
  return found.map(([, sha]) => sha);
};

export const queuedPhotos = keys("photos", QUEUED);
export const queuedCopies = keys("copies", QUEUED);
export const refusedPhotos = keys("photos", REFUSED);

// Handed over, or refused where a sentence says why.
export const setPhotoFate = (inspection, sha, why = "") =>
  amend("photos", [inspection, sha], (row) => ({ ...row, handed: why ? REFUSED : HANDED, why }));
export const setCopyFate = (inspection, sha, why = "") => amend("copies", [inspection, sha], (row) => ({ ...row, handed: HANDED, why }));

// The original may go once the computer has said that it has it, and a small copy stays here to look at.
export async function letGo(inspection, sha) {
  if ((await copy(inspection, sha))?.bytes) await amend("photos", [inspection, sha], (row) => (row.handed === HANDED ? { ...row, bytes: null } : row));
}

// Refused photos wait once more, because a photo can be hurt on the way; a broken one is refused again with its sentence.
export async function requeuePhotos(inspection, shas = null) {
  for (const sha of shas ?? (await refusedPhotos(inspection))) {
    await amend("photos", [inspection, sha], (row) => ({ ...row, handed: QUEUED, why: "" }));
  }
}
