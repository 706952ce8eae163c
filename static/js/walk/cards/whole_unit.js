// What is said of a whole unit at once: not fitted, not seen, or as its sister. Only checks of
// which nothing is recorded yet are answered, in one act that one tap takes back.

import { find, make } from "../page/elements.js";
import { notSeenBecause, vocabulary } from "../page/vocabulary.js";
import { answerOf } from "../record/summary.js";

/** @import { Change, Log } from "../record/log.js" */
/** @import { Item, Plan } from "../screens/plan.js" */

/** The box of one unit, at the head of its sheet. */
export class WholeUnit {
  /**
   * @param {Log} log
   * @param {Plan} plan
   * @param {string} sheet "<system>/<unit>"
   */
  constructor(log, plan, sheet) {
    this.log = log;
    this.plan = plan;
    this.sheet = sheet;
    this.box = make("details", "", { className: "whole" });
    this.box.append(make("summary", "All of this unit at once"), make("div"));
    // What can be said depends on what is recorded, so it is listed when it is opened.
    this.box.addEventListener("toggle", () => this.paint());
  }

  /** List what can be said now. */
  paint() {
    if (!this.box.open) return;
    const open = this.#untouched();
    const { notFitted, notSeen, reasons } = vocabulary;
    /** @type {HTMLElement[]} */
    const content = [make("p", `${open.length} checks of it have nothing recorded.`)];
    const unseen = reasons.map((reason) =>
      this.#button(`${notSeen}: ${reason}`, ratedAll(open, notSeenBecause(reason))),
    );
    if (open.length) {
      content.push(this.#row([this.#button(notFitted, ratedAll(open, notFitted))]));
      content.push(this.#row(unseen));
    }
    const sisters = this.#sisters().map((sister) => this.#sisterButton(sister, open));
    const offered = sisters.filter((button) => button !== null);
    if (offered.length) {
      content.push(
        make("p", "As its sister: answers and how they are known, no readings, photos or notes."),
        this.#row(offered),
      );
    }
    find(this.box, "div").replaceChildren(...content);
  }

  /** @returns {Item[]} its checks of which nothing is recorded */
  #untouched() {
    const { state } = this.log;
    return this.plan.within("sheet", this.sheet).filter(({ subject, optional }) => {
      if (optional || answerOf(this.log, subject) !== "open") return false;
      return state.fields(subject).every((field) => !state.value(subject, field));
    });
  }

  /** @returns {string[]} the other sheets of its system */
  #sisters() {
    const [system] = this.sheet.split("/");
    return [...this.plan.sheets.keys()].filter((other) => {
      return other !== this.sheet && other.startsWith(`${system}/`);
    });
  }

  /**
   * @param {string} sister
   * @param {Item[]} open
   * @returns {HTMLElement | null} null where the sister has no answer to take over
   */
  #sisterButton(sister, open) {
    const changes = open.flatMap((item) => this.#asSister(sister, item));
    if (!changes.length) return null;
    const count = changes.filter(([, field]) => field === "rating").length;
    const name = this.plan.sheets.get(sister)?.name ?? sister;
    return this.#button(`as ${name}: ${count} ${count === 1 ? "answer" : "answers"}`, changes);
  }

  /**
   * The sister's answer to a check as this unit's own, marked with whose it is.
   *
   * @param {string} sister
   * @param {Item} item
   * @returns {Change[]}
   */
  #asSister(sister, { subject, check }) {
    const { state } = this.log;
    const other = `sheet/${sister}/${check}`;
    const rating = state.value(other, "rating");
    // What was itself taken over is no look to take over, and two answers are none.
    const isOwn = rating && !state.disputed(other, "rating") && !state.value(other, "as_unit");
    if (!isOwn) return [];
    const depth = state.value(other, "depth");
    /** @type {Change[]} */
    const changes = [
      [subject, "rating", rating],
      [subject, "as_unit", this.plan.sheets.get(sister)?.name ?? sister],
    ];
    return depth ? [...changes, [subject, "depth", depth]] : changes;
  }

  /**
   * @param {string} words
   * @param {Change[]} changes
   */
  #button(words, changes) {
    const button = make("button", words, { type: "button" });
    button.addEventListener("click", () => {
      // The log itself reports what could not be kept.
      this.log.record(changes, `recorded: ${words}`).then(
        () => this.paint(),
        () => {},
      );
    });
    return button;
  }

  /** @param {HTMLElement[]} buttons */
  #row(buttons) {
    const row = make("div", "", { className: "chips" });
    row.append(...buttons);
    return row;
  }
}

/**
 * @param {Item[]} items
 * @param {string} answer
 * @returns {Change[]}
 */
function ratedAll(items, answer) {
  return items.map(({ subject }) => [subject, "rating", answer]);
}
