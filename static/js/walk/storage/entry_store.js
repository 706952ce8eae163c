// The entries kept on this device, and which of them wait to be handed over. An entry is never
// deleted here, only marked.

import { vocabulary } from "../page/vocabulary.js";
import {
  HANDED,
  keysBeginningWith,
  QUEUED,
  read,
  readMetaBeginningWith,
  REFUSED,
  run,
  updateRow,
} from "./database.js";
import { Cleared } from "./memory.js";

/** @import { Memory } from "./memory.js" */

/**
 * One recorded answer, as it is kept and exchanged.
 *
 * @typedef {object} Entry
 * @property {string} id the device and its running number, `phone:12`
 * @property {string} at ISO time by the device's own clock
 * @property {string} device
 * @property {string} who
 * @property {string} subject what it is about, `sheet/<system>/<unit>/<check>`
 * @property {string} field
 * @property {any} value null takes an answer away
 * @property {string[]} replaces ids of the entries that the author saw in this field
 */

/** @typedef {Omit<Entry, "id">} Draft an entry that has no number yet */

/**
 * @typedef {object} EntryRow
 * @property {string} inspection
 * @property {string} id
 * @property {number} handed QUEUED, HANDED or REFUSED
 * @property {string} why the computer's sentence where it was refused
 * @property {Entry} entry
 */

/**
 * @param {unknown} outcome
 * @returns {outcome is string}
 */
function isRefusal(outcome) {
  return typeof outcome === "string" && outcome.startsWith(vocabulary.outcomes.refused);
}

/**
 * Whether the computer's word is an outcome that an entry can have; any other word leaves it
 * queued.
 *
 * @param {unknown} outcome
 * @returns {boolean}
 */
export function isOutcome(outcome) {
  if (isRefusal(outcome)) return true;
  return typeof outcome === "string" && vocabulary.outcomes.taken.includes(outcome);
}

/**
 * Number the drafts and store them in one transaction. The count runs per device and inspection,
 * without holes, so that the other side of a hand-over can tell whether an entry is missing; two
 * tabs cannot be given the same number.
 *
 * @param {Memory} memory of the inspection
 * @param {string} device
 * @param {Draft[]} drafts
 * @returns {Promise<Entry[]>}
 * @throws {Cleared} where the store was cleared: no number may be given then
 */
export function addEntries(memory, device, drafts) {
  const { inspection } = memory;
  return run(["meta", "entries"], "readwrite", (transaction, box) => {
    const counters = transaction.objectStore("meta");
    const store = transaction.objectStore("entries");
    const markRequest = counters.get(memory.key);
    markRequest.onsuccess = () => {
      if (markRequest.result === memory.mark) return;
      box.error = new Cleared();
      transaction.abort();
    };
    const key = countKey(inspection, device);
    const request = counters.get(key);
    request.onsuccess = () => {
      const last = request.result ?? 0;
      const entries = drafts.map((draft, index) => ({
        id: `${device}:${last + 1 + index}`,
        ...draft,
      }));
      counters.put(last + drafts.length, key);
      try {
        for (const entry of entries) store.add(rowOf(inspection, entry, QUEUED));
      } catch {
        // The browser broke the transaction off between two rows, as on a full disk: its own end
        // says so to whoever waits for it.
        return;
      }
      box.result = entries;
    };
  });
}

/**
 * @param {string} inspection
 * @param {Entry} entry
 * @param {number} handed
 * @returns {EntryRow}
 */
function rowOf(inspection, entry, handed) {
  return { inspection, id: entry.id, handed, why: "", entry };
}

/**
 * @param {string} inspection
 * @param {string} device
 */
function countKey(inspection, device) {
  return `count/${device}/${inspection}`;
}

/**
 * How many entries of this inspection were made on this browser under each of its names. It has two
 * names once it is paired.
 *
 * @param {string} inspection
 * @returns {Promise<Map<string, number>>} device -> count
 */
export async function ownCounts(inspection) {
  const counts = new Map();
  for (const [key, count] of await readMetaBeginningWith("count/")) {
    const [, device, counted] = key.split("/");
    if (counted === inspection) counts.set(device, count);
  }
  return counts;
}

/**
 * Store entries that came from the other side. What is here already stays as it is, its place in
 * the queue too.
 *
 * @param {string} inspection
 * @param {Entry[]} entries
 * @returns {Promise<void>}
 */
export function storeReceived(inspection, entries) {
  return run(["entries", "meta"], "readwrite", (transaction) => {
    const store = transaction.objectStore("entries");
    for (const entry of entries) {
      const request = store.getKey([inspection, entry.id]);
      request.onsuccess = () => {
        if (request.result === undefined) store.add(rowOf(inspection, entry, HANDED));
      };
    }
    raiseCount(transaction.objectStore("meta"), inspection, entries);
  });
}

/**
 * A browser whose store was wiped and that was paired again under its old name must not give a
 * number twice.
 *
 * @param {IDBObjectStore} counters
 * @param {string} inspection
 * @param {Entry[]} entries
 */
function raiseCount(counters, inspection, entries) {
  const passRequest = counters.get("pass");
  passRequest.onsuccess = () => {
    const device = passRequest.result?.device;
    const own = entries.filter((entry) => entry.device === device);
    if (!device || !own.length) return;
    const numbers = own.map((entry) => Number(entry.id.split(":")[1]));
    const highest = numbers.reduce((a, b) => Math.max(a, b));
    const key = countKey(inspection, device);
    const countRequest = counters.get(key);
    countRequest.onsuccess = () => {
      if ((countRequest.result ?? 0) < highest) counters.put(highest, key);
    };
  };
}

/**
 * The rows of these ids, undefined for each that is not there.
 *
 * @param {string} inspection
 * @param {string[]} ids
 * @returns {Promise<(EntryRow | undefined)[]>}
 */
export function entryRows(inspection, ids) {
  return run(["entries"], "readonly", (transaction, box) => {
    /** @type {(EntryRow | undefined)[]} */
    const rows = [];
    box.result = rows;
    for (const id of ids) {
      const request = transaction.objectStore("entries").get([inspection, id]);
      request.onsuccess = () => rows.push(request.result);
    }
  });
}

/**
 * @param {string} inspection
 * @returns {Promise<EntryRow[]>}
 */
export function allEntries(inspection) {
  return read("entries", (store) => store.getAll(keysBeginningWith(inspection)));
}

/**
 * @param {string} inspection
 * @param {number} [most] at most so many; all where it is left out
 * @returns {Promise<EntryRow[]>}
 */
export function queuedEntries(inspection, most) {
  return read("entries", (store) => store.index("queue").getAll([inspection, QUEUED], most));
}

/**
 * @param {string} inspection
 * @returns {Promise<EntryRow[]>}
 */
export function handedEntries(inspection) {
  return read("entries", (store) => store.index("queue").getAll([inspection, HANDED]));
}

/**
 * @param {string} inspection
 * @returns {Promise<EntryRow[]>}
 */
export function refusedEntries(inspection) {
  return read("entries", (store) => store.index("queue").getAll([inspection, REFUSED]));
}

/**
 * Mark entries with the outcomes that the other side echoed. Only an echoed id leaves the queue,
 * and nothing is deleted.
 *
 * @param {string} inspection
 * @param {Record<string, unknown>} outcomes id -> outcome
 * @returns {Promise<void>}
 */
export function markOutcomes(inspection, outcomes) {
  return run(["entries"], "readwrite", (transaction) => {
    const store = transaction.objectStore("entries");
    for (const [id, outcome] of Object.entries(outcomes)) {
      if (!isOutcome(outcome)) continue;
      const mark = isRefusal(outcome)
        ? { handed: REFUSED, why: outcome }
        : { handed: HANDED, why: "" };
      const request = store.get([inspection, id]);
      request.onsuccess = () => {
        if (request.result) store.put({ ...request.result, ...mark });
      };
    }
  });
}

/**
 * Let entries wait once more, because the other side misses them or a person asked for it.
 *
 * @param {string} inspection
 * @param {string[]} ids
 */
export async function requeueEntries(inspection, ids) {
  for (const id of ids) {
    await updateRow(
      "entries",
      [inspection, id],
      /** @param {EntryRow} row */
      (row) => ({ ...row, handed: QUEUED, why: "" }),
    );
  }
}
