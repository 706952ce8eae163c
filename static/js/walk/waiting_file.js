// The last resort: what waits here as one file, photos and all, which works on plain http and without any contact.
// The file is put together from small pieces, one photo at a time, so that hundreds of megabytes need no single string.

import { queuedEntries, refusedRows } from "./kept.js";
import { photo, queuedPhotos, refusedPhotos } from "./pictures.js";

const PIECE = 3 * 16 * 1024; // divisible by three, so that the pieces' base64 joins without padding in between

function base64(bytes) {
  const parts = [];
  for (let at = 0; at < bytes.length; at += PIECE) {
    parts.push(btoa(Array.from(bytes.subarray(at, at + PIECE), (byte) => String.fromCharCode(byte)).join("")));
  }
  return parts;
}

// The file as a Blob: {"format", "version", "inspection", "device", "entries": [...], "photos": [{"sha256", "kind", "base64"}]}.
async function waitingFile(inspection, device) {
  const entries = [...(await queuedEntries(inspection)), ...(await refusedRows(inspection))].map((row) => row.entry);
  const head = JSON.stringify({ format: "inspector-waiting", version: 1, inspection, device, entries });
  const parts = [head.slice(0, -1), ',"photos":['];
  const shas = [...(await queuedPhotos(inspection)), ...(await refusedPhotos(inspection))];
  let first = true;
  for (const sha of shas) {
    const row = await photo(inspection, sha);
    if (!row?.bytes) continue;
    // Each photo becomes a Blob of its own at once: the browser may put it on disk, and the text can be let go.
    const open = `${first ? "" : ","}{"sha256":"${sha}","kind":"${row.type.replace("image/", "")}","base64":"`;
    parts.push(new Blob([open, ...base64(new Uint8Array(row.bytes)), '"}']));
    first = false;
  }
  return new Blob([...parts, "]}\n"], { type: "application/json" });
}

export async function saveWaiting(log) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(await waitingFile(log.inspection, log.device));
  link.download = `waiting-${log.inspection}-${log.device}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
