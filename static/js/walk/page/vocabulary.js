// The words that are recorded, as the computer names them: the page carries them as data, so that
// they are written in one place only.

import { byId } from "./elements.js";

/**
 * @typedef {object} Vocabulary
 * @property {string[]} ratings from the best to the worst
 * @property {string} notFitted the answer that takes a check out of the count
 * @property {string} notSeen begins an answer that names why a check was not seen
 * @property {string[]} reasons why a check was not seen
 * @property {string[]} depths how an answer is known, the least first
 * @property {string[]} walkedPast what was seen against a unit in passing: nothing, something
 * @property {string} noAccess the reason where a space was not entered
 * @property {string} noTime the reason that leaves a check worth another look
 * @property {string[]} vesselStates in which she may be met
 * @property {string[]} berths where she may be met
 * @property {string[]} urgencies of a finding, the most urgent first
 * @property {string[]} proseFields fields whose texts are joined rather than chosen between
 * @property {GateWords} gate
 * @property {import("./typed_number.js").Measures} measures
 * @property {OutcomeWords} outcomes
 */

/**
 * @typedef {object} GateWords the answers about an enclosed space
 * @property {string} yes
 * @property {string} no
 * @property {string[]} required what must be answered with yes before anyone goes in
 * @property {string} entered
 * @property {string} outside
 * @property {string} notEntered
 */

/**
 * @typedef {object} OutcomeWords what became of an entry that was handed over
 * @property {string[]} taken
 * @property {string} refused begins a refusal; its sentence follows
 */

/** @type {Vocabulary} */
export const vocabulary = JSON.parse(byId("vocabulary").textContent ?? "");

/**
 * @param {unknown} answer
 * @returns {boolean} whether an answer is one of the ratings
 */
export function isRating(answer) {
  return typeof answer === "string" && vocabulary.ratings.includes(answer);
}

/**
 * @param {string} reason
 * @returns {string} the answer of a check that was not seen for this reason
 */
export function notSeenBecause(reason) {
  return `${vocabulary.notSeen}: ${reason}`;
}

/**
 * @param {string} outcome of an entry or a photo that was refused
 * @returns {string} why, without the word that begins a refusal
 */
export function whyRefused(outcome) {
  const beginning = `${vocabulary.outcomes.refused}: `;
  return outcome.startsWith(beginning) ? outcome.slice(beginning.length) : outcome;
}

/**
 * @param {unknown} answer
 * @returns {boolean} whether an answer says that a check was not seen
 */
export function isNotSeen(answer) {
  return typeof answer === "string" && answer.startsWith(vocabulary.notSeen);
}
