// The round of the visit, as the computer composed it: which looks come next, and how many are
// done.

import { find, findIfAny, make } from "../page/elements.js";
import { answerOf } from "../record/summary.js";

/** @import { Log } from "../record/log.js" */
/** @import { Item, Plan } from "./plan.js" */

/** @typedef {{ sheets: string[], way: string, seconds: number }} Look */
/** @typedef {{ space: string, person: number, looks: Look[] }} Stop */
/** @typedef {{ stops: Stop[], left: number, seconds: number[] }} RoundData */

const PERSON = "round-person";

/** The round; without one nothing is shown. */
export class Round {
  /** @type {RoundData | null} */
  #data = JSON.parse(findIfAny(document, "#round")?.textContent ?? "null");

  /**
   * @param {Log} log
   * @param {Plan} plan
   */
  constructor(log, plan) {
    this.log = log;
    this.plan = plan;
  }

  /**
   * The first look of this person's round without an answer.
   *
   * @returns {Item | undefined}
   */
  next() {
    return this.#items().find((item) => answerOf(this.log, item.subject) === "open");
  }

  /** @returns {number} how many looks it has, 0 where there is no round */
  get size() {
    return this.#items().length;
  }

  /** @returns {number} whose part is walked with this device; 0 for everybody's */
  get #person() {
    const kept = Number(sessionStorage.getItem(PERSON));
    return kept <= (this.#data?.seconds.length ?? 0) ? kept : 0;
  }

  /** @returns {Item[]} in walking order */
  #items() {
    const person = this.#person;
    const stops = (this.#data?.stops ?? []).filter((stop) => !person || stop.person === person);
    const sheets = stops.flatMap((stop) => stop.looks.flatMap((look) => look.sheets));
    // A unit that was taken out after the page was made has no card.
    return sheets
      .map((sheet) => this.plan.item(`sheet/${sheet}`))
      .filter((item) => item !== undefined);
  }

  /** Say how far the round is; with several people, ask whose part this device walks. */
  paint() {
    const box = findIfAny(document, "#round-line");
    if (!box || !this.#data) return;
    if (!findIfAny(box, "p")) box.replaceChildren(make("p"), ...this.#choice());
    const items = this.#items();
    const done = items.filter((item) => answerOf(this.log, item.subject) !== "open").length;
    find(box, "p").textContent =
      `The round: ${done} of ${items.length} looks answered. “next” follows it; ` +
      `${this.#data.left} checks are left out and count as not seen.`;
  }

  /** @returns {HTMLElement[]} */
  #choice() {
    const people = this.#data?.seconds.length ?? 1;
    if (people < 2) return [];
    const select = make("select");
    const names = Array.from({ length: people }, (_, index) => `person ${index + 1}`);
    for (const [index, name] of ["everybody", ...names].entries()) {
      select.append(make("option", name, { value: String(index) }));
    }
    select.value = String(this.#person);
    select.addEventListener("change", () => {
      sessionStorage.setItem(PERSON, select.value);
      this.paint();
    });
    const label = make("label", "whose part is walked here ");
    label.append(select);
    return [label];
  }
}
