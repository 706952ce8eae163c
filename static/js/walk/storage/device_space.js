// What this device can keep: space, and whether the browser may throw it away. On plain http
// browsers do not say.

import { deleteMeta, readMeta, writeMeta } from "./database.js";

const ENOUGH_BYTES = 500e6;
const NEARLY_FULL_BYTES = 200e6;
const PATIENCE_MS = 2_000;

/**
 * @typedef {object} DeviceSpace
 * @property {number | null} left bytes, null where the browser does not say
 * @property {boolean | null} persistent whether it was promised not to be cleared
 */

/** @returns {Promise<DeviceSpace>} */
export async function deviceSpace() {
  // Absent on plain http, whatever the types say.
  const manager = /** @type {StorageManager | undefined} */ (navigator.storage);
  const estimate = await manager?.estimate?.().catch(() => null);
  const persistent = await manager?.persisted?.().catch(() => null);
  const left = estimate ? (estimate.quota ?? NaN) - (estimate.usage ?? NaN) : null;
  return { left, persistent: persistent ?? null };
}

/**
 * Ask the browser not to clear what is kept.
 *
 * @returns {Promise<boolean | null>} what it answers; null where it does not, or asks the person,
 *   who
 *   may take time
 */
export async function askToPersist() {
  const manager = /** @type {StorageManager | undefined} */ (navigator.storage);
  /** @type {Promise<null>} */
  const later = new Promise((resolve) => {
    setTimeout(resolve, PATIENCE_MS, null);
  });
  const answer = manager?.persist?.().catch(() => false) ?? null;
  return Promise.race([answer, later]);
}

/**
 * @param {number} left bytes
 * @returns {boolean} whether a day of photos fits
 */
export function isEnough(left) {
  return left > ENOUGH_BYTES;
}

/**
 * @param {number} left bytes
 * @returns {boolean}
 */
export function isNearlyFull(left) {
  return left < NEARLY_FULL_BYTES;
}

/**
 * Whether this device keeps what is written: a test record is written, read back and removed.
 *
 * @returns {Promise<boolean>}
 */
export async function writesAndReads() {
  const mark = `${Date.now()}-${Math.random()}`;
  const key = `test-record/${mark}`;
  await writeMeta(key, mark);
  const readBack = await readMeta(key);
  await deleteMeta(key);
  return readBack === mark;
}
