// The unit that a person chose stays: for the same reading of the same check, else for the
// quantity.

import { readOwn, writeOwn } from "../storage/own_settings.js";

/** @param {string} who */
const keyOf = (who) => `units/${who}`;

/**
 * The reading of a check, alike for all units of a system.
 *
 * @param {string} subject
 * @param {string} id of the reading
 */
function readingOf(subject, id) {
  const [, system, , check] = subject.split("/");
  return `${system}/${check}/${id}`;
}

/**
 * @param {HTMLSelectElement} field
 * @returns {string} the unit in which the quantity is asked
 */
function askedUnit(field) {
  return field.options[0]?.value ?? "";
}

/**
 * @param {string} who
 * @param {string} subject
 * @param {string} id of the reading
 * @param {HTMLSelectElement} field in which the unit is chosen
 * @returns {string} "" where nothing was chosen that this field offers
 */
export function unitOf(who, subject, id, field) {
  const kept = readOwn(keyOf(who), /** @type {Record<string, string>} */ ({}));
  const unit = kept[readingOf(subject, id)] ?? kept[askedUnit(field)] ?? "";
  return [...field.options].some((option) => option.value === unit) ? unit : "";
}

/**
 * @param {string} who
 * @param {string} subject
 * @param {string} id of the reading
 * @param {HTMLSelectElement} field
 */
export function keepUnit(who, subject, id, field) {
  const kept = readOwn(keyOf(who), /** @type {Record<string, string>} */ ({}));
  const { value } = field;
  writeOwn(keyOf(who), { ...kept, [readingOf(subject, id)]: value, [askedUnit(field)]: value });
}
