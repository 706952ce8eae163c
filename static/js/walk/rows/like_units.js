// Like units in one row: which of them a tap is about, and the short names of their cells.

import { around, find, findAll, findIfAny, make } from "../page/elements.js";

/** @import { Item, Plan } from "../screens/plan.js" */

/** Up to so many cells stand beside the title: all, and three units. */
const BESIDE_TITLE = 4;
const ALL = "all";
/** Letters of a name beside the title, and of one on a line of its own. */
const SHORTEST = 4;
const LONGEST = 9;
/** What the trade writes for the places of units. */
const SHORT = new Map([
  ["port", "P"],
  ["starboard", "S"],
  ["centre", "C"],
  ["forward", "F"],
  ["aft", "A"],
]);

/**
 * @param {HTMLElement} row
 * @returns {string[]} the subjects of every unit in the row
 */
export function subjectsIn(row) {
  return (row.dataset.subjects ?? "").split(" ").filter(Boolean);
}

/**
 * @param {HTMLElement} row
 * @returns {string[]} the subjects that a tap on its ratings is about
 */
export function addressedIn(row) {
  return row.dataset.subject ? [row.dataset.subject] : subjectsIn(row);
}

/**
 * What tells units apart, as short as it can be read: what all names share is left out. Where that
 * is too long it is one word of each, and else they are numbered.
 *
 * @param {string[]} names
 * @returns {string[]}
 */
export function shortNames(names) {
  const words = names.map((name) => name.toLowerCase().split(/[\s,]+/));
  const shared = words[0].filter((word) => words.every((each) => each.includes(word)));
  const own = words.map((each) => each.filter((word) => !shared.includes(word)));
  const letters = own.map((each) =>
    each.map((word) => SHORT.get(word) ?? word.toUpperCase()).join(" "),
  );
  if (canTellApart(letters, SHORTEST)) return letters;
  const firsts = own.map(([word = ""]) => word);
  return canTellApart(firsts, LONGEST) ? firsts : names.map((_, index) => String(index + 1));
}

/**
 * @param {string[]} words
 * @param {number} longest
 */
function canTellApart(words, longest) {
  const areShort = words.every((word) => word && word.length <= longest);
  return areShort && new Set(words).size === words.length;
}

/**
 * Whether the cells of these units stand beside the title.
 *
 * @param {HTMLElement[]} cells
 * @returns {boolean}
 */
export function areFew(cells) {
  const short = cells.every((cell) => (cell.textContent ?? "").length <= SHORTEST);
  return short && cells.length <= BESIDE_TITLE;
}

/**
 * The cells of a row: all at once, and each unit by itself.
 *
 * @param {Item[]} items
 * @param {Plan} plan
 * @returns {HTMLElement[]}
 */
export function unitCells(items, plan) {
  const names = items.map((item) => plan.sheets.get(item.sheet)?.name ?? "");
  const short = shortNames(names);
  const all = cell(ALL, "all", `all ${items.length}`);
  all.setAttribute("aria-pressed", "true");
  return [
    all,
    ...items.map((item, index) => {
      const one = cell(item.subject, short[index], names[index]);
      one.prepend(make("i", "", { className: "mark" }));
      return one;
    }),
  ];
}

/**
 * @param {string} unit the subject, or all
 * @param {string} words
 * @param {string} name
 */
function cell(unit, words, name) {
  const button = make("button", "", { type: "button", title: name });
  button.append(make("span", words));
  button.dataset.unit = unit;
  button.dataset.name = name;
  button.setAttribute("aria-pressed", "false");
  return button;
}

/**
 * From now on the ratings of the row are about this unit, or about all.
 *
 * @param {HTMLElement} row
 * @param {string} unit the subject, or all
 */
export function address(row, unit) {
  if (unit === ALL) delete row.dataset.subject;
  else row.dataset.subject = unit;
  for (const button of findAll(row, "[data-unit]")) {
    button.setAttribute("aria-pressed", String(button.dataset.unit === unit));
  }
  const pressed = findIfAny(row, "[data-unit][aria-pressed=true]");
  const name = pressed?.dataset.name ?? "";
  find(row, "[data-of]").textContent = name;
  find(row, ".rate").setAttribute("aria-label", `rating, ${row.dataset.title}, ${name}`);
}

/**
 * The row around an element of it.
 *
 * @param {EventTarget | null} target
 */
export function rowAround(target) {
  return around(target, "article.check");
}
