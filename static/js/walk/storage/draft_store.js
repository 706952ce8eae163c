// What is half-written on this device, by a key that begins with its kind and inspection.

import { deleteMeta, readMetaBeginningWith, writeMeta } from "./database.js";

/**
 * @param {string} key
 * @param {unknown} draft
 */
export function writeDraft(key, draft) {
  return writeMeta(key, draft);
}

/** @param {string} key */
export function deleteDraft(key) {
  return deleteMeta(key);
}

/**
 * @param {string} prefix of the keys
 * @returns {Promise<Map<string, any>>} key -> draft
 */
export function readDrafts(prefix) {
  return readMetaBeginningWith(prefix);
}
