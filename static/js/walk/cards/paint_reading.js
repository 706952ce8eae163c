// A reading's row: what is recorded in it, what was understood of what was typed, and what is asked
// back. Nothing typed is ever refused here; it is kept as it is.

import { find, findIfAny, make } from "../page/elements.js";
import { understand } from "../page/typed_number.js";
import { unitField } from "./card_fields.js";
import { unitOf } from "./own_units.js";

/** @import { Log } from "../record/log.js" */
/** @import { ReadingField } from "./card_fields.js" */

const WHOLE_NUMBER = /^[+−-]?\d+$/;
const SIGNIFICANT = 6;

/**
 * @param {Log} log
 * @param {HTMLElement} card
 * @param {ReadingField} field
 */
export function paintReading(log, card, field) {
  const { reading: id = "", unkept } = field.dataset;
  const recorded = log.state.value(card.dataset.subject ?? "", `reading/${id}`);
  // What could not be kept stays in its field, so that it can be kept later.
  if (document.activeElement !== field && !unkept) field.value = recorded?.value ?? "";
  const unit = unitField(card, id);
  if (unit && document.activeElement !== unit) {
    const usual = field.value ? "" : unitOf(log.who, card.dataset.subject ?? "", id, unit);
    showUnit(unit, recorded?.unit || usual);
  }
  paintSpelling(log, card, field);
}

/**
 * @param {HTMLSelectElement} field
 * @param {string} unit "" leaves it as it is
 */
function showUnit(field, unit) {
  if (!unit) return;
  // An older page may have offered a unit that this page does not.
  const isOffered = [...field.options].some((option) => option.value === unit);
  if (!isOffered) field.add(new Option(unit));
  field.value = unit;
}

/**
 * Show what was understood of what is typed, and ask back what is not clear.
 *
 * @param {Log} log
 * @param {HTMLElement} card
 * @param {ReadingField} field
 */
export function paintSpelling(log, card, field) {
  const { reading: id = "", kind } = field.dataset;
  const typed = field.value.trim();
  const unit = unitField(card, id)?.value ?? "";
  const read = kind === "number" && typed ? understand(typed, unit) : {};
  const place = find(card, `[data-odd="${id}"]`);
  const understood = findIfAny(card, `[data-understood="${id}"]`);
  if (understood) {
    understood.hidden = read.value === undefined;
    understood.textContent = read.value === undefined ? "" : `= ${shown(read.value, read.unit)}`;
  }
  const wanted = wantedInstead(typed, kind, read);
  field.setAttribute("aria-invalid", String(Boolean(wanted || read.ways)));
  const asks = read.ways ? twoWays(read.ways) : implausible(log, card, field, read);
  const content = wanted ? [`Kept as typed, but it cannot be judged: write ${wanted}.`] : asks;
  place.hidden = !content.length;
  place.replaceChildren(...content);
}

/**
 * @param {number} value
 * @param {string} [unit]
 */
function shown(value, unit) {
  const number = String(Number(value.toPrecision(SIGNIFICANT))).replace("-", "−");
  return `${number} ${unit ?? ""}`.trim();
}

/**
 * @param {string} typed
 * @param {string | undefined} kind of number
 * @param {import("../page/typed_number.js").Understood} read
 * @returns {string} what would be right, or "" where it is, or where it is asked back
 */
function wantedInstead(typed, kind, read) {
  if (!typed) return "";
  if (kind === "whole" && !WHOLE_NUMBER.test(typed)) return "a whole number";
  const isUnread = kind === "number" && read.value === undefined && !read.ways;
  return isUnread ? "a number such as 9.6" : "";
}

/**
 * @param {string[]} ways
 * @returns {(string | HTMLElement)[]}
 */
function twoWays(ways) {
  const buttons = ways.map((way) => {
    const button = make("button", way, { type: "button" });
    button.dataset.write = way;
    return button;
  });
  return ["Kept as typed, but it can be read in two ways. Which is it? ", ...buttons];
}

/**
 * A value outside what its criterion accepts is asked about until somebody says that it is right.
 *
 * @param {Log} log
 * @param {HTMLElement} card
 * @param {ReadingField} field
 * @param {import("../page/typed_number.js").Understood} read
 * @returns {(string | HTMLElement)[]}
 */
function implausible(log, card, field, { value, unit = "" }) {
  const { reading: id = "" } = field.dataset;
  const [low, high] = plausibleIn(card, id, unit);
  if (value === undefined || low === undefined || (value >= low && value <= high)) return [];
  const sure = log.state.value(card.dataset.subject ?? "", `sure/${id}`);
  if (sure === field.value.trim()) return [];
  const button = make("button", "it is right", { type: "button" });
  button.dataset.sure = id;
  const range = `${shown(low)} to ${shown(high, unit)}`;
  return [`${shown(value, unit)} is unusual: ${range} is expected. Read it again. `, button];
}

/**
 * @param {HTMLElement} card
 * @param {string} id
 * @param {string} unit
 * @returns {number[]} low and high in this unit; none where nothing says what is plausible
 */
function plausibleIn(card, id, unit) {
  const row = findIfAny(card, `[data-row][data-id="${id}"]`);
  const units = (row?.dataset.options ?? "").split("|");
  const range = (row?.dataset.ranges ?? "").split("|")[units.indexOf(unit)];
  return range ? range.split(" ").map(Number) : [];
}
