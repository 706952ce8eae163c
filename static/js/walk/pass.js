// Who this device is: the pass that a pairing gave ({token, device, name}), else an id of its own making. The pass lies in
// the same store as the work, because a wiped store must lose both together.

import { meta, run, setMeta } from "./database.js";

const KEY = "pass", OURS = /^[a-z0-9][a-z0-9-]{0,39}$/;

// Keep the pass that a pairing gave. Resolves once it is on disk.
export async function keepPass(pass) {
  if (!pass?.token) throw new Error("A pass needs a token.");
  const { token, device = "", name = "" } = pass;
  await setMeta(KEY, { token, device, name });
}

// The pass of this device, or null where it was never paired.
export async function readPass() {
  return (await meta(KEY)) ?? null;
}

// The device's id: the paired one, else made once from the browser's own random source (randomUUID is absent on plain http).
export async function deviceId() {
  const pass = await readPass();
  if (OURS.test(pass?.device ?? "")) return pass.device;
  const fresh = "phone-" + Array.from(crypto.getRandomValues(new Uint8Array(6)), (byte) => byte.toString(16).padStart(2, "0")).join("");
  return run(["meta"], "readwrite", (transaction, box) => {
    const store = transaction.objectStore("meta");
    store.get("device").onsuccess = (event) => {
      box.result = event.target.result ?? fresh;
      if (!event.target.result) store.put(fresh, "device");
    };
  });
}
