// Taps on a row become answers: of the one unit that it is about, or of all like units at once.

import { depthWithRating } from "../cards/depth.js";
import { gateIsShut, gateSeenFromOutside } from "../cards/gate.js";
import { alarm } from "../page/alarm.js";
import { around, byId, find, findIfAny } from "../page/elements.js";
import { isRating, notSeenBecause, vocabulary } from "../page/vocabulary.js";
import { address, addressedIn, rowAround, subjectsIn } from "./like_units.js";

/** @import { Change, Log } from "../record/log.js" */
/** @import { Rows } from "./unfold.js" */

const EACH_HAS_ITS_OWN =
  "Each of these units has its own answer already. Tap a unit to change it, so that none is lost.";

/** Listens once for every row inside `root`. */
export class RowTaps {
  /**
   * @param {Log} log
   * @param {Rows} rows
   */
  constructor(log, rows) {
    this.log = log;
    this.rows = rows;
    rows.root.addEventListener("click", (event) => this.#clicked(event));
  }

  /** @param {Event} event */
  #clicked(event) {
    const button = around(event.target, "button");
    const row = rowAround(button);
    if (!button || !row) return;
    const { rate, reason, act, unit } = button.dataset;
    if (rate) this.rate(row, rate);
    else if (reason) this.#giveReason(row, reason);
    else if (unit) this.#address(row, unit);
    else if (act === "unfold") this.rows.fold(row, find(row, ".body").hidden);
    else if (act === "not-seen") this.#askWhy(row, button);
    else if (act === "not-fitted") this.rate(row, vocabulary.notFitted);
    else if (act === "take-away") this.#takeAway(row);
    else if (act === "outside") this.#fromOutside(row);
    else if (act === "gate") this.#openGate(row);
  }

  /**
   * @param {HTMLElement} row
   * @param {string} unit
   */
  #address(row, unit) {
    address(row, unit);
    this.rows.rebuild(row);
    this.rows.paint(row);
  }

  /**
   * A second tap on the answer shown does nothing; where there are two answers a tap settles them.
   * For like units at once: where they are alike, all of them; else those without an answer.
   *
   * @param {HTMLElement} row
   * @param {string} value
   */
  rate(row, value) {
    const { state } = this.log;
    const subjects = addressedIn(row);
    const isOne = subjects.length === 1;
    const open = isOne
      ? subjects
      : subjects.filter((subject) => !this.#isKept(row, subject, value));
    const answers = open.map((subject) => state.value(subject, "rating"));
    const isAlike = new Set(answers).size === 1;
    const chosen = isAlike ? open : open.filter((_, index) => !answers[index]);
    if (!isOne && !chosen.length) {
      if (open.length) alarm(EACH_HAS_ITS_OWN);
      return;
    }
    const changes = chosen.flatMap((subject) => this.#changesFor(row, subject, value));
    if (changes.length) this.#record(changes, isOne ? value : `${value}, ${chosen.length} units`);
  }

  /**
   * Whether a tap on all leaves a unit as it is: two answers are settled by itself, and no space is
   * rated before its gate.
   *
   * @param {HTMLElement} row
   * @param {string} subject
   * @param {string} value
   */
  #isKept({ dataset }, subject, value) {
    if (this.log.state.disputed(subject, "rating")) return true;
    return "enclosed" in dataset && isRating(value) && gateIsShut(this.log, subject);
  }

  /**
   * @param {HTMLElement} row
   * @param {string} subject
   * @param {string} value
   * @returns {Change[]}
   */
  #changesFor(row, subject, value) {
    const { state } = this.log;
    const isShown = state.value(subject, "rating") === value;
    if (isShown && !state.disputed(subject, "rating")) return [];
    const changes = depthWithRating(this.log, row, value, subject);
    // An answer of its own is not that of the sister any more.
    if (state.value(subject, "as_unit")) changes.push([subject, "as_unit", null]);
    return [[subject, "rating", value], ...changes];
  }

  /** @param {HTMLElement} row */
  #takeAway(row) {
    const changes = addressedIn(row).map(
      (subject) => /** @type {Change} */ ([subject, "rating", null]),
    );
    this.#record(changes, "taken away");
  }

  /**
   * @param {HTMLElement} row
   * @param {HTMLElement} button
   */
  #askWhy(row, button) {
    const reasons = findIfAny(row, "[data-panel=not-seen]") ?? this.#makeReasons(row);
    reasons.hidden = !reasons.hidden;
    button.setAttribute("aria-expanded", String(!reasons.hidden));
  }

  /** @param {HTMLElement} row */
  #makeReasons(row) {
    const { content } = byId("part-reasons", HTMLTemplateElement);
    find(row, ".rate").after(content.cloneNode(true));
    this.rows.paint(row);
    return find(row, "[data-panel=not-seen]");
  }

  /**
   * @param {HTMLElement} row
   * @param {string} reason
   */
  #giveReason(row, reason) {
    this.rate(row, notSeenBecause(reason));
    find(row, "[data-panel=not-seen]").hidden = true;
    find(row, "[data-act=not-seen]").setAttribute("aria-expanded", "false");
  }

  /** @param {HTMLElement} row */
  #fromOutside(row) {
    const subjects = addressedIn(row);
    const act = this.log.record(
      () => subjects.flatMap((subject) => gateSeenFromOutside(this.log, subject)),
      `recorded: ${vocabulary.gate.outside}`,
    );
    act.catch(() => {}); // the log itself reports what could not be kept
  }

  /**
   * The gate is of one space: with several, the first of them that is open.
   *
   * @param {HTMLElement} row
   */
  #openGate(row) {
    if (!row.dataset.subject) {
      const open = subjectsIn(row).find((subject) => gateIsShut(this.log, subject));
      if (open) address(row, open);
    }
    this.rows.fold(row, true);
    find(row, ".gate").scrollIntoView({ block: "start" });
  }

  /**
   * @param {Change[]} changes
   * @param {string} words
   */
  #record(changes, words) {
    const act = this.log.record(changes, `recorded: ${words}`);
    act.catch(() => {}); // the log itself reports what could not be kept
  }
}
