// The list of sheets, spaces and papers, each with how much of it was seen.

import { passedWords } from "../cards/walked_past.js";
import { find, findAll } from "../page/elements.js";
import { counting, hasDispute, tally } from "../record/summary.js";
import { paintTide } from "./header.js";

/** @import { Log } from "../record/log.js" */
/** @import { Plan } from "./plan.js" */

/**
 * @param {Log} log
 * @param {Plan} plan
 */
export function paintSheetList(log, plan) {
  for (const row of findAll(document, "#sheets .sheet-row")) {
    const { sheet, space } = row.dataset;
    const items = plan.within(...rowKey(sheet, space));
    const counts = tally(log, counting(log, items));
    const disputed = items.some((item) => hasDispute(log, item.subject));
    const warning = disputed ? "two answers · " : "";
    row.hidden = !items.length;
    const passed = passedWords(log, sheet ?? "");
    find(row, "[data-tally]").textContent = `${warning}${passed}${counts.seen} of ${counts.of}`;
    paintTide(find(row, ".tide"), counts);
  }
}

/**
 * @param {string} [sheet]
 * @param {string} [space]
 * @returns {["sheet" | "space" | "scan", string]} what a row of the list holds
 */
function rowKey(sheet, space) {
  if (sheet) return ["sheet", sheet];
  return space ? ["space", space] : ["scan", "yes"];
}
