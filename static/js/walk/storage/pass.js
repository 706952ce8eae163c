// Who this device is: the pass that a pairing gave, else an id of its own making. The pass is in
// the same store as the work, because a wiped store must lose both together.

import {
  QUEUED,
  readMeta,
  readMetaBeginningWith,
  read,
  REFUSED,
  run,
  updateRow,
  writeMeta,
} from "./database.js";

/** @import { EntryRow } from "./entry_store.js" */

/**
 * @typedef {object} Pass
 * @property {string} token
 * @property {string} device
 * @property {string} name
 */

const KEY = "pass";
/** The passes that this browser had before, by the device's id. */
const EARLIER = "earlier-passes";
const DEVICE_ID = /^[a-z0-9][a-z0-9-]{0,39}$/;

/**
 * Keep the pass that a pairing gave, and the one before it among the earlier ones. Resolves once
 * it is on disk.
 *
 * @param {Partial<Pass>} pass
 */
export async function keepPass(pass) {
  if (!pass?.token) throw new Error("A pass needs a token.");
  const { token, device = "", name = "" } = pass;
  const before = await readPass();
  if (before && before.device !== device) await keepEarlierPass(before);
  await writeMeta(KEY, { token, device, name });
}

/**
 * Another device's name under which this browser recorded, with the token that proves it.
 *
 * @param {Pass} pass
 */
export async function keepEarlierPass(pass) {
  const earlier = await earlierPasses();
  await writeMeta(EARLIER, { ...earlier, [pass.device]: pass });
}

/** @returns {Promise<Record<string, Pass>>} by the device's id */
async function earlierPasses() {
  return (await readMeta(EARLIER)) ?? {};
}

/**
 * What proves that this browser recorded under an earlier name, or "".
 *
 * @param {string} device
 * @returns {Promise<string>}
 */
export async function proofOf(device) {
  return (await earlierPasses())[device]?.token ?? "";
}

/**
 * Every name under which this browser has recorded, with its token where that is still here. What
 * waits under one of them is handed over by whichever name the browser has now.
 *
 * @returns {Promise<{ device: string, token: string }[]>}
 */
export async function namesUsed() {
  const earlier = await earlierPasses();
  const counted = await readMetaBeginningWith("count/");
  const rows = await allRows();
  const waiting = rows.filter((row) => [QUEUED, REFUSED].includes(row.handed));
  const own = (await readMeta("device")) ?? [];
  const names = new Set([
    ...Object.keys(earlier),
    ...[...counted].map(([key]) => key.split("/")[1]),
    ...waiting.map((row) => row.entry.device),
    ...[own].flat(),
  ]);
  return [...names].map((device) => ({ device, token: earlier[device]?.token ?? "" }));
}

/**
 * Let every refused entry wait once more: with another pass it may be taken.
 *
 * @returns {Promise<void>}
 */
export async function letRefusedWait() {
  const rows = await allRows();
  for (const { inspection, id } of rows.filter((row) => row.handed === REFUSED)) {
    await updateRow("entries", [inspection, id], (row) => ({ ...row, handed: QUEUED, why: "" }));
  }
}

/** @returns {Promise<EntryRow[]>} */
function allRows() {
  return read("entries", (store) => store.getAll());
}

/**
 * The pass of this device, or null where it was never paired.
 *
 * @returns {Promise<Pass | null>}
 */
export async function readPass() {
  return (await readMeta(KEY)) ?? null;
}

/**
 * The device's id: the paired id, else made once and kept.
 *
 * @returns {Promise<string>}
 */
export async function deviceId() {
  const pass = await readPass();
  if (pass && DEVICE_ID.test(pass.device)) return pass.device;
  const fresh = freshDeviceId();
  return run(["meta"], "readwrite", (transaction, box) => {
    const store = transaction.objectStore("meta");
    const request = store.get("device");
    request.onsuccess = () => {
      box.result = request.result ?? fresh;
      if (!request.result) store.put(fresh, "device");
    };
  });
}

/** @returns {string} */
function freshDeviceId() {
  // From the browser's own random source, because randomUUID is absent on plain http.
  const bytes = crypto.getRandomValues(new Uint8Array(6));
  return `phone-${Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("")}`;
}
