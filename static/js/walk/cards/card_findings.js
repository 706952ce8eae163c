// The findings that were made from a check, shown on its card.

import { find, make } from "../page/elements.js";
import { vocabulary } from "../page/vocabulary.js";
import { findingsOf } from "../record/summary.js";

/** @import { Log } from "../record/log.js" */

/**
 * @param {Log} log
 * @param {HTMLElement} card
 */
export function paintCardFindings(log, card) {
  const box = find(card, "[data-found]");
  const { subject } = card.dataset;
  const findings = findingsOf(log).filter((finding) => sheetOf(log, finding) === subject);
  const words = findings.length === 1 ? "1 finding" : `${findings.length} findings`;
  box.hidden = !findings.length;
  box.replaceChildren(make("p", words), ...findings.map((finding) => findingButton(log, finding)));
}

/**
 * @param {Log} log
 * @param {string} finding its subject
 * @returns {string} the subject of the check it was made from, or ""
 */
function sheetOf(log, finding) {
  const check = log.state.value(finding, "check");
  return check ? `sheet/${log.state.value(finding, "on")}/${check}` : "";
}

/**
 * @param {Log} log
 * @param {string} finding its subject
 * @returns {HTMLButtonElement}
 */
function findingButton(log, finding) {
  const urgency = log.state.value(finding, "urgency") ?? "";
  const [mostUrgent] = vocabulary.urgencies;
  const className = urgency === mostUrgent ? "danger" : "";
  const button = make("button", "", { type: "button", className });
  button.dataset.openFinding = finding;
  button.append(make("b", urgency), make("span", log.state.value(finding, "title")));
  return button;
}
