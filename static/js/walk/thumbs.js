// Photos as they are shown: from the copy kept here, else the original, else the computer's thumbnail, which is kept from then on.

import { addCopy, copy, hasCopy, photo } from "./pictures.js";

const addresses = new Map();
let talk = null;

// From here on thumbnails of photos that others took can be fetched.
export function fetchThumbsFrom(whom) {
  talk = whom;
}

const asAddress = (bytes, type) => URL.createObjectURL(new Blob([bytes], { type }));

// An address to show a photo from, or null where its picture is not on this device and cannot be had.
export async function pictureOf(inspection, sha) {
  if (!addresses.has(sha)) {
    const found = await look(inspection, sha);
    if (!found) return null;
    addresses.set(sha, found);
  }
  return addresses.get(sha);
}

async function look(inspection, sha) {
  const small = await copy(inspection, sha);
  if (small?.bytes) return asAddress(small.bytes, small.type);
  const whole = await photo(inspection, sha);
  if (whole?.bytes) return asAddress(whole.bytes, whole.type);
  const bytes = await fetchThumb(inspection, sha).catch(() => null);
  return bytes && asAddress(bytes, "image/jpeg");
}

async function fetchThumb(inspection, sha) {
  const bytes = await talk?.picture(`/inspection/${inspection}/photo/${sha}/thumb`);
  if (bytes) await addCopy(inspection, sha, bytes, "", false);
  return bytes ?? null;
}

// Whether a photo can be looked at without the computer; fetches its thumbnail where that can be had.
export async function isHere(inspection, sha) {
  if (await hasCopy(inspection, sha)) return true;
  if ((await photo(inspection, sha))?.bytes) return true;
  return Boolean(await fetchThumb(inspection, sha).catch(() => null));
}

// The photos of a subject, or of the tray with "".
export function photosOn(log, on) {
  return log.state.subjects("photo/").filter((subject) => log.state.value(subject, "on") === on).map((subject) => subject.slice(6));
}

// A button with the picture on it, sizes reserved so that nothing jumps.
export function thumbnail(log, sha) {
  const button = document.createElement("button");
  button.type = "button";
  button.dataset.openPhoto = sha;
  const image = document.createElement("img");
  image.width = 72;
  image.height = 72;
  image.alt = log.state.value(`photo/${sha}`, "caption") || "photo without a caption";
  image.addEventListener("error", () => { button.classList.add("blank"); });
  button.append(image);
  pictureOf(log.inspection, sha).then((url) => {
    if (url) image.src = url;
    else button.classList.add("blank");
  }, () => button.classList.add("blank"));
  return button;
}

export function paintStrip(log, box, on) {
  const shas = photosOn(log, on);
  if (box.dataset.shown === shas.join()) return shas.length;
  box.dataset.shown = shas.join();
  box.replaceChildren(...shas.map((sha) => thumbnail(log, sha)));
  return shas.length;
}
