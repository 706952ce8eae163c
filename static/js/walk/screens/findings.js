// The list of all findings, the most urgent first.

import { make } from "../page/elements.js";
import { vocabulary } from "../page/vocabulary.js";
import { findingsOf, hasDispute } from "../record/summary.js";
import { placeOf } from "./finding_dialog.js";

/** @import { Log } from "../record/log.js" */
/** @import { FindingDialog } from "./finding_dialog.js" */
/** @import { Plan } from "./plan.js" */

/** The screen of the findings. */
export class Findings {
  where = "findings";

  /**
   * @param {Log} log
   * @param {Plan} plan
   * @param {FindingDialog} dialog
   */
  constructor(log, plan, dialog) {
    this.log = log;
    this.plan = plan;
    this.dialog = dialog;
  }

  /** @param {HTMLElement} box */
  paint(box) {
    const subjects = findingsOf(this.log).sort((a, b) => this.#rank(a) - this.#rank(b));
    const words = "No finding yet. Write one from a check, with “finding”.";
    const rows = subjects.length
      ? subjects.map((subject) => this.#row(subject))
      : [make("p", words, { className: "empty" })];
    const button = make("button", "new finding on the whole vessel", {
      type: "button",
      className: "main",
    });
    button.addEventListener("click", () => this.dialog.openNew(""));
    box.replaceChildren(...rows, button);
  }

  /**
   * @param {string} subject
   * @returns {number}
   */
  #rank(subject) {
    return vocabulary.urgencies.indexOf(this.log.state.value(subject, "urgency"));
  }

  /**
   * @param {string} subject
   * @returns {HTMLButtonElement}
   */
  #row(subject) {
    /** @param {string} field */
    const value = (field) => this.log.state.value(subject, field) ?? "";
    const place = placeOf(this.plan, value("on"), value("check"));
    const about = make("small", [place, value("action")].filter(Boolean).join(" · "));
    if (hasDispute(this.log, subject)) about.prepend("two answers · ");
    const row = make("button", "", { type: "button", className: "sheet-row finding" });
    row.append(make("b", value("title")), make("span", value("urgency")), about);
    row.addEventListener("click", () => this.dialog.openExisting(subject));
    return row;
  }
}
