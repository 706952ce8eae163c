// The only module that opens IndexedDB. One database per origin holds every inspection; keys are [inspection, id].
// What a promise here resolves with is on disk: "strict" waits for the write, and a promise resolves only after oncomplete.

const NAME = "inspection-walk";
const QUEUED = 0, HANDED = 1, REFUSED = 2;
let opening = null;

function open() {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => {
      for (const [store, path] of [["entries", ["inspection", "id"]], ["photos", ["inspection", "sha"]]]) {
        request.result.createObjectStore(store, { keyPath: path }).createIndex("queue", ["inspection", "handed"]);
      }
      request.result.createObjectStore("meta");
    };
    request.onsuccess = () => {
      request.result.onclose = () => { opening = null; };
      request.result.onversionchange = () => { request.result.close(); opening = null; };
      resolve(request.result);
    };
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error("another tab holds the store"));
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
async function run(stores, mode, work) {
  try {
    return await attempt(stores, mode, work);
  } catch (error) {
    if (error?.name === "QuotaExceededError" || error?.name === "ConstraintError") throw error;
    opening = null;
    return attempt(stores, mode, work);
  }
}

const read = (store, ask) => run([store], "readonly", (transaction, box) => {
  ask(transaction.objectStore(store)).onsuccess = (event) => { box.result = event.target.result; };
});

const range = (...prefix) => IDBKeyRange.bound(prefix, [...prefix, []]);

export const meta = (key) => read("meta", (store) => store.get(key));
export const setMeta = (key, value) => run(["meta"], "readwrite", (transaction) => transaction.objectStore("meta").put(value, key));

// The device's id: made once, from the browser's own random source, because randomUUID is absent on plain http.
export async function deviceId() {
  const fresh = "phone-" + Array.from(crypto.getRandomValues(new Uint8Array(6)), (byte) => byte.toString(16).padStart(2, "0")).join("");
  return run(["meta"], "readwrite", (transaction, box) => {
    const store = transaction.objectStore("meta");
    store.get("device").onsuccess = (event) => {
      box.result = event.target.result ?? fresh;
      if (!event.target.result) store.put(fresh, "device");
    };
  });
}

// Number the drafts and store them in one transaction. The count runs per device and inspection, without holes, so that
// the other side of a hand-over can tell whether one is missing; two tabs cannot be given the same number.
export function addEntries(inspection, device, drafts) {
  return run(["meta", "entries"], "readwrite", (transaction, box) => {
    const counters = transaction.objectStore("meta");
    const key = `count/${device}/${inspection}`;
    counters.get(key).onsuccess = (event) => {
      const from = event.target.result ?? 0;
      box.result = drafts.map((draft, index) => ({ id: `${device}:${from + 1 + index}`, ...draft }));
      counters.put(from + drafts.length, key);
      for (const entry of box.result) transaction.objectStore("entries").add({ inspection, id: entry.id, handed: QUEUED, why: "", entry });
    };
  });
}

// Entries that came from the other side. What is here already stays as it is, its place in the queue too.
export function takeIn(inspection, entries) {
  return run(["entries"], "readwrite", (transaction, box) => {
    const store = transaction.objectStore("entries");
    box.result = [];
    for (const entry of entries) {
      store.getKey([inspection, entry.id]).onsuccess = (event) => {
        if (event.target.result !== undefined) return;
        store.add({ inspection, id: entry.id, handed: HANDED, why: "", entry });
        box.result.push(entry);
      };
    }
  });
}

export const entryRow = (inspection, id) => read("entries", (store) => store.get([inspection, id]));
export const allEntries = (inspection) => read("entries", (store) => store.getAll(range(inspection)));
export const queuedEntries = (inspection, most) => read("entries", (store) => store.index("queue").getAll([inspection, QUEUED], most));
export const countQueued = (inspection, store = "entries") => read(store, (rows) => rows.index("queue").count([inspection, QUEUED]));
export const refusedRows = (inspection) => read("entries", (store) => store.index("queue").getAll([inspection, REFUSED]));

// Fates as the other side echoed them, id -> sentence; only an echoed id leaves the queue, and nothing is deleted.
export function setFates(inspection, fates) {
  return run(["entries"], "readwrite", (transaction) => {
    const store = transaction.objectStore("entries");
    for (const [id, fate] of Object.entries(fates)) {
      const refused = fate.startsWith("refused");
      if (!refused && fate !== "stored" && fate !== "already had") continue;
      store.get([inspection, id]).onsuccess = (event) => {
        const row = event.target.result;
        if (row) store.put({ ...row, handed: refused ? REFUSED : HANDED, why: refused ? fate : "" });
      };
    }
  });
}

// A photo is kept as an ArrayBuffer with its type: some browsers cannot store a Blob.
export function addPhoto(inspection, sha, bytes, type) {
  return run(["photos"], "readwrite", (transaction) => {
    const store = transaction.objectStore("photos");
    store.getKey([inspection, sha]).onsuccess = (event) => {
      if (event.target.result === undefined) store.add({ inspection, sha, type, bytes, handed: QUEUED, why: "" });
    };
  });
}

export const photo = (inspection, sha) => read("photos", (store) => store.get([inspection, sha]));
export const queuedPhotoKeys = (inspection) => read("photos", (store) => store.index("queue").getAllKeys([inspection, QUEUED]));
export const refusedPhotoKeys = (inspection) => read("photos", (store) => store.index("queue").getAllKeys([inspection, REFUSED]));

export function setPhotoFate(inspection, sha, why = "") {
  return run(["photos"], "readwrite", (transaction) => {
    const store = transaction.objectStore("photos");
    store.get([inspection, sha]).onsuccess = (event) => {
      const row = event.target.result;
      if (row) store.put({ ...row, handed: why ? REFUSED : HANDED, why });
    };
  });
}

// Refused photos wait once more, because a photo can be hurt on the way; a broken one is refused again with its sentence.
export function requeuePhotos(inspection) {
  return run(["photos"], "readwrite", (transaction) => {
    transaction.objectStore("photos").index("queue").openCursor([inspection, REFUSED]).onsuccess = (event) => {
      const cursor = event.target.result;
      if (!cursor) return;
      cursor.update({ ...cursor.value, handed: QUEUED });
      cursor.continue();
    };
  });
}
