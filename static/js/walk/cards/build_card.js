// Cards made from what the page holds once: the check of its system, the parts all cards share, the
// rows of each kind of reading.

import { byId, find, findAll, findIfAny, make } from "../page/elements.js";

/**
 * A copy of a check's card for one unit; ids become unique so that every label keeps its input.
 *
 * @param {HTMLElement} source the check's card in the template of its system
 * @param {string} subject
 * @param {string} of the unit or the space, as the card names it
 * @returns {HTMLElement}
 */
export function buildCard(source, subject, of) {
  const card = /** @type {HTMLElement} */ (source.cloneNode(true));
  for (const place of findAll(card, "[data-part]")) {
    place.replaceWith(copyOfTemplate(`part-${place.dataset.part}`));
  }
  for (const row of findAll(card, "[data-row]")) fillRow(row);
  const suffix = subject.replaceAll("/", "_");
  for (const element of findAll(card, "[id]")) element.id += `--${suffix}`;
  for (const label of findAll(card, "label[for]", HTMLLabelElement)) {
    label.htmlFor += `--${suffix}`;
  }
  card.dataset.subject = subject;
  card.id = `card--${suffix}`;
  find(card, "[data-of]").textContent = of;
  return card;
}

/**
 * @param {string} id
 * @returns {Node}
 */
function copyOfTemplate(id) {
  return byId(id, HTMLTemplateElement).content.cloneNode(true);
}

/**
 * The row of a reading's kind is in the page once; here it gets its name, its label and its choices
 * or units.
 *
 * @param {HTMLElement} row
 */
function fillRow(row) {
  const { row: kind = "", id = "", label = "" } = row.dataset;
  row.append(copyOfTemplate(`row-${kind}`));
  const field = find(row, "[data-field]");
  field.id = `r-${id}`;
  field.dataset.reading = id;
  nameField(row, field.id, label);
  const options = (row.dataset.options ?? "").split("|").filter(Boolean);
  const unit = findIfAny(row, "[data-unit-of]", HTMLSelectElement);
  // The options are the units of a number, and the choices where there is no unit.
  if (unit) fillUnits(row, unit, options);
  else if (field instanceof HTMLSelectElement) fillChoices(field, options);
  find(row, "[data-odd]").dataset.odd = id;
  find(row, "[data-understood]").dataset.understood = id;
  find(row, "[data-dispute]").dataset.dispute = `reading/${id}`;
}

/**
 * @param {HTMLElement} row
 * @param {string} fieldId
 * @param {string} label
 */
function nameField(row, fieldId, label) {
  const name = find(row, "label", HTMLLabelElement);
  name.htmlFor = fieldId;
  name.textContent = label;
  if ("optional" in row.dataset) name.append(" ", make("small", "if at hand"));
}

/**
 * @param {HTMLSelectElement} field
 * @param {string[]} choices
 */
function fillChoices(field, choices) {
  field.append(new Option("–", ""), ...choices.map((choice) => new Option(choice)));
}

/**
 * @param {HTMLElement} row
 * @param {HTMLSelectElement} unit
 * @param {string[]} units
 */
function fillUnits(row, unit, units) {
  const { id = "", label } = row.dataset;
  unit.dataset.unitOf = id;
  unit.setAttribute("aria-label", `unit of ${label}`);
  unit.append(...units.map((name) => new Option(name)));
  const sign = find(row, "[data-sign]");
  sign.hidden = !("signed" in row.dataset);
  sign.dataset.sign = id;
  sign.setAttribute("aria-label", `change the sign of ${label}`);
}
