// Headings that unfold rows. The rows are made when one is opened, and a heading stays as it was
// left when the screen is painted anew.

import { make } from "../page/elements.js";

/** The folds of one screen. */
export class Folds {
  /** @type {Set<string>} */
  #opened = new Set();

  /**
   * @param {string} name
   * @param {string} count what stands beside it
   * @param {(box: HTMLElement) => unknown} fill puts the rows in
   * @returns {HTMLElement}
   */
  fold(name, count, fill) {
    const fold = make("details", "", { className: "still-open" });
    const summary = make("summary", `${name} `);
    summary.append(make("b", count));
    const rows = make("div", "", { className: "folded" });
    fold.append(summary, rows);
    fold.open = this.#opened.has(name);
    if (fold.open) fill(rows);
    fold.addEventListener("toggle", () => {
      if (fold.open === this.#opened.has(name)) return;
      if (fold.open) {
        this.#opened.add(name);
        fill(rows);
      } else if (fold.isConnected) {
        this.#opened.delete(name);
        rows.replaceChildren();
      }
    });
    return fold;
  }
}
