// In which groups and rows the checks of a stop stand, and so in which order one walks them.

/** @import { Item, Plan } from "../screens/plan.js" */

/**
 * @typedef {object} Group rows under one heading
 * @property {string} key
 * @property {string} name
 * @property {Item[][]} rows each one check, of one unit or of like units
 */

/** The group of what counts only where it is answered: it stands last, and folded at first. */
export const OPTIONAL = "optional";

/**
 * On a unit's sheet the rows stand by the space one is in; elsewhere by system, with like units in
 * one row.
 *
 * @param {Plan} plan
 * @param {boolean} isSheet
 * @param {Item[]} items
 * @returns {Group[]}
 */
export function arrange(plan, isSheet, items) {
  const key = isSheet ? (/** @type {Item} */ item) => item.space : systemOf;
  const groups = gathered(
    items.filter((item) => !item.optional),
    key,
  ).map(([name, own]) => {
    const heading = isSheet ? plan.spaces.get(name) : plan.sheets.get(own[0].sheet)?.of;
    return { key: name, name: heading ?? "", rows: rowsOf(own, isSheet) };
  });
  const optional = rowsOf(
    items.filter((item) => item.optional),
    isSheet,
  );
  if (!optional.length) return groups;
  return [...groups, { key: OPTIONAL, name: `${optional.length} more, optional`, rows: optional }];
}

/**
 * @param {Plan} plan
 * @param {"sheet" | "space"} order
 * @returns {Item[]} every check, in the order one walks in
 */
export function inOrder(plan, order) {
  const stops = [...plan[order === "sheet" ? "sheets" : "spaces"].keys()];
  return stops.flatMap((stop) => {
    const groups = arrange(plan, order === "sheet", plan.within(order, stop));
    return groups.flatMap(({ rows }) => rows.flat());
  });
}

/** @param {Item} item */
function systemOf({ sheet }) {
  return sheet.split("/")[0];
}

/**
 * @param {Item[]} items
 * @param {boolean} isSheet
 * @returns {Item[][]} the units that are asked one check, in one row
 */
function rowsOf(items, isSheet) {
  const key = (/** @type {Item} */ item) =>
    isSheet ? item.subject : `${systemOf(item)} ${item.check}`;
  return gathered(items, key).map(([, own]) => own);
}

/**
 * @param {Item[]} items
 * @param {(item: Item) => string} keyOf
 * @returns {[key: string, items: Item[]][]} in the order in which the keys are met
 */
function gathered(items, keyOf) {
  /** @type {Map<string, Item[]>} */
  const found = new Map();
  for (const item of items) {
    const key = keyOf(item);
    found.set(key, [...(found.get(key) ?? []), item]);
  }
  return [...found];
}
