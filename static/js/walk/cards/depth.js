// How an answer is known: reported, sighted or tested. The usual depth is recorded with the rating,
// without a tap; one tap changes it.

import { find, findAll, findIfAny } from "../page/elements.js";
import { isRating, vocabulary } from "../page/vocabulary.js";

/** @import { Change, Log } from "../record/log.js" */

const [REPORTED, SIGHTED, TESTED] = vocabulary.depths;

/**
 * The readings that say under which load or condition the check was tested.
 *
 * @param {HTMLElement} card
 * @returns {string[]} their ids
 */
function loadsOf(card) {
  return (card.dataset.load ?? "").split(" ").filter(Boolean);
}

/**
 * The depth of an answer where nobody says another one, as the computer has it too.
 *
 * @param {HTMLElement} card
 * @param {(reading: string) => boolean} isTyped
 * @returns {string}
 */
export function usualDepth(card, isTyped) {
  if (card.dataset.proof === REPORTED) return REPORTED;
  const loads = loadsOf(card);
  return loads.length && loads.every(isTyped) ? TESTED : SIGHTED;
}

/**
 * @param {Log} log
 * @param {HTMLElement} card
 * @returns {(reading: string) => boolean} whether a reading is recorded
 */
function typedOn(log, card) {
  return typedOf(log, card.dataset.subject ?? "");
}

/**
 * @param {Log} log
 * @param {string} subject
 * @returns {(reading: string) => boolean} whether a reading is recorded
 */
function typedOf(log, subject) {
  return (reading) => Boolean(log.state.value(subject, `reading/${reading}`));
}

/**
 * What is recorded beside a rating that is given: its depth, where it has none yet.
 *
 * @param {Log} log
 * @param {HTMLElement} card
 * @param {any} rating
 * @param {string} subject of the unit that is rated
 * @returns {Change[]}
 */
export function depthWithRating(log, card, rating, subject) {
  if (!isRating(rating) || log.state.value(subject, "depth")) return [];
  return [[subject, "depth", usualDepth(card, typedOf(log, subject))]];
}

/**
 * What is recorded beside a reading: a depth that was only the usual one follows the load.
 *
 * @param {Log} log
 * @param {HTMLElement} card
 * @param {string} id of the reading
 * @param {unknown} value as it is recorded now
 * @returns {Change[]}
 */
export function depthWithReading(log, card, id, value) {
  const { subject = "" } = card.dataset;
  const before = typedOn(log, card);
  const usual = usualDepth(card, before);
  const now = usualDepth(card, (reading) => (reading === id ? Boolean(value) : before(reading)));
  const follows = log.state.value(subject, "depth") === usual && now !== usual;
  return follows ? [[subject, "depth", now]] : [];
}

/**
 * @param {Log} log
 * @param {HTMLElement} card
 * @param {unknown} rating
 */
export function paintDepth(log, card, rating) {
  const { subject = "" } = card.dataset;
  const box = find(card, ".depth");
  const depth = log.state.value(subject, "depth");
  box.hidden = !isRating(rating);
  for (const button of findAll(box, "[data-depth]")) {
    button.setAttribute("aria-pressed", String(button.dataset.depth === depth));
  }
  find(box, "[data-depth-odd]").textContent = box.hidden ? "" : oddDepth(log, card, depth);
}

/**
 * What keeps an answer from counting as it says, in a few words.
 *
 * @param {Log} log
 * @param {HTMLElement} card
 * @param {unknown} depth
 * @returns {string}
 */
function oddDepth(log, card, depth) {
  if (!depth) return "not said how it is known";
  const isTyped = typedOn(log, card);
  const missing = loadsOf(card).filter((reading) => !isTyped(reading));
  if (depth === TESTED && missing.length) {
    const labels = missing.map((id) => findIfAny(card, `[data-id="${id}"]`)?.dataset.label ?? id);
    return `counts as ${SIGHTED} until it is written: ${labels.join(", ")}`;
  }
  const { proof = SIGHTED } = card.dataset;
  const isDeepEnough = vocabulary.depths.indexOf(String(depth)) >= vocabulary.depths.indexOf(proof);
  return isDeepEnough ? "" : `${proof} would prove it`;
}
