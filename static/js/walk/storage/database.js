// The only module that opens IndexedDB. One database per origin holds every inspection; keys are
// [inspection, id]. What a promise here resolves with is on disk: "strict" waits for the write, and
// a promise resolves only after oncomplete.

/**
 * What the work of a transaction leaves for its caller.
 *
 * @template T
 * @typedef {{ result?: T, error?: unknown }} Box
 */

const NAME = "inspection-walk";
const VERSION = 2;
/** @type {Promise<IDBDatabase> | null} */
let opening = null;
/** @type {() => void} */
let closed = () => {};

/** Whether a row of a store with a queue waits, was handed over, or was refused. */
export const QUEUED = 0;
export const HANDED = 1;
export const REFUSED = 2;

/**
 * Create the stores that are missing. Versions only ever add stores, so that an older page can go
 * on working on a newer database.
 *
 * @param {IDBDatabase} database
 */
function upgrade(database) {
  const queues = { entries: "id", photos: "sha", copies: "sha" };
  for (const [store, key] of Object.entries(queues)) {
    if (database.objectStoreNames.contains(store)) continue;
    const rows = database.createObjectStore(store, { keyPath: ["inspection", key] });
    rows.createIndex("queue", ["inspection", "handed"]);
  }
  if (!database.objectStoreNames.contains("meta")) database.createObjectStore("meta");
}

/**
 * @param {number} [version] the newest one where it is left out
 * @returns {Promise<IDBDatabase>}
 */
function openVersion(version) {
  return new Promise((resolve, reject) => {
    const request = version ? indexedDB.open(NAME, version) : indexedDB.open(NAME);
    request.onupgradeneeded = () => upgrade(request.result);
    request.onsuccess = () => {
      const database = request.result;
      database.onclose = lost;
      database.onversionchange = () => {
        database.close();
        lost();
      };
      resolve(database);
    };
    request.onerror = () => reject(request.error);
    request.onblocked = () =>
      reject(new Error("another tab with an older page holds the store; close it"));
  });
}

/** The next call opens the database anew. */
function forget() {
  opening = null;
}

/** Somebody else closed the database: a newer page upgrades it, or site data are cleared. */
function lost() {
  forget();
  closed();
}

/** @param {() => void} listener called whenever the database was closed from outside */
export function whenClosed(listener) {
  closed = listener;
}

/** @returns {Promise<IDBDatabase>} */
function open() {
  // A page of an older edition asks for an older version: it takes the newer one as it is.
  opening ??= openVersion(VERSION).catch((error) => {
    if (error?.name === "VersionError") return openVersion();
    throw error;
  });
  opening.catch(forget);
  return opening;
}

/**
 * @template T
 * @param {string[]} stores
 * @param {IDBTransactionMode} mode
 * @param {(transaction: IDBTransaction, box: Box<T>) => void} work
 * @returns {Promise<T>}
 */
async function attempt(stores, mode, work) {
  const database = await open();
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(stores, mode, { durability: "strict" });
    /** @type {Box<T>} */
    const box = {};
    transaction.oncomplete = () => resolve(/** @type {T} */ (box.result));
    transaction.onabort = () =>
      reject(transaction.error ?? box.error ?? new Error("the write was broken off"));
    try {
      work(transaction, box);
    } catch (error) {
      box.error = error;
      transaction.abort();
    }
  });
}

/**
 * Do some work in one transaction. Resolves with `box.result` once everything is on disk.
 *
 * @template T
 * @param {string[]} stores
 * @param {IDBTransactionMode} mode
 * @param {(transaction: IDBTransaction, box: Box<T>) => void} work
 * @returns {Promise<T>}
 */
export async function run(stores, mode, work) {
  try {
    return await attempt(stores, mode, work);
  } catch (error) {
    const name = /** @type {{ name?: string } | null} */ (error)?.name;
    if (name === "QuotaExceededError" || name === "ConstraintError") throw error;
    // Some browsers drop the connection of a tab in the background: discard the handle and try once
    // more. The whole transaction is repeated, and an aborted one has left nothing behind.
    forget();
    return attempt(stores, mode, work);
  }
}

/**
 * The result of one request to one store.
 *
 * @template T
 * @param {string} store
 * @param {(rows: IDBObjectStore) => IDBRequest<T>} ask
 * @returns {Promise<T>}
 */
export function read(store, ask) {
  return run([store], "readonly", (transaction, box) => {
    const request = ask(transaction.objectStore(store));
    request.onsuccess = () => {
      box.result = request.result;
    };
  });
}

/**
 * Every key that begins with these parts.
 *
 * @param {...string} prefix
 * @returns {IDBKeyRange}
 */
export function keysBeginningWith(...prefix) {
  // A list sorts after every text, so that nothing longer than the prefix is left out.
  return IDBKeyRange.bound(prefix, [...prefix, []]);
}

/**
 * Change one row of a store where it is there.
 *
 * @template Row
 * @param {string} store
 * @param {IDBValidKey} key
 * @param {(row: Row) => Row} change
 * @returns {Promise<void>}
 */
export function updateRow(store, key, change) {
  return run([store], "readwrite", (transaction) => {
    const rows = transaction.objectStore(store);
    const request = rows.get(key);
    request.onsuccess = () => {
      if (request.result) rows.put(change(request.result));
    };
  });
}

/**
 * A value of the small store for single values; undefined where there is none.
 *
 * @param {string} key
 * @returns {Promise<any>}
 */
export function readMeta(key) {
  return read("meta", (store) => store.get(key));
}

/**
 * @param {string} key
 * @param {unknown} value
 * @returns {Promise<void>}
 */
export function writeMeta(key, value) {
  return run(["meta"], "readwrite", (transaction) => {
    transaction.objectStore("meta").put(value, key);
  });
}

/**
 * @param {string} key
 * @returns {Promise<void>}
 */
export function deleteMeta(key) {
  return run(["meta"], "readwrite", (transaction) => {
    transaction.objectStore("meta").delete(key);
  });
}

/**
 * Every pair of the small store whose key begins with this text.
 *
 * @param {string} prefix
 * @returns {Promise<Map<string, any>>}
 */
export function readMetaBeginningWith(prefix) {
  return run(["meta"], "readonly", (transaction, box) => {
    /** @type {Map<string, any>} */
    const pairs = new Map();
    box.result = pairs;
    const range = IDBKeyRange.bound(prefix, `${prefix}\uffff`);
    const request = transaction.objectStore("meta").openCursor(range);
    request.onsuccess = () => {
      const cursor = request.result;
      if (!cursor) return;
      pairs.set(String(cursor.key), cursor.value);
      cursor.continue();
    };
  });
}
