// The SHA-256 of bytes, computed off the main thread: by the browser where it is trusted to, else
// by our own worker.

import { sha256 } from "./sha256.js";

/**
 * @typedef {object} Waiting a digest that the worker still owes
 * @property {(digest: string) => void} resolve
 * @property {(error: Error) => void} reject
 */

/** @type {Worker | null} */
let worker = null;
let lastNumber = 0;
/** @type {Map<number, Waiting>} */
const waiting = new Map();

/** @returns {Worker} */
function start() {
  const address = new URL("./digest_worker.js", import.meta.url);
  const started = new Worker(address, { type: "module" });
  started.onmessage = (event) => {
    const { number, digest: found } = event.data;
    waiting.get(number)?.resolve(found);
    waiting.delete(number);
  };
  started.onerror = () => {
    for (const { reject } of waiting.values()) reject(new Error("the worker stopped"));
    waiting.clear();
    worker = null;
  };
  return started;
}

/**
 * Fetch the worker where it is needed. On plain http this is done when the page opens, because the
 * link may be lost when the first photo is taken.
 */
export function prepareDigest() {
  if (!crypto.subtle) worker ??= start();
}

/**
 * @param {ArrayBuffer} bytes
 * @returns {Promise<string>}
 */
function digestByWorker(bytes) {
  worker ??= start();
  const running = worker;
  lastNumber += 1;
  const number = lastNumber;
  return new Promise((resolve, reject) => {
    waiting.set(number, { resolve, reject });
    running.postMessage({ number, bytes });
  });
}

/**
 * @param {ArrayBuffer} bytes
 * @returns {Promise<string>} in lower case hexadecimal
 */
export async function digest(bytes) {
  if (crypto.subtle) {
    const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
    return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
  }
  // A browser without module workers still gets its digest, only more slowly.
  return digestByWorker(bytes).catch(() => sha256(bytes));
}
