// A check's card, painted from the state: the answer, what is proposed, what is disputed.

import { find, findAll, make } from "../page/elements.js";
import { isNotSeen, isRating, notSeenBecause, vocabulary } from "../page/vocabulary.js";
import { paintPhotoStrip } from "../photos/thumbnails.js";
import { paintDisputes, paintHistory } from "./answers.js";
import { paintCardFindings } from "./card_findings.js";
import { readingField } from "./card_fields.js";
import { paintDepth } from "./depth.js";
import { paintGate } from "./gate.js";
import { paintReading } from "./paint_reading.js";

/** @import { Judgement, Log } from "../record/log.js" */
/** @import { ReadingField } from "./card_fields.js" */

/** Begins the note that names the limits; the cited source names them once more. */
const LIMITS_NOTE = "Limits used";
const WAITS_FOR_COMPUTER = "waiting until the computer has judged";

/**
 * @param {Log} log
 * @param {HTMLElement} card
 */
export function paintCard(log, card) {
  const { subject = "" } = card.dataset;
  const rating = log.state.value(subject, "rating");
  const judgement = log.judgements[subject];
  const disputed = log.state.disputed(subject, "rating");
  // Where there are two answers, neither of them is shown as the answer.
  paintRating(card, disputed ? "two answers" : rating, judgement);
  paintJudgement(log, card, rating, judgement);
  paintWhy(log, card, rating, judgement?.rating);
  paintSister(log, card);
  for (const field of readingFields(card)) paintReading(log, card, field);
  paintDepth(log, card, rating);
  paintGate(log, card);
  paintNote(card, log.state.value(subject, "note"));
  paintPhotos(log, card, subject);
  paintCardFindings(log, card);
  paintDisputes(log, card);
  const history = find(card, "[data-panel=history]");
  if (!history.hidden) paintHistory(log, history, subject);
}

/**
 * @param {HTMLElement} button
 * @param {boolean} pressed
 */
function setPressed(button, pressed) {
  button.setAttribute("aria-pressed", String(pressed));
}

/**
 * @param {HTMLElement} card
 * @param {string | null} rating
 * @param {Judgement} [judgement]
 */
function paintRating(card, rating, judgement) {
  for (const button of findAll(card, "[data-rate]")) {
    const { rate } = button.dataset;
    setPressed(button, rate === rating);
    button.classList.toggle("proposed", !rating && judgement?.rating === rate);
  }
  for (const button of findAll(card, "[data-reason]")) {
    setPressed(button, rating === notSeenBecause(button.dataset.reason ?? ""));
  }
  const notSeen = find(card, "[data-act=not-seen]");
  notSeen.textContent = isNotSeen(rating) ? rating : `${vocabulary.notSeen}, because…`;
  setPressed(notSeen, isNotSeen(rating));
  setPressed(find(card, "[data-act=not-fitted]"), rating === vocabulary.notFitted);
  find(card, "[data-act=take-away]").hidden = !rating;
}

/**
 * @param {Log} log
 * @param {HTMLElement} card
 * @param {string | null} rating
 * @param {Judgement} [judgement]
 */
function paintJudgement(log, card, rating, judgement = {}) {
  const box = find(card, ".judged");
  /** @type {(string | HTMLElement)[]} */
  const lines = [];
  if (judgement.waiting && "criterion" in card.dataset) {
    const by = log.judgesHere ? "this device judges them in a moment" : WAITS_FOR_COMPUTER;
    lines.push(`Readings kept; ${by}.`);
  }
  if (judgement.cannot) lines.push(judgement.cannot);
  if (judgement.sentence) lines.push(...judgementLines(judgement, judgement.sentence, rating));
  box.hidden = !lines.length;
  box.replaceChildren(...lines);
}

/**
 * @param {Judgement} judgement
 * @param {string} sentence
 * @param {string | null} rating the surveyor's
 * @returns {(string | HTMLElement)[]}
 */
function judgementLines(judgement, sentence, rating) {
  const { rating: proposed, notes = [], source, here } = judgement;
  /** @type {(string | HTMLElement)[]} */
  const lines = [];
  if (proposed) lines.push(make("b", `${capitalised(proposed)}. `));
  lines.push(sentence);
  const shown = notes.filter((note) => !note.startsWith(LIMITS_NOTE));
  lines.push(...shown.map((note) => make("span", note)));
  if (source) lines.push(make("cite", source));
  if (here) {
    lines.push(make("cite", "Judged on this device, by the computer's own rules."));
  }
  if (!rating && proposed) {
    lines.push(make("cite", "Proposed: counts as seen until you rate it yourself."));
  }
  if (isRating(rating) && proposed && proposed !== rating) {
    lines.push(make("strong", `you overruled the proposed ${proposed}`));
  }
  return lines;
}

/**
 * Ask why where the surveyor's rating is another than the reading's.
 *
 * @param {Log} log
 * @param {HTMLElement} card
 * @param {string | null} rating
 * @param {string} [proposed]
 */
function paintWhy(log, card, rating, proposed) {
  const box = find(card, "[data-why]");
  const input = find(box, "[data-overruled]", HTMLInputElement);
  const why = log.state.value(card.dataset.subject ?? "", "overruled_because");
  box.hidden = !(isRating(rating) && proposed && proposed !== rating);
  find(box, "[data-why-proposed]").textContent = proposed ?? "";
  if (document.activeElement !== input && !input.dataset.unkept) input.value = why ?? "";
}

/**
 * @param {Log} log
 * @param {HTMLElement} card
 */
function paintSister(log, card) {
  const name = log.state.value(card.dataset.subject ?? "", "as_unit");
  const place = find(card, "[data-as-unit]");
  place.hidden = !name;
  place.textContent = name ? `answered as ${name}, not by itself` : "";
}

/** @param {string} word */
function capitalised(word) {
  return word[0].toUpperCase() + word.slice(1);
}

/**
 * @param {HTMLElement} card
 * @returns {ReadingField[]}
 */
function readingFields(card) {
  const ids = findAll(card, "[data-reading]").map((field) => field.dataset.reading ?? "");
  return ids.map((id) => readingField(card, id));
}

/**
 * @param {HTMLElement} card
 * @param {string | null} note
 */
function paintNote(card, note) {
  const area = find(card, "[data-note]", HTMLTextAreaElement);
  if (document.activeElement !== area && !area.dataset.unkept) area.value = note ?? "";
  if (note) find(card, "[data-panel=note]").hidden = false;
}

/**
 * @param {Log} log
 * @param {HTMLElement} card
 * @param {string} subject
 */
function paintPhotos(log, card, subject) {
  const count = paintPhotoStrip(log, find(card, "[data-photos]"), subject);
  find(card, "[data-act=photo]").textContent = count ? `photo ${count}` : "photo";
}
