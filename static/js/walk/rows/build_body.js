// What unfolds from a row, made from what the page holds once: the check of its system, the parts
// that all of them share, the rows of each kind of reading.

import { byId, find, findAll, findIfAny, make } from "../page/elements.js";
import { proofWords } from "./check_texts.js";

/** @import { Texts } from "./check_texts.js" */
/** @import { Item } from "../screens/plan.js" */

/**
 * What unfolds for one unit.
 *
 * @param {HTMLElement} row
 * @param {Item} item
 * @returns {Node[]}
 */
export function bodyOf(row, { source, subject, enclosed }) {
  const answers = find(copyOf("part-answers"), ".answers");
  answers.prepend(...readingRows(source));
  const parts = [...before(row, source), answers, copyOf("part-foot")];
  if (enclosed) parts.splice(-2, 0, copyOf("part-gate"));
  const body = make("div");
  body.append(...parts);
  makeUnique(body, subject);
  return [...body.childNodes];
}

/**
 * What is read before anything is done: the trial, the cautions at the act, where to look.
 *
 * @param {HTMLElement} row
 * @param {HTMLElement} source
 * @returns {Node[]}
 */
export function before(row, source) {
  const { trial, cautions = "" } = source.dataset;
  const parts = cautionsOf(cautions);
  if (trial) parts.unshift(trialOf(trial));
  const look = copyOf("part-look");
  find(look, ".proof").textContent = proofWords(row);
  return [...parts, look];
}

/**
 * @param {string} id
 * @returns {DocumentFragment} with the cautions of the trial
 */
function trialOf(id) {
  const part = copyOf(`part-trial-${id}`);
  const box = find(part, ".trial");
  box.append(...cautionsOf(box.dataset.cautions ?? ""));
  return part;
}

/** @param {string} ids of cautions, separated by spaces */
function cautionsOf(ids) {
  const names = ids.split(" ").filter(Boolean);
  return names.map((id) => copyOf(`part-caution-${id}`));
}

/**
 * Show the texts of a check.
 *
 * @param {HTMLElement} row
 * @param {Texts | null} texts null where they are not here
 */
export function fillTexts(row, texts) {
  for (const line of findAll(row, "[data-text]")) {
    const key = /** @type {keyof Texts} */ (line.dataset.text);
    const missing = key === "look" ? "This text is not on this device yet." : "";
    const words = texts ? texts[key] : missing;
    line.hidden = !words;
    find(line, "span").textContent = words;
  }
}

/**
 * @param {HTMLElement} source
 * @returns {HTMLElement[]} an input for each reading
 */
export function readingRows(source) {
  return findAll(source, "[data-row]").map((stub) => {
    const row = /** @type {HTMLElement} */ (stub.cloneNode(false));
    fillRow(row);
    return row;
  });
}

/**
 * Ids become unique, so that every label keeps its input.
 *
 * @param {HTMLElement} root
 * @param {string} subject
 */
export function makeUnique(root, subject) {
  const suffix = subject.replaceAll("/", "_");
  for (const element of findAll(root, "[id]")) element.id += `--${suffix}`;
  for (const label of findAll(root, "label[for]", HTMLLabelElement)) {
    label.htmlFor += `--${suffix}`;
  }
}

/**
 * @param {string} id
 * @returns {DocumentFragment}
 */
export function copyOf(id) {
  const { content } = byId(id, HTMLTemplateElement);
  return /** @type {DocumentFragment} */ (content.cloneNode(true));
}

/**
 * The row of a reading's kind is in the page once; here it gets its name, its label and its choices
 * or units.
 *
 * @param {HTMLElement} row
 */
function fillRow(row) {
  const { row: kind = "", id = "", label = "" } = row.dataset;
  row.append(copyOf(`row-${kind}`));
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
