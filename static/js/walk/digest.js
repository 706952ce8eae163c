// The SHA-256 of bytes, computed off the main thread: by the browser where it is trusted to, else by our own worker.

import { sha256 } from "./sha256.js";

let worker = null, last = 0;
const waiting = new Map();

function start() {
  worker = new Worker(new URL("./digest_worker.js", import.meta.url), { type: "module" });
  worker.onmessage = (event) => {
    waiting.get(event.data.number)?.resolve(event.data.digest);
    waiting.delete(event.data.number);
  };
  worker.onerror = () => {
    for (const one of waiting.values()) one.reject(new Error("the worker stopped"));
    waiting.clear();
    worker = null;
  };
}

// On plain http the worker is fetched when the page opens, because the link may be gone when the first photo is taken.
export function prepareDigest() {
  if (!crypto.subtle && !worker) start();
}

function byWorker(bytes) {
  prepareDigest();
  return new Promise((resolve, reject) => {
    last += 1;
    waiting.set(last, { resolve, reject });
    worker.postMessage({ number: last, bytes });
  });
}

export async function digest(bytes) {
  if (crypto.subtle) {
    const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
    return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
  }
  // A browser without module workers still gets its digest, only more slowly.
  return byWorker(bytes).catch(() => sha256(bytes));
}
