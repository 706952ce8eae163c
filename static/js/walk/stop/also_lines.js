// Checks that are answered on another sheet, named at the end of this one with their answer.

import { make } from "../page/elements.js";

/** @import { Log } from "../record/log.js" */
/** @import { Item, Plan } from "../screens/plan.js" */

/** The lines of one sheet. */
export class AlsoLines {
  /** @type {HTMLButtonElement[]} */
  rows = [];
  /** @type {Item[]} */
  #items = [];

  /**
   * @param {Log} log
   * @param {Plan} plan
   * @param {string} sheet "" where no sheet is in sight
   * @param {(subject: string) => void} open goes to a check
   */
  constructor(log, plan, sheet, open) {
    this.log = log;
    if (!sheet) return;
    this.#items = plan.alsoOn(sheet);
    this.rows = this.#items.map((item) => {
      const row = make("button", "", { type: "button", className: "sheet-row also-line" });
      row.dataset.alsoOf = item.subject;
      const where = `also for this sheet, answered under ${plan.nameOf(item.sheet)}`;
      row.append(make("b", item.title), make("span"), make("small", where));
      row.addEventListener("click", () => open(item.subject));
      return row;
    });
  }

  /** Show each answer as it is now. */
  paint() {
    for (const [index, { subject }] of this.#items.entries()) {
      const rating = this.log.state.value(subject, "rating");
      const disputed = this.log.state.disputed(subject, "rating");
      const proposed = this.log.judgements[subject]?.rating;
      const words = disputed ? "two answers" : rating || proposed || "open";
      this.rows[index].children[1].textContent = words;
    }
  }
}
