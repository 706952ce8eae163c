// What is asked before anyone goes into an enclosed space. It cannot be passed by rating at once:
// first it is recorded how the space was looked at. Whatever is answered is recorded as it is, an
// entry without permit too, and beside it stands what was missing. It gives no permission, and it
// never says that an entry is safe.

import { around, find, findAll, findIfAny } from "../page/elements.js";
import { numberOf } from "../page/typed_number.js";
import { isRating, notSeenBecause, vocabulary } from "../page/vocabulary.js";

/** @import { Change, Log } from "../record/log.js" */

/** @typedef {Record<string, string>} Gate the answers by their keys */

/**
 * A tap, or a figure typed, within the gate.
 *
 * @typedef {object} GateAnswer
 * @property {string} key
 * @property {string} value
 * @property {boolean} isAir whether it is a reading of the air
 */

const WORDS = vocabulary.gate;
const WAYS = [WORDS.notEntered, WORDS.outside, WORDS.entered];
// Figures typed and not yet recorded, by subject: painting must not put the older figure over them.
/** @type {Map<string, Gate>} */
const waiting = new Map();

/**
 * How the space was looked at, as it is shown; earlier records answered "entered" with yes or no.
 *
 * @param {Gate} gate
 * @returns {string} or "" where that is not answered
 */
function wayOf(gate) {
  if (gate.entered === WORDS.yes) return WORDS.entered;
  if (gate.entered === WORDS.no) return WORDS.outside;
  return WAYS.includes(gate.entered) ? gate.entered : "";
}

/**
 * What is answered before an entry, with what is typed and not recorded yet.
 *
 * @param {Log} log
 * @param {string} subject
 * @returns {Gate}
 */
function gateOf(log, subject) {
  return { ...log.state.value(subject, "gate"), ...waiting.get(subject) };
}

/**
 * Whether nothing can be rated, since nobody said how the space was looked at, or it was not.
 *
 * @param {Log} log
 * @param {string} subject
 * @returns {boolean}
 */
export function gateIsShut(log, subject) {
  return isShut(wayOf(gateOf(log, subject)));
}

/** @param {string} way */
function isShut(way) {
  return !way || way === WORDS.notEntered;
}

/**
 * What records that a space was seen from outside, where nobody said anything else of it.
 *
 * @param {Log} log
 * @param {string} subject
 * @returns {Change[]}
 */
export function gateSeenFromOutside(log, subject) {
  const gate = gateOf(log, subject);
  return isShut(wayOf(gate)) ? [[subject, "gate", { ...gate, entered: WORDS.outside }]] : [];
}

/**
 * @param {Log} log
 * @param {HTMLElement} card
 */
export function paintGate(log, card) {
  const box = findIfAny(card, ".gate");
  if (!box) return;
  const { subject = "" } = card.dataset;
  const gate = gateOf(log, subject);
  paintAnswers(box, gate);
  const way = wayOf(gate);
  const shut = isShut(way);
  const rating = currentRating(log, subject);
  find(card, ".answers").hidden = shut && !rating;
  const about = shut && rating ? ratingStays(rating, way) : "";
  const missing = way === WORDS.entered ? lacking(box, gate) : "";
  const air = way === WORDS.entered || !way ? badAir(box, gate) : "";
  showSentence(box, [about, missing, air].filter(Boolean).join(" "));
}

/**
 * @param {HTMLElement} box
 * @param {Gate} gate
 */
function paintAnswers(box, gate) {
  for (const button of findAll(box, "[data-gate]")) {
    const { gate: key = "", is } = button.dataset;
    const answer = key === "entered" ? wayOf(gate) : gate[key];
    button.setAttribute("aria-pressed", String(answer === is));
  }
  for (const input of airInputs(box)) {
    const { air = "" } = input.dataset;
    const [number, unit] = partsOf(gate[air] ?? "");
    if (document.activeElement !== input) input.value = number;
    const select = unitOf(box, air);
    if (select) select.value = unit || select.options[0].value;
  }
  for (const note of findAll(box, "[data-air-note]", HTMLInputElement)) {
    if (document.activeElement !== note) note.value = gate[note.dataset.airNote ?? ""] ?? "";
  }
}

/**
 * A figure as it is recorded: in the unit of the recommendation alone, in any other with it.
 *
 * @param {string} recorded
 * @returns {[number: string, unit: string]} unit "" for the recommendation's own
 */
function partsOf(recorded) {
  const [, number, unit] = /^(\S+) (\D.*)$/.exec(recorded) ?? ["", recorded, ""];
  return [number, unit];
}

/**
 * @param {HTMLElement} box
 * @param {string} air
 */
function unitOf(box, air) {
  return findIfAny(box, `[data-air-unit="${air}"]`, HTMLSelectElement);
}

/** @param {HTMLElement} box */
function airInputs(box) {
  return findAll(box, "[data-air]", HTMLInputElement);
}

/**
 * @param {Log} log
 * @param {string} subject
 * @returns {string} the rating given, or ""
 */
function currentRating(log, subject) {
  const rating = log.state.value(subject, "rating");
  return isRating(rating) ? rating : "";
}

/**
 * A rating that was given before the gate was shut remains and counts as seen: that is shown, and
 * nothing more can be rated.
 *
 * @param {string} rating
 * @param {string} way
 * @returns {string}
 */
function ratingStays(rating, way) {
  const why = way ? "though the space was not entered" : "and counts as seen";
  return (
    `The rating given is kept (${rating}) ${why}; say again how it was looked at, or take ` +
    "the answer away."
  );
}

/**
 * @param {HTMLElement} box
 * @param {string} sentence
 */
function showSentence(box, sentence) {
  const place = find(box, "[data-gate-odd]");
  place.hidden = !sentence;
  place.textContent = sentence;
}

/**
 * What is outside the recommended figures, or cannot be read, in a sentence; "" where nothing is.
 *
 * @param {HTMLElement} box
 * @param {Gate} gate
 * @returns {string}
 */
function badAir(box, gate) {
  const faults = airInputs(box).map((input) => faultOf(box, input, gate));
  const found = faults.filter(Boolean).join("; ");
  if (!found) return "";
  return (
    `Outside the recommended figures: ${found}. Nobody goes in on these readings; look ` +
    "from outside."
  );
}

/**
 * @param {HTMLElement} box
 * @param {HTMLInputElement} input
 * @param {Gate} gate
 * @returns {string}
 */
function faultOf(box, input, gate) {
  const { air = "", label, least, below } = input.dataset;
  const [typed, unit] = partsOf((gate[air] ?? "").trim());
  const number = numberOf(typed);
  if (number === null) return typed ? `${label} must be a number such as 20.9` : "";
  const option = unit && [...(unitOf(box, air)?.options ?? [])].find(({ value }) => value === unit);
  const factor = option ? option.dataset.factor : "1";
  if (!factor) return `${label} in ${unit} cannot be compared with ${below} % without its limit`;
  const value = number * Number(factor);
  const read = `${label} of ${typed} ${unit || "%"}`;
  if (least && value < Number(least)) return `${read} is below ${least} %`;
  if (value >= Number(below)) return `${read} is not below ${below} %`;
  return "";
}

/**
 * What was missing when somebody went in, in a sentence; "" where nothing was.
 *
 * @param {HTMLElement} box
 * @param {Gate} gate
 * @returns {string}
 */
function lacking(box, gate) {
  const asked = WORDS.required.filter((key) => gate[key] !== WORDS.yes);
  const unread = airInputs(box).filter((input) => !(gate[input.dataset.air ?? ""] ?? "").trim());
  const missing = [...asked, ...unread.map((input) => input.dataset.label ?? "")];
  if (!missing.length) return "";
  return (
    `Recorded as it was, without: ${missing.join(", ")}. Nobody should go in without them; ` +
    "look from outside."
  );
}

/**
 * @param {HTMLElement} target
 * @returns {GateAnswer}
 */
function answerIn(target) {
  const { gate = "", is = "", airUnit, airNote } = target.dataset;
  if (airUnit) {
    return answerIn(find(around(target, ".gate") ?? document, `[data-air="${airUnit}"]`));
  }
  if (airNote && target instanceof HTMLInputElement) {
    return { key: airNote, value: target.value.trim(), isAir: true };
  }
  if (!(target instanceof HTMLInputElement)) return { key: gate, value: is, isAir: false };
  const { air = "" } = target.dataset;
  const unit = unitOf(around(target, ".gate") ?? target, air);
  const other = unit && unit.selectedIndex > 0 && target.value.trim() ? ` ${unit.value}` : "";
  return { key: air, value: target.value.trim() + other, isAir: true };
}

/**
 * Record an answer. It is merged into the gate when its turn comes, so that answers given quickly
 * do not lose one another.
 *
 * @param {Log} log
 * @param {HTMLElement} card
 * @param {HTMLElement} target the button or the field
 */
export async function recordGate(log, card, target) {
  const answer = answerIn(target);
  const { key, value, isAir } = answer;
  const { subject = "" } = card.dataset;
  if (isAir) waiting.set(subject, { ...waiting.get(subject), [key]: value });
  await log.record(() => changesFor(log, card, answer), "recorded: what was asked before going in");
  const typed = waiting.get(subject);
  // Something newer may have been typed meanwhile.
  if (isAir && typed?.[key] === value) delete typed[key];
}

/**
 * @param {Log} log
 * @param {HTMLElement} card
 * @param {GateAnswer} answer
 * @returns {Change[]}
 */
function changesFor(log, card, { key, value, isAir }) {
  const { subject = "" } = card.dataset;
  /** @type {Gate} */
  const gate = { ...log.state.value(subject, "gate") };
  if ((gate[key] ?? "") === value) return [];
  gate[key] = value;
  if (isAir && !value) delete gate[key];
  /** @type {Change[]} */
  const changes = [[subject, "gate", gate]];
  const notEntered = key === "entered" && value === WORDS.notEntered;
  if (notEntered && !log.state.value(subject, "rating")) {
    changes.push([subject, "rating", notSeenBecause(vocabulary.noAccess)]);
  }
  return changes;
}
