// Where somebody was: the list that was chosen and the card that was worked on are found again
// after a reload. The view itself is in the address.

import { findAll, findIfAny } from "../page/elements.js";
import { readOwn, writeOwn } from "../storage/own_settings.js";

/** @import { Views } from "./views.js" */

/**
 * @typedef {object} Kept
 * @property {string} [list] how the sheets are listed
 * @property {string} [hash] the view
 * @property {string} [subject] of the card in that view
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
   */
  constructor(inspection, views) {
    this.key = `place/${inspection}`;
    this.views = views;
  }

  /** Show the view of the address, as it was left. */
  takeUp() {
    this.#kept = readOwn(this.key, this.#kept);
    // The browser would scroll to where another card may be by now.
    history.scrollRestoration = "manual";
    if (this.#kept.list) this.listBy(this.#kept.list);
    const { hash, subject } = this.#kept;
    this.views.show();
    if (hash === location.hash && subject) this.#goTo(subject);
    // Not by the unload alone: a killed tab has none.
    addEventListener("scroll", () => this.#keepLater(), { passive: true });
    document.addEventListener("focusin", () => this.#keepLater());
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
    const card = findIfAny(document, `#cards [data-subject="${CSS.escape(subject)}"]`);
    card?.scrollIntoView({ block: "start" });
    card?.focus({ preventScroll: true });
  }

  #keepLater() {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#keepCard(), PAUSE_MS);
  }

  #keepCard() {
    const subject = this.views.cardInView()?.dataset.subject ?? "";
    this.#keep({ hash: location.hash, subject });
  }

  /** @param {Kept} more */
  #keep(more) {
    this.#kept = { ...this.#kept, ...more };
    writeOwn(this.key, this.#kept);
  }
}
