// What waits on this device, whichever inspection it belongs to.

import { HANDED, read } from "./database.js";
import { queuedPhotos, refusedPhotos } from "./photo_store.js";

/** @import { EntryRow } from "./entry_store.js" */

/** @returns {Promise<number>} entries and photos that the laptop does not have */
export async function countWaiting() {
  /** @type {EntryRow[]} */
  const rows = await read("entries", (store) => store.getAll());
  // A photo has an entry of its own, so every inspection is named there.
  const inspections = new Set(rows.map((row) => row.inspection));
  let waiting = rows.filter((row) => row.handed !== HANDED).length;
  for (const inspection of inspections) {
    waiting += (await queuedPhotos(inspection)).length + (await refusedPhotos(inspection)).length;
  }
  return waiting;
}
