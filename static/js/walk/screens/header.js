// The header of the walk: what is in sight, and how much of it was seen.

import { byId, find, make } from "../page/elements.js";
import { tally } from "../record/summary.js";

/** @import { Log } from "../record/log.js" */
/** @import { Tally } from "../record/summary.js" */

/**
 * Draw how much was seen and how much was said not to be seen, as lengths.
 *
 * @param {HTMLElement} box
 * @param {Tally} counts
 */
export function paintTide(box, { seen, unseen, of }) {
  /** @param {number} count */
  const share = (count) => `${of ? (100 * count) / of : 0}%`;
  find(box, "i").style.width = share(seen);
  find(box, "u").style.width = share(unseen);
}

/** Of the screen's height; a header that takes more goes up with the page, as with large text. */
const MOST_OF_SCREEN = 0.3;

/** Headings stick below the header, however high it is just now. */
export function followHeight() {
  const header = find(document, ".walk-head");
  const root = document.documentElement;
  const measure = () => {
    const isTall = header.offsetHeight > MOST_OF_SCREEN * innerHeight;
    // An alarm stays in sight until it is confirmed.
    root.classList.toggle("tall-head", isTall && byId("alarm").hidden);
    const sticks = getComputedStyle(header).position === "sticky";
    root.style.setProperty("--head", `${sticks ? header.offsetHeight : 0}px`);
  };
  new ResizeObserver(measure).observe(header);
  addEventListener("resize", measure);
  measure();
}

/**
 * @param {Log} log
 * @param {string[]} subjects the checks in sight
 * @param {string} here
 * @param {string} where
 */
export function paintHeader(log, subjects, here, where) {
  const counts = tally(log, subjects);
  byId("here").textContent = here;
  byId("where").textContent = where;
  byId("count").replaceChildren(make("b", String(counts.seen)), ` of ${counts.of} seen`);
  const tide = byId("tide");
  paintTide(tide, counts);
  const words = `${counts.seen} of ${counts.of} checks seen, ${counts.unseen} said not to be seen`;
  tide.setAttribute("aria-label", words);
}
