// Which rows of a stop are shown: all, or the critical, the unseen, the poor or worse, those that
// want a photo; and, over the whole vessel, those in which a word occurs.

import { findAll, find, make } from "../page/elements.js";
import { vocabulary } from "../page/vocabulary.js";
import { answerOf, photosOn } from "../record/summary.js";
import { readOwn, writeOwn } from "../storage/own_settings.js";

/** @import { Log } from "../record/log.js" */
/** @import { CheckTexts } from "../rows/check_texts.js" */
/** @import { Item, Plan } from "../screens/plan.js" */

const [, , ...POOR_OR_WORSE] = vocabulary.ratings;
const PAUSE_MS = 150;
/** @type {Record<string, (log: Log, item: Item) => boolean>} */
const TESTS = {
  critical: (_, { critical }) => critical,
  unseen: (log, { subject }) => ["open", "unseen"].includes(answerOf(log, subject)),
  "poor or worse": (log, { subject }) => POOR_OR_WORSE.includes(ratingOf(log, subject)),
  "photo wanted": (log, { photo, subject }) => photo && !photosOn(log, subject).length,
};

/**
 * @param {Log} log
 * @param {string} subject
 * @returns {string} the rating that counts
 */
function ratingOf(log, subject) {
  return log.state.value(subject, "rating") ?? log.judgements[subject]?.rating ?? "";
}

/** The filters, kept on this device for the inspection. Tells of `change`. */
export class Filters extends EventTarget {
  /** @type {Set<string>} */
  chosen;
  word = "";
  #timer = 0;

  /**
   * @param {Log} log
   * @param {Plan} plan
   * @param {CheckTexts} texts
   */
  constructor(log, plan, texts) {
    super();
    this.log = log;
    this.plan = plan;
    this.texts = texts;
    this.key = `filter/${log.inspection}`;
    const kept = readOwn(this.key, { chosen: /** @type {string[]} */ ([]), word: "" });
    this.chosen = new Set(kept.chosen);
    this.word = kept.word;
    this.box = make("div", "", { className: "filters" });
    this.box.setAttribute("role", "group");
    this.box.setAttribute("aria-label", "which rows are shown");
    this.box.append(...Object.keys(TESTS).map((name) => this.#button(name)));
    this.count = make("p", "", { className: "shown" });
    this.count.setAttribute("role", "status");
    this.search = this.#search();
    this.paint();
  }

  get any() {
    return this.chosen.size > 0;
  }

  /** Whether anything is searched for. */
  get asks() {
    return this.any || plain(this.word).trim() !== "";
  }

  /** @param {string} name */
  #button(name) {
    const button = make("button", name, { type: "button" });
    button.dataset.filter = name;
    button.addEventListener("click", () => {
      if (!this.chosen.delete(name)) this.chosen.add(name);
      this.#changed();
    });
    return button;
  }

  #search() {
    const label = make("label", "a word of the check, or of its unit ", { className: "search" });
    const input = make("input", "", { type: "search", value: this.word, autocomplete: "off" });
    input.enterKeyHint = "search";
    input.addEventListener("input", () => {
      this.word = input.value;
      clearTimeout(this.#timer);
      this.#timer = setTimeout(() => this.#changed(), PAUSE_MS);
    });
    label.append(input);
    return label;
  }

  #changed() {
    writeOwn(this.key, { chosen: [...this.chosen], word: this.word });
    this.paint();
    this.dispatchEvent(new Event("change"));
  }

  /** Show which are chosen. */
  paint() {
    for (const button of findAll(this.box, "[data-filter]")) {
      const isChosen = this.chosen.has(button.dataset.filter ?? "");
      button.setAttribute("aria-pressed", String(isChosen));
    }
  }

  /**
   * @param {Item} item
   * @returns {boolean} whether every chosen filter lets it through
   */
  shows(item) {
    return [...this.chosen].every((name) => TESTS[name]?.(this.log, item) ?? true);
  }

  /**
   * @returns {Item[]} of the whole vessel, those that the filters let through and in which each
   *   word typed occurs; none where nothing is asked
   */
  found() {
    const words = plain(this.word).split(" ").filter(Boolean);
    if (!this.asks) return [];
    return this.plan.items.filter((item) => {
      if (!this.shows(item)) return false;
      const text = this.#textOf(item);
      return words.every((word) => text.includes(word));
    });
  }

  /** @param {Item} item */
  #textOf({ title, sheet, space, check }) {
    const [system] = sheet.split("/");
    const { ask = "", look = "", bad = "" } = this.texts.of(system, check) ?? {};
    const place = this.plan.spaces.get(space);
    return plain([title, this.plan.nameOf(sheet), place, ask, look, bad].join(" "));
  }

  /** Put the cursor where the word is typed. */
  focus() {
    this.texts.read();
    find(this.search, "input").focus();
  }
}

/**
 * @param {string} text
 * @returns {string} in lower case, without accents
 */
function plain(text) {
  return text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
}
