// What can be had now, by the state in which the vessel is met and what the crew will do; the rest
// is recorded as not seen in one act. The computer's own tables decide, this page only looks them
// up.

import { byId, find, findAll, make } from "../page/elements.js";
import { notSeenBecause, vocabulary } from "../page/vocabulary.js";
import { answerOf } from "../record/summary.js";

/** @import { Change, Log } from "../record/log.js" */
/** @import { Item, Plan } from "./plan.js" */

/** @typedef {Record<string, string>} Reasons need -> reason against it, where there is one */
/** @typedef {{ met: Record<string, Record<string, Reasons>>, refused: Reasons }} Tables */
/** @typedef {{ needs: string, asks: string }} Asking a check, as far as it asks for something */

/** The part of the first page that asks how she is met. */
export class Chances {
  /** @type {Tables} state -> berth -> reasons, and question to the crew -> reason */
  #tables = JSON.parse(byId("attainable").textContent ?? "{}");
  #box = byId("chances");

  /**
   * @param {Log} log
   * @param {Plan} plan
   */
  constructor(log, plan) {
    this.log = log;
    this.plan = plan;
    for (const select of findAll(document, "[data-met]", HTMLSelectElement)) {
      select.addEventListener("change", () => {
        const { met = "" } = select.dataset;
        const words = `recorded: ${select.value || "state not known"}`;
        // The log itself reports what could not be kept.
        log.record([["inspection", met, select.value || null]], words).catch(() => {});
      });
    }
  }

  /** Show the state that is recorded, and what follows from it. */
  paint() {
    const selects = findAll(document, "[data-met]", HTMLSelectElement);
    for (const select of selects) select.value = this.#recorded(select.dataset.met ?? "");
    const isKnown = selects.some((select) => select.value);
    this.#box.replaceChildren(...(isKnown ? this.#words() : []));
  }

  /**
   * Say on a card what speaks against it now.
   *
   * @param {HTMLElement} card
   */
  mark(card) {
    const { needs = "", asks = "" } = card.dataset;
    const reason = this.#against({ needs, asks });
    const place = find(card, "[data-not-now]");
    place.hidden = !reason;
    place.textContent = reason ? `cannot be had now: ${reason}` : "";
  }

  /**
   * Why a check cannot be had now, "" where it can.
   *
   * @param {Asking} check
   * @returns {string}
   */
  #against({ needs, asks }) {
    const { met, refused } = this.#tables;
    const { yes, no } = vocabulary.gate;
    const answer = asks ? this.#recorded(asks) : "";
    if (answer === no) return refused[asks];
    // What the crew promises counts more than the state in which she lies.
    const state = answer === yes ? "" : this.#recorded("state");
    return met[state]?.[this.#recorded("berth")]?.[needs] ?? "";
  }

  /**
   * @param {string} name of a field of the visit
   * @returns {string} its value
   */
  #recorded(name) {
    return this.log.state.value("inspection", name) ?? "";
  }

  /** @returns {HTMLElement[]} */
  #words() {
    const needed = this.plan.items.filter((item) => !item.optional);
    const out = needed.filter((item) => this.#against(item));
    const had = needed.length - out.length;
    // Passing by still shows something of a check with a glance.
    const passed = out.filter((item) => item.glance).length;
    const besides = passed ? ` Of these, ${passed} can be looked at in passing.` : "";
    /** @type {HTMLElement[]} */
    const lines = [make("p", `${had} checks can be had now, ${out.length} cannot.${besides}`)];
    const open = out.filter((item) => !item.glance && this.#isUntouched(item));
    if (open.length) lines.push(this.#putAway(open));
    const again = needed.filter((item) => !this.#against(item) && this.#wasPutAway(item));
    if (again.length) lines.push(this.#openAgain(again));
    return lines;
  }

  /**
   * Whether nothing at all is recorded of a check: a reading without a rating is not put away.
   *
   * @param {Item} item
   */
  #isUntouched({ subject }) {
    const { state } = this.log;
    if (answerOf(this.log, subject) !== "open") return false;
    return state.fields(subject).every((field) => !state.value(subject, field));
  }

  /**
   * Whether a check is answered with the reason that some state or berth has against its need.
   *
   * @param {Item} item
   */
  #wasPutAway({ subject, needs, asks }) {
    const rating = this.log.state.value(subject, "rating");
    const { met, refused } = this.#tables;
    const berths = Object.values(met).flatMap((table) => Object.values(table));
    const reasons = [...berths.map((table) => table[needs]), refused[asks]];
    return reasons.some((reason) => reason && rating === notSeenBecause(reason));
  }

  /** @param {Item[]} items */
  #putAway(items) {
    const reasons = new Set(items.map((item) => this.#against(item)));
    const words = `record ${counted(items.length)} as not seen: ${[...reasons].join(", ")}`;
    return this.#button(words, () => {
      return items.map((item) => [item.subject, "rating", notSeenBecause(this.#against(item))]);
    });
  }

  /** @param {Item[]} items */
  #openAgain(items) {
    const words = `open ${counted(items.length)} again that can be had now`;
    return this.#button(words, () => items.map(({ subject }) => [subject, "rating", null]));
  }

  /**
   * @param {string} words
   * @param {() => Change[]} changes
   */
  #button(words, changes) {
    const button = make("button", words, { type: "button" });
    button.addEventListener("click", () => {
      this.log.record(changes, words).catch(() => {}); // the log itself reports what was not kept
    });
    return button;
  }
}

/** @param {number} count */
function counted(count) {
  return count === 1 ? "1 check" : `${count} checks`;
}
