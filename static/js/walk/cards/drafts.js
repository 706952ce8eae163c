// What is being typed, kept half-typed: a tab that is killed reports to nobody. A draft is recorded
// as it is when the page opens again, and the history and "undo" keep what was there before.

import { around } from "../page/elements.js";
import { deleteDraft, readDrafts, writeDraft } from "../storage/draft_store.js";
import { typedReading } from "./card_fields.js";

/** @import { Log } from "../record/log.js" */
/** @import { Entry } from "../storage/entry_store.js" */

const PAUSE_MS = 400;
/** @type {Map<string, number>} */
const timers = new Map();

/**
 * @param {string} inspection
 * @param {string} subject
 * @param {string} field
 */
function keyOf(inspection, subject, field) {
  return `draft/${inspection}/${subject}|${field}`;
}

/**
 * What a field of a card would be recorded as: [field, value], or null for anything else.
 *
 * @param {HTMLElement} card
 * @param {EventTarget | null} target
 * @returns {[field: string, value: any] | null}
 */
function draftOf(card, target) {
  if (target instanceof HTMLTextAreaElement && "note" in target.dataset) {
    return ["note", target.value.trim() || null];
  }
  const id = target instanceof HTMLElement && target.dataset.reading;
  return id ? [`reading/${id}`, typedReading(card, id)] : null;
}

/**
 * Keep what is typed on any card within `root` until it is recorded.
 *
 * @param {Log} log
 * @param {HTMLElement} root
 */
export function keepDrafts(log, root) {
  root.addEventListener("input", (event) => {
    const card = around(event.target, "[data-card]");
    const draft = card && draftOf(card, event.target);
    if (draft) keepLater(keyOf(log.inspection, card.dataset.subject ?? "", draft[0]), draft[1]);
  });
  log.addEventListener("recorded", (event) => {
    const entries = /** @type {CustomEvent<Entry[]>} */ (event).detail;
    for (const { subject, field } of entries) drop(keyOf(log.inspection, subject, field));
  });
}

/**
 * @param {string} key
 * @param {any} value
 */
function keepLater(key, value) {
  clearTimeout(timers.get(key));
  timers.set(
    key,
    setTimeout(() => writeDraft(key, value).catch(() => {}), PAUSE_MS),
  );
}

/** @param {string} key */
function drop(key) {
  clearTimeout(timers.get(key));
  timers.delete(key);
  deleteDraft(key).catch(() => {});
}

/**
 * Record what an earlier tab left half-typed.
 *
 * @param {Log} log
 */
export async function recordDrafts(log) {
  const prefix = `draft/${log.inspection}/`;
  for (const [key, value] of await readDrafts(prefix)) {
    const [subject, field] = key.slice(prefix.length).split("|");
    const changes = log.unlessShown([[subject, field, value]]);
    await log.record(changes, "what was being typed when the page closed");
    await deleteDraft(key);
  }
}
