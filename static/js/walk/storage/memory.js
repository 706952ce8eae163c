// Site data can be cleared under an open page, by a person or by the browser. A mark in the store
// tells that it happened; what the page still has in memory is then written back, with the counts
// from which numbers are given.

import { HANDED, QUEUED, readMeta, readMetaBeginningWith, run } from "./database.js";

/** @import { Entry, EntryRow } from "./entry_store.js" */

/** The single values without which the device would be another one. */
const KEPT_VALUES = ["device", "pass", "who"];

/** The store is not the one that this page has been writing to. */
export class Cleared extends Error {
  constructor() {
    super("the browser's data of this page were cleared");
  }
}

/** What a page remembers of the store. */
export class Memory {
  /** @type {string} the mark of the store that this page writes to */
  mark = "";
  /** @type {Map<string, File>} photos chosen on this page that still have to be handed over */
  files = new Map();
  /** @type {string[]} digests of all photos that wait on this device */
  waitingPhotos = [];
  /** @type {Map<string, any>} */
  #values = new Map();

  /** @param {string} inspection */
  constructor(inspection) {
    this.inspection = inspection;
    this.key = `mark/${inspection}`;
  }

  /**
   * The photos that wait now. Once one no longer waits, its file need not be remembered.
   *
   * @param {string[]} digests
   */
  expectPhotos(digests) {
    const done = this.waitingPhotos.filter((sha) => !digests.includes(sha));
    for (const sha of done) this.files.delete(sha);
    this.waitingPhotos = digests;
  }

  /** Mark the store, or take over the mark that another page of this inspection made. */
  async open() {
    this.mark = await run(["meta"], "readwrite", (transaction, box) => {
      adoptMark(transaction.objectStore("meta"), this.key, (mark) => (box.result = mark));
    });
    await this.#remember();
  }

  /**
   * Whether the store was cleared since this page opened it. Where it was not, the single values
   * are remembered as they are now.
   *
   * @returns {Promise<boolean>}
   */
  async isCleared() {
    if ((await readMeta(this.key)) !== this.mark) return true;
    await this.#remember();
    return false;
  }

  async #remember() {
    for (const [key, value] of await readMetaBeginningWith("count/")) this.#values.set(key, value);
    for (const key of KEPT_VALUES) {
      const value = await readMeta(key);
      if (value !== undefined) this.#values.set(key, value);
    }
  }

  /**
   * Write everything back in one transaction. A union: what another page has written meanwhile
   * stays, and a count is only ever raised.
   *
   * @param {Entry[]} entries all that this page knows
   * @returns {Promise<number>} how many entries of this device had to be written again
   */
  async writeBack(entries) {
    for (const entry of entries) this.#raise(entry);
    const own = this.#ownDevices();
    const { mark, count } = await run(["meta", "entries"], "readwrite", (transaction, box) => {
      const meta = transaction.objectStore("meta");
      const found = { mark: "", count: 0 };
      box.result = found;
      for (const [key, value] of this.#values) putBack(meta, key, value);
      for (const entry of entries) {
        const isOwn = own.has(entry.device);
        const row = {
          inspection: this.inspection,
          id: entry.id,
          handed: isOwn ? QUEUED : HANDED,
          why: "",
          entry,
        };
        addBack(transaction.objectStore("entries"), row, () => (found.count += Number(isOwn)));
      }
      adoptMark(meta, this.key, (adopted) => (found.mark = adopted));
    });
    this.mark = mark;
    return count;
  }

  /**
   * The remembered count of a device is never below a number that this page has seen.
   *
   * @param {Entry} entry
   */
  #raise({ device, id }) {
    const key = `count/${device}/${this.inspection}`;
    if (!this.#values.has(key)) return; // of somebody else
    const number = Number(id.slice(id.lastIndexOf(":") + 1));
    this.#values.set(key, Math.max(this.#values.get(key), number));
  }

  /** @returns {Set<string>} the names under which this browser recorded in this inspection */
  #ownDevices() {
    const keys = [...this.#values.keys()].filter((key) => key.startsWith("count/"));
    const parts = keys.map((key) => key.split("/"));
    return new Set(parts.filter((part) => part[2] === this.inspection).map((part) => part[1]));
  }
}

/**
 * The mark that is there, else a new one.
 *
 * @param {IDBObjectStore} meta
 * @param {string} key
 * @param {(mark: string) => void} adopted
 */
function adoptMark(meta, key, adopted) {
  const request = meta.get(key);
  request.onsuccess = () => {
    const mark = request.result ?? `${Date.now()}-${Math.random()}`;
    if (!request.result) meta.put(mark, key);
    adopted(mark);
  };
}

/**
 * @param {IDBObjectStore} meta
 * @param {string} key
 * @param {any} value
 */
function putBack(meta, key, value) {
  const request = meta.get(key);
  request.onsuccess = () => {
    const isLowCount = key.startsWith("count/") && request.result < value;
    if (request.result === undefined || isLowCount) meta.put(value, key);
  };
}

/**
 * @param {IDBObjectStore} rows
 * @param {EntryRow} row
 * @param {() => void} added called where it was not there
 */
function addBack(rows, row, added) {
  const request = rows.getKey([row.inspection, row.id]);
  request.onsuccess = () => {
    if (request.result !== undefined) return;
    rows.add(row);
    added();
  };
}
