// Photos as the camera gave them: kept here first, named by their digest; where they belong is an
// entry.

import { addPhoto, readPhoto } from "../storage/photo_store.js";
import { digest } from "./digest.js";
import { copyOf } from "./small_copies.js";

/** @import { Change, Log } from "../record/log.js" */

/**
 * @typedef {object} TakenPhoto
 * @property {string} sha
 * @property {string | null} already where this very picture is filed already ("" without a place),
 *   and
 *   stays; null where it is new
 */

const LONGEST_NAME = 200;

/**
 * Keep a file and record where it belongs.
 *
 * @param {Log} log
 * @param {File} file
 * @param {string} on the subject, or "" for the photos without a place
 * @returns {Promise<TakenPhoto>}
 * @throws {Error} with a sentence where it is no picture or cannot be kept
 */
export async function takePhoto(log, file, on) {
  const bytes = await file.arrayBuffer();
  const kind = kindOf(bytes);
  if (!kind) {
    const name = file.name || "The file";
    throw new Error(`${name} is not a JPEG, PNG, WebP or HEIC picture, so it was not taken in.`);
  }
  const sha = await digest(bytes);
  log.memory.files.set(sha, file);
  await keepAndProve(log.inspection, sha, bytes, `image/${kind}`);
  const already = log.state.value(`photo/${sha}`, "on");
  // A photo without a place may be filed where it was chosen; a photo with a place is never moved
  // by being chosen again.
  if (already || (already === "" && !on)) return { sha, already };
  await log.record(changesFor(sha, file, kind, on), "", false);
  copyOf(log.inspection, sha); // not awaited: the copy may take its time
  return { sha, already: null };
}

/**
 * What the first bytes say; a name or a browser's guess is not believed.
 *
 * @param {ArrayBuffer} bytes
 * @returns {"jpeg" | "png" | "webp" | "heic" | ""}
 */
function kindOf(bytes) {
  const text = String.fromCharCode(...new Uint8Array(bytes.slice(0, 16)));
  if (text.startsWith("\xff\xd8\xff")) return "jpeg";
  if (text.startsWith("\x89PNG")) return "png";
  if (text.startsWith("RIFF") && text.slice(8, 12) === "WEBP") return "webp";
  const isHeif = text.slice(4, 8) === "ftyp" && /^(hei|hev|mif1|msf1)/.test(text.slice(8, 12));
  return isHeif ? "heic" : "";
}

/**
 * Store a picture and read it back: a browser that only pretends to store is found out at once.
 *
 * @param {string} inspection
 * @param {string} sha
 * @param {ArrayBuffer} bytes
 * @param {string} type
 */
async function keepAndProve(inspection, sha, bytes, type) {
  await addPhoto(inspection, sha, bytes, type);
  const row = await readPhoto(inspection, sha);
  // A row without bytes is of a photo that the computer has already.
  if (row && (!row.bytes || sameBytes(row.bytes, bytes))) return;
  throw new Error(
    "The photo could not be read back: this device does not keep it. Keep the original.",
  );
}

/**
 * @param {ArrayBuffer} kept
 * @param {ArrayBuffer} given
 * @returns {boolean}
 */
function sameBytes(kept, given) {
  const a = new Uint8Array(kept);
  const b = new Uint8Array(given);
  return a.length === b.length && a.every((byte, index) => byte === b[index]);
}

/**
 * @param {string} sha
 * @param {File} file
 * @param {string} kind
 * @param {string} on
 * @returns {Change[]}
 */
function changesFor(sha, file, kind, on) {
  const subject = `photo/${sha}`;
  const taken = new Date(file.lastModified || Date.now()).toISOString();
  /** @type {Change[]} */
  const changes = [
    [subject, "on", on],
    [subject, "kind", kind],
    [subject, "taken", taken],
  ];
  if (file.name) changes.push([subject, "name", file.name.slice(0, LONGEST_NAME)]);
  return changes;
}
