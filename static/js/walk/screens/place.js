// Where somebody was: the list that was chosen and the card that was worked on are found again
// after a reload. The view itself is in the address.

import { findAll, findIfAny } from "../page/elements.js";
import { subjectsIn } from "../rows/like_units.js";
import { readOwn, writeOwn } from "../storage/own_settings.js";

/** @import { Rows } from "../rows/unfold.js" */
/** @import { Views } from "./views.js" */

/**
 * @typedef {object} Kept
 * @property {string} [list] how the sheets are listed
 * @property {string} [hash] the view
 * @property {string} [subject] of the row in that view
 * @property {string[]} [open] the rows that were unfolded there, by their first subject
 */

const PAUSE_MS = 300;

/** The place of one inspection on this device. */
export class Place {
  /** @type {Kept} */
  #kept = {};
  #timer = 0;

  /**
   * @param {string} inspection
   * @param {Views} views
   * @param {Rows} rows
   */
  constructor(inspection, views, rows) {
    this.key = `place/${inspection}`;
    this.views = views;
    this.rows = rows;
  }

  /** Show the view of the address, as it was left. */
  takeUp() {
    this.#kept = readOwn(this.key, this.#kept);
    // The browser would scroll to where another card may be by now.
    history.scrollRestoration = "manual";
    if (this.#kept.list) this.listBy(this.#kept.list);
    const { hash, subject, open = [] } = this.#kept;
    this.views.show();
    if (hash === location.hash) {
      for (const each of open) this.#unfold(each);
      if (subject) this.#goTo(subject);
    }
    // Not by the unload alone: a killed tab has none.
    addEventListener("scroll", () => this.#keepLater(), { passive: true });
    document.addEventListener("focusin", () => this.#keepLater());
    document.addEventListener("click", () => this.#keepLater());
    addEventListener("pagehide", () => this.#keepCard());
  }

  /**
   * List the sheets by system or by space.
   *
   * @param {string} kind
   */
  listBy(kind) {
    for (const button of findAll(document, "[data-list]")) {
      button.setAttribute("aria-pressed", String(button.dataset.list === kind));
    }
    for (const box of findAll(document, "[data-listing]")) {
      box.hidden = box.dataset.listing !== kind;
    }
    this.views.order = kind === "space" ? "space" : "sheet";
    this.#keep({ list: kind });
  }

  /** @param {string} subject */
  #goTo(subject) {
    const row = rowOf(subject);
    row?.scrollIntoView({ block: "start" });
    row?.focus({ preventScroll: true });
  }

  /** @param {string} subject */
  #unfold(subject) {
    const row = rowOf(subject);
    if (row) this.rows.fold(row, true);
  }

  #keepLater() {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#keepCard(), PAUSE_MS);
  }

  #keepCard() {
    const row = this.views.cardInView();
    const [subject] = row ? subjectsIn(row) : [""];
    const open = this.rows.unfolded().map((each) => subjectsIn(each)[0]);
    this.#keep({ hash: location.hash, subject, open });
  }

  /** @param {Kept} more */
  #keep(more) {
    this.#kept = { ...this.#kept, ...more };
    writeOwn(this.key, this.#kept);
  }
}

/** @param {string} subject */
function rowOf(subject) {
  return findIfAny(document, `#cards [data-subjects~="${CSS.escape(subject)}"]`);
}
