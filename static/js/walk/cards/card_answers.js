// Taps and typing on the cards of checks become entries.

import { alarm, sentenceOf } from "../page/alarm.js";
import { around, find, findAll } from "../page/elements.js";
import { takePhoto } from "../photos/take_photo.js";
import { describe } from "../record/summary.js";
import { paintHistory } from "./answers.js";
import { readingField, typedReading, unitField } from "./card_fields.js";
import { depthWithReading } from "./depth.js";
import { recordGate } from "./gate.js";
import { keepUnit } from "./own_units.js";
import { paintSpelling } from "./paint_reading.js";
import { paintPhrases, togglePhrase, withPhrase } from "./phrases.js";

/** @import { Change, Log } from "../record/log.js" */
/** @import { TakenPhoto } from "../photos/take_photo.js" */

/**
 * @typedef {object} CardEvents what a card leaves to others
 * @property {(subject: string) => void} onFinding
 * @property {(photo: TakenPhoto) => void} onPhotoTaken
 */

/** What opens below a card by a button of the same name. */
const PANELS = ["photo", "note", "history"];

/** Listens once for every card inside `root`. */
export class CardAnswers {
  /**
   * @param {Log} log
   * @param {HTMLElement} root
   * @param {CardEvents} events
   */
  constructor(log, root, events) {
    this.log = log;
    this.events = events;
    root.addEventListener("click", (event) => this.#clicked(event));
    root.addEventListener("change", (event) => this.#changed(event.target));
    root.addEventListener("input", ({ target }) => this.#typing(target));
    root.addEventListener("focusout", (event) => this.#changed(event.target));
    root.addEventListener("keydown", (event) => this.#keyPressed(event));
    // A tab in the background may be killed without a word, so what is typed is recorded before.
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "hidden") this.#changed(document.activeElement);
    });
    addEventListener("pagehide", () => this.#changed(document.activeElement));
  }

  /**
   * @param {string} subject
   * @param {string} field
   * @param {any} value
   * @param {string} words
   */
  #recordTap(subject, field, value, words) {
    const act = this.log.record([[subject, field, value]], `recorded: ${words}`);
    act.catch(() => {}); // the log itself reports what could not be kept
  }

  /**
   * Record what was typed, rather than tapped, and mark its field where that could not be kept.
   *
   * @param {HTMLElement} field
   * @param {Change[]} changes
   * @param {string} words
   */
  #recordTyped(field, changes, words) {
    const act = this.log.record(this.log.unlessShown(changes), `recorded: ${words}`);
    act.then(
      () => delete field.dataset.unkept,
      () => {
        field.dataset.unkept = "yes";
      },
    );
  }

  /** @param {Event} event */
  #clicked(event) {
    const button = around(event.target, "button");
    const card = around(button, "[data-card]");
    if (!button || !card) return;
    const { act = "", gate, sign, depth, phrase, write, sure } = button.dataset;
    if (depth) this.#recordTap(subjectOf(card), "depth", depth, depth);
    else if (write) this.#write(card, button, write);
    else if (sure) this.#confirm(card, sure);
    else if (phrase) this.#addPhrase(card, phrase);
    else if (act === "keep-phrase") this.#keepPhrase(card);
    else if (act === "finding") this.events.onFinding(subjectOf(card));
    else if (PANELS.includes(act)) this.#openPanel(card, act);
    else if (gate) this.#recordGate(card, button);
    else if (sign) this.#changeSign(card, sign);
  }

  /**
   * @param {HTMLElement} card
   * @param {string} name
   */
  #openPanel(card, name) {
    const panel = find(card, `[data-panel="${name}"]`);
    showPanel(card, name, panel.hidden);
    if (panel.hidden) return;
    if (name === "history") paintHistory(this.log, panel, subjectOf(card));
    if (name !== "note") return;
    paintPhrases(this.log.who, card);
    // With phrases to tap, the keyboard would only hide them.
    if (find(card, "[data-phrases]").hidden) find(card, "[data-note]").focus();
  }

  /**
   * @param {HTMLElement} card
   * @param {string} phrase
   */
  #addPhrase(card, phrase) {
    const area = find(card, "[data-note]", HTMLTextAreaElement);
    area.value = withPhrase(area.value, phrase);
    this.#recordNote(card, area);
    paintPhrases(this.log.who, card);
  }

  /**
   * The one of two meanings that was tapped.
   *
   * @param {HTMLElement} card
   * @param {HTMLElement} button
   * @param {string} text
   */
  #write(card, button, text) {
    const id = around(button, "[data-odd]")?.dataset.odd ?? "";
    const field = readingField(card, id);
    field.value = text;
    this.#recordReading(card, id);
  }

  /**
   * An unusual reading was read again and is right.
   *
   * @param {HTMLElement} card
   * @param {string} id of the reading
   */
  #confirm(card, id) {
    const text = readingField(card, id).value.trim();
    this.#recordTap(subjectOf(card), `sure/${id}`, text, "read again");
  }

  /** @param {HTMLElement} card */
  #keepPhrase(card) {
    togglePhrase(this.log.who, find(card, "[data-note]", HTMLTextAreaElement).value);
    paintPhrases(this.log.who, card);
  }

  /**
   * @param {HTMLElement} card
   * @param {HTMLElement} target
   */
  #recordGate(card, target) {
    recordGate(this.log, card, target).catch(() => {}); // the log itself reports what was not kept
  }

  /**
   * @param {HTMLElement} card
   * @param {string} id of the reading
   */
  #changeSign(card, id) {
    const field = readingField(card, id);
    const text = field.value.trim();
    if (!text) return;
    const isNegative = /^[-−]/.test(text);
    field.value = isNegative ? text.slice(1) : `-${text.replace(/^\+/, "")}`;
    this.#changed(field);
  }

  /**
   * Enter goes on to the next reading, and after the last to the ratings.
   *
   * @param {KeyboardEvent} event
   */
  #keyPressed(event) {
    const input = around(event.target, "input[data-reading]");
    const card = around(input, "article");
    if (event.key !== "Enter" || !input || !card) return;
    event.preventDefault();
    const readings = findAll(card, "[data-reading]");
    const next = readings[readings.indexOf(input) + 1];
    (next ?? find(card, "[data-rate]")).focus();
  }

  /** @param {EventTarget | null} target */
  #typing(target) {
    const card = around(target, "[data-card]");
    if (card && around(target, "[data-note]")) paintPhrases(this.log.who, card);
  }

  /** @param {EventTarget | null} target */
  #changed(target) {
    const card = around(target, "[data-card]");
    if (!card || !(target instanceof HTMLElement)) return;
    const { reading, unitOf, photo, air, airUnit, airNote } = target.dataset;
    const id = reading ?? unitOf;
    if (photo) this.#takePhotos(/** @type {HTMLInputElement} */ (target), subjectOf(card));
    else if (air || airUnit || airNote) this.#recordGate(card, target);
    else if (id) this.#recordReading(card, id, Boolean(unitOf));
    else if (target instanceof HTMLTextAreaElement) this.#recordNote(card, target);
    else if ("overruled" in target.dataset) this.#recordWhy(card, target);
  }

  /**
   * @param {HTMLElement} card
   * @param {string} id of the reading
   * @param {boolean} [isUnit] whether its unit was changed
   */
  #recordReading(card, id, isUnit = false) {
    const field = readingField(card, id);
    const unit = unitField(card, id);
    if (isUnit && unit) keepUnit(this.log.who, subjectOf(card), id, unit);
    const value = typedReading(card, id);
    paintSpelling(this.log, card, field);
    /** @type {Change} */
    const change = [subjectOf(card), `reading/${id}`, value];
    const beside = depthWithReading(this.log, card, id, value);
    this.#recordTyped(field, [change, ...beside], describe(value));
  }

  /**
   * @param {HTMLElement} card
   * @param {HTMLTextAreaElement} area
   */
  #recordNote(card, area) {
    if (!("note" in area.dataset)) return;
    paintPhrases(this.log.who, card);
    this.#recordTyped(area, [[subjectOf(card), "note", area.value.trim() || null]], "note");
  }

  /**
   * Why the surveyor rates otherwise than the reading is judged.
   *
   * @param {HTMLElement} card
   * @param {HTMLElement} input
   */
  #recordWhy(card, input) {
    const why = /** @type {HTMLInputElement} */ (input).value.trim() || null;
    this.#recordTyped(input, [[subjectOf(card), "overruled_because", why]], "why");
  }

  /**
   * @param {HTMLInputElement} input
   * @param {string} subject
   */
  async #takePhotos(input, subject) {
    const files = [...(input.files ?? [])];
    // Emptied at once, so that the same picture may be chosen again.
    input.value = "";
    for (const file of files) {
      try {
        this.events.onPhotoTaken(await takePhoto(this.log, file, subject));
      } catch (error) {
        alarm(`A photo was not kept: ${sentenceOf(error)}`);
      }
    }
  }
}

/** @param {HTMLElement} card */
function subjectOf(card) {
  return card.dataset.subject ?? "";
}

/**
 * @param {HTMLElement} card
 * @param {string} name
 * @param {boolean} shown
 */
function showPanel(card, name, shown) {
  find(card, `[data-panel="${name}"]`).hidden = !shown;
  find(card, `[data-act="${name}"]`).setAttribute("aria-expanded", String(shown));
}
