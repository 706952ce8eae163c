// The line of the round on the list: how many of its looks are done, who composed it, and what
// comes next.

import { find, findIfAny, make } from "../page/elements.js";
import { answerOf } from "../record/summary.js";

/** @import { FollowedRound } from "../python/followed_round.js" */
/** @import { Log } from "../record/log.js" */
/** @import { Item, Plan } from "../screens/plan.js" */

/** The round; without one nothing is shown. */
export class Round {
  /**
   * @param {Log} log
   * @param {Plan} plan
   * @param {FollowedRound} followed
   */
  constructor(log, plan, followed) {
    this.log = log;
    this.plan = plan;
    this.followed = followed;
  }

  /**
   * The first look of this person's round without an answer.
   *
   * @returns {Item | undefined}
   */
  next() {
    return this.#items().find((item) => this.#isOpen(item));
  }

  /** @param {Item} item */
  #isOpen(item) {
    return answerOf(this.log, item.subject) === "open";
  }

  /** @returns {Item[]} in walking order */
  #items() {
    const { data, person } = this.followed;
    const stops = (data?.stops ?? []).filter((stop) => !person || stop.person === person);
    const sheets = stops.flatMap((stop) => stop.looks.flatMap((look) => look.sheets));
    // A unit that was taken out after the page was made has no card.
    return sheets
      .map((sheet) => this.plan.item(`sheet/${sheet}`))
      .filter((item) => item !== undefined);
  }

  /** @returns {Item[]} what has no answer and is in nobody's round: it counts as not seen */
  leftOut() {
    const looks = (this.followed.data?.stops ?? []).flatMap((stop) => stop.looks);
    const chosen = new Set(looks.flatMap((look) => look.sheets.map((sheet) => `sheet/${sheet}`)));
    const needed = this.plan.items.filter((item) => !item.optional && !chosen.has(item.subject));
    return needed.filter((item) => this.#isOpen(item));
  }

  /** Say how far the round is; with several people, ask whose part this device walks. */
  paint() {
    const box = findIfAny(document, "#round-line");
    if (!box || !this.followed.data) return;
    if (!findIfAny(box, "p")) box.replaceChildren(make("p"), this.#wayToVisit());
    this.#paintChoice(box);
    const items = this.#items();
    const done = items.filter((item) => !this.#isOpen(item)).length;
    find(box, "p").textContent =
      `The round: ${done} of ${items.length} looks answered. “next” follows it; ` +
      `${this.leftOut().length} checks are left out and count as not seen. ` +
      this.followed.inWords();
  }

  #wayToVisit() {
    const button = make("button", "the round and what it leaves out", { type: "button" });
    button.dataset.go = "visit";
    return button;
  }

  /** @param {HTMLElement} box in which the choice is, where there is more than one person */
  #paintChoice(box) {
    const people = this.followed.data?.seconds.length ?? 1;
    const shown = findIfAny(box, "label");
    if (shown?.dataset.people === String(people)) return;
    shown?.remove();
    if (people > 1) box.append(this.#choice(people));
  }

  /** @param {number} people */
  #choice(people) {
    const select = make("select");
    const names = Array.from({ length: people }, (_, index) => `person ${index + 1}`);
    for (const [index, name] of ["everybody", ...names].entries()) {
      select.append(make("option", name, { value: String(index) }));
    }
    select.value = String(this.followed.person);
    select.addEventListener("change", () => {
      this.followed.person = Number(select.value);
    });
    const label = make("label", "whose part is walked here ");
    label.dataset.people = String(people);
    label.append(select);
    return label;
  }
}
