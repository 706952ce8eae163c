// Before leaving: what is still open that matters, with a tap to each.

import { handOverButton } from "../handover/hand_over_now.js";
import { findIfAny, make } from "../page/elements.js";
import { isRating } from "../page/vocabulary.js";
import { answerOf, hasDispute, photosOn } from "../record/summary.js";

/** @import { Log } from "../record/log.js" */
/** @import { Item, Plan } from "./plan.js" */

/**
 * @typedef {object} Parts
 * @property {Log} log
 * @property {Plan} plan
 * @property {(subject: string) => void} open goes to a check
 */

/** The screen. */
export class Leaving {
  where = "before leaving";
  /** @type {Set<string>} the groups that were opened */
  #opened = new Set();

  /** @param {Parts} parts */
  constructor({ log, plan, open }) {
    this.log = log;
    this.plan = plan;
    this.open = open;
  }

  /** @param {HTMLElement} box */
  paint(box) {
    const needed = this.plan.items.filter((item) => !item.optional);
    const groups = [
      this.#group(
        "contradictions",
        this.plan.items.filter((item) => this.#contradicts(item)),
      ),
      this.#group(
        "critical, not seen",
        needed.filter((item) => this.#isCriticalOpen(item)),
      ),
      this.#group(
        "photo wanted",
        needed.filter((item) => this.#wantsPhoto(item)),
      ),
      ...this.#tray(),
    ];
    const shown = groups.filter((group) => group !== null);
    const words = shown.length
      ? "What is still open and matters. A tap leads to each; nothing has to be done."
      : "Nothing that matters is open: no contradiction, no critical check, no photo.";
    const leave = make("a", "leave the walk", { className: "button", href: this.#wayOut() });
    const handOver = findIfAny(box, ".hand-over") ?? handOverButton();
    box.replaceChildren(make("p", words, { className: "empty" }), ...shown, handOver, leave);
  }

  #wayOut() {
    const link = document.querySelector("#leave");
    return link instanceof HTMLAnchorElement ? link.href : "/";
  }

  /**
   * Two answers, or a rating that differs from what the reading is judged, without a reason.
   *
   * @param {Item} item
   */
  #contradicts({ subject }) {
    if (hasDispute(this.log, subject)) return true;
    const rating = this.log.state.value(subject, "rating");
    const proposed = this.log.judgements[subject]?.rating;
    if (!isRating(rating) || !proposed || proposed === rating) return false;
    return !this.log.state.value(subject, "overruled_because");
  }

  /** @param {Item} item */
  #isCriticalOpen({ critical, subject }) {
    return critical && ["open", "unseen"].includes(answerOf(this.log, subject));
  }

  /**
   * Only of what was seen: an unseen thing is listed for itself.
   *
   * @param {Item} item
   */
  #wantsPhoto({ photo, subject }) {
    if (!photo || answerOf(this.log, subject) !== "seen") return false;
    return !photosOn(this.log, subject).length;
  }

  /**
   * @param {string} name
   * @param {Item[]} items
   * @returns {HTMLElement | null} null where there is none
   */
  #group(name, items) {
    if (!items.length) return null;
    const group = make("details", "", { className: "still-open" });
    group.open = this.#opened.has(name);
    // Painted anew as answers come in, a group stays as it was left.
    group.addEventListener("toggle", () => {
      if (group.open) this.#opened.add(name);
      else if (group.isConnected) this.#opened.delete(name);
    });
    const summary = make("summary", `${name} `);
    summary.append(make("b", String(items.length)));
    group.append(summary, ...items.map((item) => this.#row(item)));
    return group;
  }

  /** @param {Item} item */
  #row({ subject, sheet, title }) {
    const row = make("button", "", { type: "button", className: "sheet-row" });
    const answer = this.log.state.value(subject, "rating") ?? "open";
    row.append(make("b", title), make("span", answer), make("small", this.plan.nameOf(sheet)));
    row.addEventListener("click", () => this.open(subject));
    return row;
  }

  /** @returns {HTMLElement[]} the line of photos without a place, where there are any */
  #tray() {
    const count = photosOn(this.log, "").length;
    if (!count) return [];
    const row = make("button", "photos without a place ", { type: "button" });
    row.className = "still-open";
    row.dataset.go = "tray";
    row.append(make("b", String(count)));
    return [row];
  }
}
