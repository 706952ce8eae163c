// The row of a check: its title, what is known of it, and one line of ratings. Like units stand in
// one row. What unfolds is made when somebody taps the title.

import { SIGNALS, signalOf } from "../cards/dangers.js";
import { byId, find, make } from "../page/elements.js";
import { address, areFew, unitCells } from "./like_units.js";

/** @import { Item, Plan } from "../screens/plan.js" */

/**
 * @param {Item[]} items one check, on one unit or on several that are alike
 * @param {Plan} plan
 * @param {string} of the unit, as a row of one unit names it
 * @returns {HTMLElement}
 */
export function buildRow(items, plan, of) {
  const [item] = items;
  const row = make("article", "", { className: "check", tabIndex: -1 });
  Object.assign(row.dataset, item.source.dataset);
  row.dataset.card = "";
  row.dataset.subjects = items.map(({ subject }) => subject).join(" ");
  row.append(byId("part-row", HTMLTemplateElement).content.cloneNode(true));
  find(row, "h3 button").textContent = item.title;
  find(row, "[data-marks]").replaceChildren(...marksOf(item));
  if (item.enclosed) putGateFirst(row);
  if (items.length > 1) {
    putUnits(row, items, plan);
  } else {
    row.dataset.subject = item.subject;
    find(row, "[data-of]").textContent = of;
    find(row, ".rate").setAttribute("aria-label", `rating, ${item.title}`);
  }
  return row;
}

/**
 * @param {Item} item
 * @returns {(string | HTMLElement)[]} what must be known before it is done
 */
function marksOf({ critical, photo, source }) {
  const marks = [];
  if (critical) marks.push(mark("critical", "critical"));
  if (photo) marks.push(mark("photo", "photo wanted"));
  const signal = mostSerious((source.dataset.cautions ?? "").split(" ").filter(Boolean));
  if (signal) marks.push(mark("caution", `⚠ ${signal}`));
  return marks.flatMap((each) => [each, " "]);
}

/**
 * @param {string} name
 * @param {string} words
 */
function mark(name, words) {
  const element = make("b", words);
  element.dataset.mark = name;
  return element;
}

/**
 * @param {string[]} ids of the cautions at the act
 * @returns {string} the most serious signal word; what it warns of unfolds with the act
 */
function mostSerious(ids) {
  const signals = ids.map(signalOf);
  return SIGNALS.find((signal) => signals.includes(signal))?.toUpperCase() ?? "";
}

/** @param {HTMLElement} row */
function putGateFirst(row) {
  const buttons = byId("part-gate-first", HTMLTemplateElement).content.cloneNode(true);
  find(row, ".rate").prepend(buttons);
}

/**
 * @param {HTMLElement} row
 * @param {Item[]} items
 * @param {Plan} plan
 */
function putUnits(row, items, plan) {
  const box = make("div", "", { className: "units" });
  box.setAttribute("role", "group");
  box.setAttribute("aria-label", `units, ${items[0].title}`);
  const cells = unitCells(items, plan);
  box.append(...cells);
  row.classList.add("many");
  const isFew = areFew(cells);
  if (isFew) find(row, ".line").append(box);
  else find(row, ".line").after(box);
  row.classList.toggle("few", isFew);
  address(row, "all");
}
