// Photos go over once the entries are: the small copies of all of them first, then the originals. Each step may be broken
// off and done again; the computer is asked what it has, so that nothing travels twice.

import { copyOf } from "./copies.js";
import * as pictures from "./pictures.js";
import { Away, Refusal } from "./talk.js";

const PATIENCE = 120_000, TRIES = 3;
// What the computer says of this very picture; every other refusal is about the link or the device.
const ITS_OWN = [400, 413, 415, 422];

export async function handOverPhotos(talk, inspection, base, tell) {
  for (const sha of await pictures.queuedPhotos(inspection)) await copyOf(inspection, sha);
  for (const sha of await pictures.queuedCopies(inspection)) {
    await handOverCopy(talk, inspection, base, sha);
    await tell();
  }
  for (const sha of await pictures.queuedPhotos(inspection)) {
    await handOverOriginal(talk, inspection, base, sha);
    await tell();
  }
}

// What the computer has of a photo; where it cannot tell, everything is sent.
async function there(talk, base, sha) {
  try {
    return await talk.ask(`${base}/photo/${sha}`);
  } catch (error) {
    if (error instanceof Refusal && error.status !== 401) return {};
    throw error;
  }
}

async function handOverCopy(talk, inspection, base, sha) {
  const row = await pictures.copy(inspection, sha);
  const has = await there(talk, base, sha);
  if (has.copy || has.original) return pictures.setCopyFate(inspection, sha);
  try {
    await put(talk, `${base}/photo/${sha}?size=copy`, sha, row.bytes, { "X-Digest": `sha256=${row.digest}` });
    await pictures.setCopyFate(inspection, sha);
  } catch (error) {
    // A copy that is not taken costs nothing: its original follows.
    if (!(error instanceof Refusal) || !ITS_OWN.includes(error.status)) throw error;
    await pictures.setCopyFate(inspection, sha, error.message);
  }
}

async function handOverOriginal(talk, inspection, base, sha) {
  for (let left = TRIES - 1; ; left -= 1) {
    try {
      return await sendOriginal(talk, inspection, base, sha);
    } catch (error) {
      if (!(error instanceof Refusal) || !ITS_OWN.includes(error.status)) throw error;
      // A picture can be hurt on the way, so it is believed to be the picture's fault only when it happens again.
      if (left > 0 && error.status !== 413) continue;
      return pictures.setPhotoFate(inspection, sha, error.message);
    }
  }
}

async function sendOriginal(talk, inspection, base, sha) {
  const { bytes } = await pictures.photo(inspection, sha);
  if (!(await there(talk, base, sha)).original) await put(talk, `${base}/photo/${sha}?size=original`, sha, bytes);
  await pictures.setPhotoFate(inspection, sha);
  if ((await there(talk, base, sha)).original === true) await pictures.letGo(inspection, sha);
}

async function put(talk, url, sha, body, more = {}) {
  const headers = { "Content-Type": "application/octet-stream", ...more };
  const reply = await talk.write(url, { method: "PUT", body, headers }, PATIENCE);
  if (reply.sha !== sha) throw new Away(`${talk.host} answered for another photo`);
}
