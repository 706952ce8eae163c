// A row, painted from the state: the answer of what its ratings are about, and the mark of each
// unit.

import { gateIsShut } from "../cards/gate.js";
import { find, findAll, findIfAny } from "../page/elements.js";
import { isNotSeen, isRating, notSeenBecause, vocabulary } from "../page/vocabulary.js";
import { answerOf, describe, hasDispute, photosOn } from "../record/summary.js";
import { addressedIn, subjectsIn } from "./like_units.js";

/** @import { Log } from "../record/log.js" */

/** Letters of a reading that is shown beside the title. */
const LONGEST_READING = 12;

/**
 * @param {Log} log
 * @param {HTMLElement} row
 */
export function paintRow(log, row) {
  const subjects = addressedIn(row);
  const answers = new Set(subjects.map((subject) => answerShown(log, subject)));
  const [answer] = answers.size === 1 ? answers : [""];
  paintRatings(log, row, subjects, answer);
  paintGateFirst(log, row, subjects, answer);
  for (const button of findAll(row, ".units [data-unit]")) paintUnit(log, button);
  const disputed = subjectsIn(row).some((subject) => hasDispute(log, subject));
  find(row, "[data-two-answers]").hidden = !disputed;
  paintSister(log, row, subjects);
  paintMarks(log, row, subjects);
  find(row, "[data-known]").textContent = subjects.length === 1 ? knownOf(log, subjects[0]) : "";
}

/**
 * @param {Log} log
 * @param {string} subject
 * @returns {string} "" where there is none; where there are two, neither is shown as the answer
 */
function answerShown(log, subject) {
  if (log.state.disputed(subject, "rating")) return "two answers";
  return log.state.value(subject, "rating") ?? "";
}

/**
 * @param {Log} log
 * @param {string} subject
 * @returns {string} the rating that is proposed and not answered, or ""
 */
function proposedOf(log, subject) {
  return log.state.value(subject, "rating") ? "" : (log.judgements[subject]?.rating ?? "");
}

/**
 * @param {HTMLElement} button
 * @param {boolean} pressed
 */
function setPressed(button, pressed) {
  button.setAttribute("aria-pressed", String(pressed));
}

/**
 * @param {Log} log
 * @param {HTMLElement} row
 * @param {string[]} subjects
 * @param {string} answer that all of them have
 */
function paintRatings(log, row, subjects, answer) {
  const proposals = new Set(subjects.map((subject) => proposedOf(log, subject)));
  const [proposed] = proposals.size === 1 ? proposals : [""];
  for (const button of findAll(row, ".rate [data-rate]")) {
    const { rate } = button.dataset;
    setPressed(button, rate === answer);
    button.classList.toggle("proposed", !answer && proposed === rate);
  }
  const notSeen = find(row, ".rate [data-act=not-seen]");
  notSeen.textContent = isNotSeen(answer) ? answer : vocabulary.notSeen;
  setPressed(notSeen, isNotSeen(answer));
  for (const button of findAll(row, "[data-reason]")) {
    setPressed(button, answer === notSeenBecause(button.dataset.reason ?? ""));
  }
}

/**
 * Where a space would have to be entered, it is said first how it is looked at.
 *
 * @param {Log} log
 * @param {HTMLElement} row
 * @param {string[]} subjects
 * @param {string} answer
 */
function paintGateFirst(log, row, subjects, answer) {
  if (!("enclosed" in row.dataset)) return;
  const isShut = subjects.every((subject) => gateIsShut(log, subject));
  const asksFirst = isShut && !isRating(answer);
  for (const button of findAll(row, ".rate [data-rate]", HTMLButtonElement)) {
    button.hidden = asksFirst;
    button.disabled = isShut && button.dataset.rate !== answer;
  }
  for (const act of ["outside", "gate"]) find(row, `[data-act=${act}]`).hidden = !asksFirst;
}

/**
 * @param {Log} log
 * @param {HTMLElement} button of a unit
 */
function paintUnit(log, button) {
  const mark = findIfAny(button, ".mark");
  if (!mark) return;
  const { unit = "", name = "" } = button.dataset;
  const answer = answerShown(log, unit);
  const proposed = proposedOf(log, unit);
  const shown = answer || proposed;
  mark.className = isRating(shown) ? `mark l-${shown}` : `mark m-${kindOf(shown)}`;
  mark.classList.toggle("proposed", !answer && Boolean(proposed));
  const words = answer || (proposed ? `proposed ${proposed}` : "open");
  button.setAttribute("aria-label", `${name}: ${words}`);
}

/** @param {string} answer */
function kindOf(answer) {
  if (!answer) return "open";
  if (isNotSeen(answer)) return "unseen";
  return answer === vocabulary.notFitted ? "none" : "two";
}

/**
 * @param {Log} log
 * @param {HTMLElement} row
 * @param {string[]} subjects
 */
function paintSister(log, row, subjects) {
  const name = subjects.length === 1 ? log.state.value(subjects[0], "as_unit") : "";
  const place = find(row, "[data-as-unit]");
  place.hidden = !name;
  place.textContent = name ? `answered as ${name}, not by itself` : "";
}

/**
 * What was seen is not marked as critical any more, and what has its photo wants none.
 *
 * @param {Log} log
 * @param {HTMLElement} row
 * @param {string[]} subjects
 */
function paintMarks(log, row, subjects) {
  for (const mark of findAll(row, "[data-mark]")) {
    const isPhoto = mark.dataset.mark === "photo";
    mark.hidden = subjects.every((subject) =>
      isPhoto ? hasPhoto(log, subject) : answerOf(log, subject) === "seen",
    );
  }
}

/**
 * @param {Log} log
 * @param {string} subject
 */
function hasPhoto(log, subject) {
  return photosOn(log, subject).length > 0;
}

/**
 * How the answer is known, and a reading, in a few words.
 *
 * @param {Log} log
 * @param {string} subject
 * @returns {string}
 */
function knownOf(log, subject) {
  const { state } = log;
  const rating = state.value(subject, "rating");
  const depth = isRating(rating) ? state.value(subject, "depth") : "";
  const fields = state.fields(subject).filter((field) => field.startsWith("reading/"));
  const readings = fields.map((field) => state.value(subject, field)).filter(Boolean);
  const [first = ""] = readings.map(describe).filter((words) => words.length <= LONGEST_READING);
  const others = readings.length - (first ? 1 : 0);
  const words = first ? `${others} more` : `${others} ${others === 1 ? "reading" : "readings"}`;
  const none = rating === vocabulary.notFitted ? rating : "";
  return [none, depth, first, others ? words : ""].filter(Boolean).join(" · ");
}
