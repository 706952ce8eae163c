// What a row has below its ratings, painted from the state: what is judged, disputed and unfolded.

import { byId, find, findAll, findIfAny, make } from "../page/elements.js";
import { isRating, vocabulary } from "../page/vocabulary.js";
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
 * Paint what a row of one unit has below its ratings: what it is asked, and what is unfolded.
 *
 * @param {Log} log
 * @param {HTMLElement} card
 */
export function paintCard(log, card) {
  const { subject } = card.dataset;
  paintWhy(log, card);
  paintRatingDispute(log, card);
  const body = find(card, ".body");
  if (body.hidden || !subject) return;
  const rating = log.state.value(subject, "rating");
  paintAnswer(card, log.state.disputed(subject, "rating") ? "" : rating);
  paintJudgement(log, card, subject);
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
 * @param {HTMLElement} card
 * @param {string | null} rating
 */
function paintAnswer(card, rating) {
  const notFitted = rating === vocabulary.notFitted;
  find(card, "[data-act=not-fitted]").setAttribute("aria-pressed", String(notFitted));
  find(card, "[data-act=take-away]").hidden = !rating;
}

/**
 * Two answers are shown whether or not the row is unfolded.
 *
 * @param {Log} log
 * @param {HTMLElement} card
 */
function paintRatingDispute(log, card) {
  const { subject } = card.dataset;
  const disputed = Boolean(subject) && log.state.disputed(subject ?? "", "rating");
  let box = findIfAny(card, "[data-dispute=rating]");
  if (disputed && !box) {
    box = make("div", "", { className: "disputed" });
    box.dataset.dispute = "rating";
    find(card, ".body").before(box);
  }
  if (!box) return;
  if (disputed) paintDisputes(log, card);
  box.hidden = !disputed;
}

/**
 * @param {Log} log
 * @param {HTMLElement} card
 * @param {string} subject
 */
function paintJudgement(log, card, subject) {
  const box = find(card, ".judged");
  const lines = judgementLines(log, card, subject);
  box.hidden = !lines.length;
  box.replaceChildren(...lines);
}

/**
 * What is judged of a unit's readings.
 *
 * @param {Log} log
 * @param {HTMLElement} card
 * @param {string} subject
 * @returns {(string | HTMLElement)[]}
 */
export function judgementLines(log, card, subject) {
  const judgement = log.judgements[subject] ?? {};
  const rating = log.state.value(subject, "rating");
  /** @type {(string | HTMLElement)[]} */
  const lines = [];
  if (judgement.waiting && "criterion" in card.dataset) {
    const by = log.judgesHere ? "this device judges them in a moment" : WAITS_FOR_COMPUTER;
    lines.push(`Readings kept; ${by}.`);
  }
  if (judgement.cannot) lines.push(judgement.cannot);
  if (judgement.sentence) lines.push(...sentenceLines(judgement, judgement.sentence, rating));
  return lines;
}

/**
 * @param {Judgement} judgement
 * @param {string} sentence
 * @param {string | null} rating the surveyor's
 * @returns {(string | HTMLElement)[]}
 */
function sentenceLines(judgement, sentence, rating) {
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
 */
function paintWhy(log, card) {
  const { subject = "" } = card.dataset;
  const rating = log.state.value(subject, "rating");
  const proposed = log.judgements[subject]?.rating;
  const isOverruled = Boolean(isRating(rating) && proposed && proposed !== rating);
  const box = findIfAny(card, "[data-why]") ?? (isOverruled ? makeWhy(card, subject) : null);
  if (!box) return;
  const input = find(box, "[data-overruled]", HTMLInputElement);
  box.hidden = !isOverruled;
  find(box, "[data-why-proposed]").textContent = proposed ?? "";
  const why = log.state.value(subject, "overruled_because");
  if (document.activeElement !== input && !input.dataset.unkept) input.value = why ?? "";
}

/**
 * @param {HTMLElement} card
 * @param {string} subject
 * @returns {HTMLElement}
 */
function makeWhy(card, subject) {
  const { content } = byId("part-why", HTMLTemplateElement);
  find(card, ".body").before(content.cloneNode(true));
  const box = find(card, "[data-why]");
  const id = `why--${subject.replaceAll("/", "_")}`;
  find(box, "input").id = id;
  find(box, "label", HTMLLabelElement).htmlFor = id;
  return box;
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
