// The only module that opens IndexedDB. One database per origin holds every inspection; keys are [inspection, id].
// What a promise here resolves with is on disk: "strict" waits for the write, and a promise resolves only after oncomplete.

const NAME = "inspection-walk", VERSION = 2;
let opening = null;

// Versions only ever add stores, so that an older page can go on working on a newer database.
function upgrade(database) {
  const queued = [["entries", ["inspection", "id"]], ["photos", ["inspection", "sha"]], ["copies", ["inspection", "sha"]]];
  for (const [store, path] of queued) {
    if (!database.objectStoreNames.contains(store)) database.createObjectStore(store, { keyPath: path }).createIndex("queue", ["inspection", "handed"]);
  }
  if (!database.objectStoreNames.contains("meta")) database.createObjectStore("meta");
}

function request(version) {
  return new Promise((resolve, reject) => {
    const asked = version ? indexedDB.open(NAME, version) : indexedDB.open(NAME);
    asked.onupgradeneeded = () => upgrade(asked.result);
    asked.onsuccess = () => {
      asked.result.onclose = () => { opening = null; };
      asked.result.onversionchange = () => { asked.result.close(); opening = null; };
      resolve(asked.result);
    };
    asked.onerror = () => reject(asked.error);
    asked.onblocked = () => reject(new Error("another tab with an older page holds the store; close it"));
  });
}

function open() {
  // A page of an older edition asks for an older version: it takes the newer one as it is.
  opening ??= request(VERSION).catch((error) => {
    if (error?.name === "VersionError") return request();
    throw error;
  });
  opening.catch(() => { opening = null; });
  return opening;
}

async function attempt(stores, mode, work) {
  const database = await open();
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(stores, mode, { durability: "strict" });
    const box = {};
    transaction.oncomplete = () => resolve(box.result);
    transaction.onabort = () => reject(transaction.error ?? box.error ?? new Error("the write was broken off"));
    try {
      work(transaction, box);
    } catch (error) {
      box.error = error;
      transaction.abort();
    }
  });
}

// Some browsers drop the connection of a tab in the background: discard the handle and try once more. The whole
// transaction is repeated, and an aborted one left nothing behind.
export async function run(stores, mode, work) {
  try {
    return await attempt(stores, mode, work);
  } catch (error) {
    if (error?.name === "QuotaExceededError" || error?.name === "ConstraintError") throw error;
    opening = null;
    return attempt(stores, mode, work);
  }
}

export const read = (store, ask) => run([store], "readonly", (transaction, box) => {
  ask(transaction.objectStore(store)).onsuccess = (event) => { box.result = event.target.result; };
});

export const range = (...prefix) => IDBKeyRange.bound(prefix, [...prefix, []]);

// Where a row of a store with a queue stands.
export const QUEUED = 0, HANDED = 1, REFUSED = 2;

// Change one row of a store where it is there; `change` gets the row and gives the new one.
export const amend = (store, key, change) => run([store], "readwrite", (transaction) => {
  const rows = transaction.objectStore(store);
  rows.get(key).onsuccess = (event) => { if (event.target.result) rows.put(change(event.target.result)); };
});

export const meta = (key) => read("meta", (store) => store.get(key));
export const setMeta = (key, value) => run(["meta"], "readwrite", (transaction) => transaction.objectStore("meta").put(value, key));
export const dropMeta = (key) => run(["meta"], "readwrite", (transaction) => transaction.objectStore("meta").delete(key));

// Every pair of the small store whose key begins so, as a Map.
export const metaWith = (prefix) => run(["meta"], "readonly", (transaction, box) => {
  box.result = new Map();
  transaction.objectStore("meta").openCursor(IDBKeyRange.bound(prefix, `${prefix}\uffff`)).onsuccess = (event) => {
    const cursor = event.target.result;
    if (!cursor) return;
    box.result.set(cursor.key, cursor.value);
    cursor.continue();
  };
});
