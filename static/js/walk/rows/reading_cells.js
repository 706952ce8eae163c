// The readings of like units: a line of cells for each reading, a cell for each unit.

import { paintDisputes } from "../cards/answers.js";
import { judgementLines } from "../cards/paint_card.js";
import { paintReading } from "../cards/paint_reading.js";
import { find, findAll, findIfAny, make } from "../page/elements.js";
import { before, makeUnique, readingRows } from "./build_body.js";
import { shortNames } from "./like_units.js";

/** @import { Log } from "../record/log.js" */
/** @import { Item, Plan } from "../screens/plan.js" */

const HINT = "Tap a unit for its photo, note, finding and history.";

/**
 * What unfolds for all of the units at once.
 *
 * @param {HTMLElement} row
 * @param {Item[]} items
 * @param {Plan} plan
 * @returns {Node[]}
 */
export function bodyOfAll(row, items, plan) {
  const names = items.map((item) => plan.sheets.get(item.sheet)?.name ?? "");
  const short = shortNames(names);
  const perUnit = items.map((item, index) => {
    return readingRows(item.source).map((reading) =>
      cellOf(item, reading, names[index], short[index]),
    );
  });
  const lines = perUnit[0].map((cell, index) =>
    lineOf(
      cell,
      perUnit.map((each) => each[index]),
    ),
  );
  const judged = make("div", "", { className: "judged-all" });
  return [
    ...before(row, items[0].source),
    ...lines,
    judged,
    make("p", HINT, { className: "empty" }),
  ];
}

/**
 * A reading of one unit, answered like a card of its own.
 *
 * @param {Item} item
 * @param {HTMLElement} reading
 * @param {string} name of the unit
 * @param {string} short
 * @returns {HTMLElement}
 */
function cellOf({ source, subject }, reading, name, short) {
  const cell = make("div", "", { className: "cell" });
  const { proof = "", load = "" } = source.dataset;
  Object.assign(cell.dataset, { card: "", subject, proof, load, name });
  const label = find(reading, "label");
  find(reading, "[data-field]").setAttribute("aria-label", `${label.textContent}, ${name}`);
  cell.dataset.label = label.textContent ?? "";
  label.textContent = short;
  cell.append(reading);
  makeUnique(cell, subject);
  return cell;
}

/**
 * The cells of one reading, with the unit of measure once for all of them.
 *
 * @param {HTMLElement} first
 * @param {HTMLElement[]} cells
 * @returns {HTMLElement}
 */
function lineOf(first, cells) {
  const line = make("div", "", { className: "cells" });
  const head = make("p", first.dataset.label);
  const unit = findIfAny(first, "[data-unit-of]", HTMLSelectElement);
  if (unit) head.append(" ", unitOfLine(unit, cells));
  const box = make("div");
  box.append(...cells);
  line.append(head, box);
  return line;
}

/**
 * @param {HTMLSelectElement} first
 * @param {HTMLElement[]} cells
 * @returns {HTMLSelectElement} chosen once, it is chosen in every cell
 */
function unitOfLine(first, cells) {
  const all = /** @type {HTMLSelectElement} */ (first.cloneNode(true));
  all.removeAttribute("id");
  delete all.dataset.unitOf;
  all.dataset.unitOfLine = "";
  all.addEventListener("change", () => {
    for (const cell of cells) {
      const select = find(cell, "[data-unit-of]", HTMLSelectElement);
      select.value = all.value;
      select.dispatchEvent(new Event("change", { bubbles: true }));
    }
  });
  return all;
}

/**
 * @param {Log} log
 * @param {HTMLElement} row
 */
export function paintCells(log, row) {
  for (const cell of findAll(row, ".cell")) {
    const field = find(cell, "[data-reading]");
    paintReading(log, cell, /** @type {HTMLInputElement | HTMLSelectElement} */ (field));
    paintDisputes(log, cell);
  }
  for (const line of findAll(row, ".cells")) {
    const all = findIfAny(line, "[data-unit-of-line]", HTMLSelectElement);
    const first = findIfAny(line, ".cell [data-unit-of]", HTMLSelectElement);
    if (all && first && document.activeElement !== all) all.value = first.value;
  }
  const judged = findIfAny(row, ".judged-all");
  judged?.replaceChildren(...judgementsOf(log, row));
}

/**
 * @param {Log} log
 * @param {HTMLElement} row
 * @returns {HTMLElement[]} what is judged of each unit, with its name
 */
function judgementsOf(log, row) {
  const names = new Map(
    findAll(row, ".cell").map(({ dataset }) => [dataset.subject, dataset.name]),
  );
  const boxes = [];
  for (const [subject = "", name = ""] of names) {
    const lines = judgementLines(log, row, subject);
    if (!lines.length) continue;
    const box = make("div", "", { className: "judged" });
    box.append(make("b", `${name}: `), ...lines);
    boxes.push(box);
  }
  return boxes;
}
