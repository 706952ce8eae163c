// The entries kept on this device, and which of them wait. An entry is never deleted here, only marked.

import { amend, HANDED, metaWith, QUEUED, range, read, REFUSED, run } from "./database.js";

const TAKEN = ["stored", "already had", "kept", "known"];
const isRefusal = (fate) => typeof fate === "string" && fate.startsWith("refused");

// Whether this is a fate that an entry can have; any other word leaves it in the queue.
export const isFate = (fate) => TAKEN.includes(fate) || isRefusal(fate);

// Number the drafts and store them in one transaction. The count runs per device and inspection, without holes, so that
// the other side of a hand-over can tell whether one is missing; two tabs cannot be given the same number.
export function addEntries(inspection, device, drafts) {
  return run(["meta", "entries"], "readwrite", (transaction, box) => {
    const counters = transaction.objectStore("meta");
    const key = countKey(inspection, device);
    counters.get(key).onsuccess = (event) => {
      const from = event.target.result ?? 0;
      box.result = drafts.map((draft, index) => ({ id: `${device}:${from + 1 + index}`, ...draft }));
      counters.put(from + drafts.length, key);
      for (const entry of box.result) transaction.objectStore("entries").add({ inspection, id: entry.id, handed: QUEUED, why: "", entry });
    };
  });
}

const countKey = (inspection, device) => `count/${device}/${inspection}`;

// device -> how many entries of this inspection were made on this browser under that name (it has two once it is paired).
export async function ownCounts(inspection) {
  const counts = await metaWith("count/");
  return new Map([...counts].map(([key, count]) => [...key.split("/"), count]).filter((one) => one[2] === inspection).map((one) => [one[1], one[3]]));
}

// Entries that came from the other side. What is here already stays as it is, its place in the queue too.
export function takeIn(inspection, entries) {
  return run(["entries", "meta"], "readwrite", (transaction) => {
    const store = transaction.objectStore("entries");
    for (const entry of entries) {
      store.getKey([inspection, entry.id]).onsuccess = (event) => {
        if (event.target.result === undefined) store.add({ inspection, id: entry.id, handed: HANDED, why: "", entry });
      };
    }
    raiseCount(transaction.objectStore("meta"), inspection, entries);
  });
}

// A browser whose store was wiped and that was paired again under its old name must not give a number twice.
function raiseCount(counters, inspection, entries) {
  counters.get("pass").onsuccess = (event) => {
    const device = event.target.result?.device;
    const numbers = entries.filter((entry) => entry.device === device).map((entry) => Number(entry.id.split(":")[1]));
    if (!device || !numbers.length) return;
    const key = countKey(inspection, device), highest = numbers.reduce((a, b) => Math.max(a, b));
    counters.get(key).onsuccess = (found) => { if ((found.target.result ?? 0) < highest) counters.put(highest, key); };
  };
}

export const entryRows = (inspection, ids) => run(["entries"], "readonly", (transaction, box) => {
  box.result = [];
  for (const id of ids) transaction.objectStore("entries").get([inspection, id]).onsuccess = (event) => box.result.push(event.target.result);
});

export const allEntries = (inspection) => read("entries", (store) => store.getAll(range(inspection)));
export const queuedEntries = (inspection, most) => read("entries", (store) => store.index("queue").getAll([inspection, QUEUED], most));
export const countQueued = (inspection, store = "entries") => read(store, (rows) => rows.index("queue").count([inspection, QUEUED]));
export const refusedRows = (inspection) => read("entries", (store) => store.index("queue").getAll([inspection, REFUSED]));

// Fates as the other side echoed them, id -> sentence; only an echoed id leaves the queue, and nothing is deleted.
export function setFates(inspection, fates) {
  return run(["entries"], "readwrite", (transaction) => {
    const store = transaction.objectStore("entries");
    for (const [id, fate] of Object.entries(fates)) {
      if (!isFate(fate)) continue;
      const refused = isRefusal(fate);
      store.get([inspection, id]).onsuccess = (event) => {
        const row = event.target.result;
        if (row) store.put({ ...row, handed: refused ? REFUSED : HANDED, why: refused ? fate : "" });
      };
    }
  });
}

// These wait once more: the other side misses them, or a person asked for it.
export async function requeue(inspection, ids) {
  for (const id of ids) await amend("entries", [inspection, id], (row) => ({ ...row, handed: QUEUED, why: "" }));
}
