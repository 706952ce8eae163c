// The fields of a card and what they would be recorded as.

import { find, findIfAny } from "../page/elements.js";
import { understand } from "../page/typed_number.js";

/** @typedef {HTMLInputElement | HTMLSelectElement} ReadingField */

/**
 * @typedef {object} Typed what was typed, as it is recorded
 * @property {string} value
 * @property {string} [unit]
 */

/**
 * @param {HTMLElement} card
 * @param {string} id of the reading
 * @returns {ReadingField}
 */
export function readingField(card, id) {
  return /** @type {ReadingField} */ (find(card, `[data-reading="${id}"]`));
}

/**
 * @param {HTMLElement} card
 * @param {string} id of the reading
 * @returns {HTMLSelectElement | null} the unit's field, where the reading has a unit
 */
export function unitField(card, id) {
  return findIfAny(card, `[data-unit-of="${id}"]`, HTMLSelectElement);
}

/**
 * A reading as it is in its field; null where nothing is typed.
 *
 * @param {HTMLElement} card
 * @param {string} id of the reading
 * @returns {Typed | null}
 */
export function typedReading(card, id) {
  const value = readingField(card, id).value.trim();
  if (!value) return null;
  const unit = unitField(card, id);
  // A measure that names its unit is kept in that unit, whatever the field says.
  return unit ? { value, unit: understand(value, unit.value).unit ?? unit.value } : { value };
}
