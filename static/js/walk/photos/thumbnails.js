// Photos as they are shown: from the copy kept here, else the original, else the computer's
// thumbnail, which is kept from then on.

import { make } from "../page/elements.js";
import { photosOn } from "../record/summary.js";
import { addCopy, hasCopy, readCopy, readPhoto } from "../storage/photo_store.js";

/** @import { Log } from "../record/log.js" */

/** @typedef {(url: string) => Promise<ArrayBuffer | null>} FetchPicture */

const SIDE = 72;
/** @type {Map<string, string>} sha -> address to show the photo from */
const addresses = new Map();
/** @type {FetchPicture | null} */
let fetchPicture = null;

/**
 * From here on thumbnails of photos that others took can be fetched.
 *
 * @param {FetchPicture} fetchFromComputer
 */
export function fetchThumbnailsWith(fetchFromComputer) {
  fetchPicture = fetchFromComputer;
}

/**
 * An address to show a photo from, or null where its picture is neither here nor to be had.
 *
 * @param {string} inspection
 * @param {string} sha
 * @returns {Promise<string | null>}
 */
export async function addressOf(inspection, sha) {
  const known = addresses.get(sha);
  if (known) return known;
  const address = await findPicture(inspection, sha);
  if (address) addresses.set(sha, address);
  return address;
}

/**
 * @param {string} inspection
 * @param {string} sha
 * @returns {Promise<string | null>}
 */
async function findPicture(inspection, sha) {
  const copy = await readCopy(inspection, sha);
  if (copy?.bytes) return URL.createObjectURL(new Blob([copy.bytes], { type: copy.type }));
  const photo = await readPhoto(inspection, sha);
  if (photo?.bytes) return URL.createObjectURL(new Blob([photo.bytes], { type: photo.type }));
  const bytes = await fetchThumbnail(inspection, sha).catch(() => null);
  return bytes && URL.createObjectURL(new Blob([bytes], { type: "image/jpeg" }));
}

/**
 * @param {string} inspection
 * @param {string} sha
 * @returns {Promise<ArrayBuffer | null>}
 */
async function fetchThumbnail(inspection, sha) {
  const bytes = await fetchPicture?.(`/inspection/${inspection}/photo/${sha}/thumb`);
  if (!bytes) return null;
  await addCopy(inspection, sha, bytes, "", false);
  return bytes;
}

/**
 * Whether a photo can be looked at without the computer; fetches its thumbnail where that can be
 * had.
 *
 * @param {string} inspection
 * @param {string} sha
 * @returns {Promise<boolean>}
 */
export async function canBeShown(inspection, sha) {
  if (await hasCopy(inspection, sha)) return true;
  const photo = await readPhoto(inspection, sha);
  if (photo?.bytes) return true;
  return Boolean(await fetchThumbnail(inspection, sha).catch(() => null));
}

/**
 * A button with the picture on it, sizes reserved so that nothing jumps.
 *
 * @param {Log} log
 * @param {string} sha
 * @returns {HTMLButtonElement}
 */
function thumbnail(log, sha) {
  const button = make("button", "", { type: "button" });
  button.dataset.openPhoto = sha;
  const alt = log.state.value(`photo/${sha}`, "caption") || "photo without a caption";
  const image = make("img", "", { width: SIDE, height: SIDE, alt });
  const showBlank = () => button.classList.add("blank");
  image.addEventListener("error", showBlank);
  button.append(image);
  addressOf(log.inspection, sha).then((address) => {
    if (address) image.src = address;
    else showBlank();
  }, showBlank);
  return button;
}

/**
 * Show the photos of a subject, or those without a place with "".
 *
 * @param {Log} log
 * @param {HTMLElement} box
 * @param {string} on
 * @returns {number} how many there are
 */
export function paintPhotoStrip(log, box, on) {
  const digests = photosOn(log, on);
  const shown = digests.join();
  // Painted anew only where something changed, so that pictures in sight do not flicker.
  if (box.dataset.shown !== shown) {
    box.dataset.shown = shown;
    box.replaceChildren(...digests.map((sha) => thumbnail(log, sha)));
  }
  return digests.length;
}
