// Sharing on the laptop: the list of phones is kept current, and a page that shows a code goes on
// by itself once a phone has come in by it.

import { findIfAny } from "./walk/page/elements.js";

const LOOK_EVERY_MS = 3_000;

const list = findIfAny(document, "#phones");
const codePage = findIfAny(document, "[data-newest]");

/** @typedef {{ phones: string, newest: string, isShared: boolean }} Now */

/** @returns {Promise<Now | null>} null where the inspector does not answer just now */
async function ask() {
  try {
    const response = await fetch("/sharing/now", { cache: "no-store" });
    return response.ok ? await response.json() : null;
  } catch {
    return null;
  }
}

/**
 * Show the phones as they are now; what was unfolded stays so, and nothing moves under a finger.
 *
 * @param {HTMLElement} box
 * @param {string} phones our own page's part, with every name escaped
 */
function show(box, phones) {
  const isBusy = box.contains(document.activeElement) || box.matches(":active");
  if (isBusy || box.dataset.shown === phones) return;
  const opened = [...box.querySelectorAll("details[open] summary")].map((each) => each.textContent);
  box.innerHTML = phones;
  box.dataset.shown = phones;
  for (const summary of box.querySelectorAll("summary")) {
    const details = summary.parentElement;
    if (opened.includes(summary.textContent)) details?.setAttribute("open", "");
  }
}

async function look() {
  const now = document.hidden ? null : await ask();
  if (now && list) show(list, now.phones);
  if (now && codePage && now.newest && now.newest !== codePage.dataset.newest) {
    location.assign(`/sharing?joined=${encodeURIComponent(now.newest.split(" ")[0])}`);
    return;
  }
  setTimeout(look, LOOK_EVERY_MS);
}

setTimeout(look, LOOK_EVERY_MS);
