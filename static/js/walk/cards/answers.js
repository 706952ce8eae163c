// What was answered, by whom and when: two answers side by side, and the history with "put back".

import { around, findAll, make } from "../page/elements.js";
import { vocabulary } from "../page/vocabulary.js";
import { describe } from "../record/summary.js";

/** @import { Log } from "../record/log.js" */
/** @import { Entry } from "../storage/entry_store.js" */

/** @type {Intl.DateTimeFormatOptions} */
const TIME_FORMAT = {
  day: "numeric",
  month: "short",
  hour: "2-digit",
  minute: "2-digit",
  hour12: false,
};

/**
 * @param {Entry} entry
 * @returns {string} who answered, and when
 */
function signatureOf(entry) {
  const at = new Date(entry.at);
  const isTime = !Number.isNaN(at.getTime());
  const when = isTime ? at.toLocaleString([], TIME_FORMAT) : entry.at;
  return `${entry.who || entry.device}, ${when}`;
}

/**
 * A button that records a value in the field of an entry.
 *
 * @param {Entry} entry
 * @param {string} words
 * @param {any} [value] the entry's own where it is left out
 * @returns {HTMLButtonElement}
 */
function putBackButton(entry, words, value = entry.value) {
  const button = make("button", words, { type: "button" });
  button.dataset.putBack = JSON.stringify(value);
  button.dataset.field = entry.field;
  return button;
}

/**
 * Show where two people answered without seeing each other. A tap on an answer settles it, and all
 * of them stay in the history.
 *
 * @param {Log} log
 * @param {HTMLElement} card anything with a subject
 */
export function paintDisputes(log, card) {
  const { subject = "" } = card.dataset;
  for (const box of findAll(card, "[data-dispute]")) {
    const { dispute: field = "" } = box.dataset;
    const disputed = log.state.disputed(subject, field);
    box.hidden = !disputed;
    box.replaceChildren(...(disputed ? choices(log.state.heads(subject, field), field) : []));
  }
}

/**
 * @param {Entry[]} heads
 * @param {string} field
 * @returns {HTMLElement[]}
 */
function choices(heads, field) {
  const count = heads.length === 2 ? "Two" : String(heads.length);
  const words =
    `${count} answers stand. Tap the one that is right; ` + "the others stay in the history.";
  const buttons = heads.map((entry) => {
    return putBackButton(entry, `${describe(entry.value)} · ${signatureOf(entry)}`);
  });
  // Texts are joined rather than chosen between.
  const written = heads.filter((entry) => entry.value);
  if (vocabulary.proseFields.includes(field) && written.length > 1) {
    buttons.push(putBackButton(heads[0], "keep both texts", joined(written)));
  }
  return [make("p", words), ...buttons];
}

/**
 * @param {Entry[]} written
 * @returns {string} every text once, oldest first
 */
function joined(written) {
  const texts = new Set(written.map((entry) => entry.value));
  return [...texts].join("\n\n");
}

/**
 * Record the answer whose button is tapped, wherever it is shown within `root`. The record replaces
 * all answers of that field.
 *
 * @param {Log} log
 * @param {HTMLElement} root
 * @param {() => void} afterwards
 */
export function settleWithin(log, root, afterwards) {
  root.addEventListener("click", async (event) => {
    const button = around(event.target, "[data-put-back]");
    const subject = around(button, "[data-subject]")?.dataset.subject;
    if (!button || !subject) return;
    const { field = "", putBack = "null" } = button.dataset;
    const value = JSON.parse(putBack);
    const act = log.record([[subject, field, value]], `settled: ${describe(value)}`);
    await act.catch(() => {}); // the log itself reports what could not be kept
    afterwards();
  });
}

/**
 * @param {Log} log
 * @param {HTMLElement} list
 * @param {string} subject
 */
export function paintHistory(log, list, subject) {
  const items = log.state.history(subject).map((entry) => historyItem(log, entry));
  if (!items.length) items.push(make("li", "Nothing recorded yet."));
  list.replaceChildren(...items);
}

/**
 * @param {Log} log
 * @param {Entry} entry
 * @returns {HTMLLIElement}
 */
function historyItem(log, entry) {
  const field = entry.field.replace("reading/", "");
  const words = make("span");
  words.append(`${field}: `, make("b", describe(entry.value)), ` · ${signatureOf(entry)}`);
  const heads = log.state.heads(entry.subject, entry.field);
  const isHead = heads.some((head) => head.id === entry.id);
  const item = make("li");
  item.append(words, isHead ? "counts now" : putBackButton(entry, "put back"));
  return item;
}
