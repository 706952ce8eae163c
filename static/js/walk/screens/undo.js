// The last act can be taken back for six seconds, in a place of its own in the bar, so that the
// line covers nothing and no other button ever takes its place. Afterwards the history has it.

import { byId, find } from "../page/elements.js";

/** @import { Log } from "../record/log.js" */

const STAYS_MS = 6_000;
/** As many letters as stand in the bar without being cut. */
const MOST_LETTERS = 26;
const ANY_ACT = "the last act";

/**
 * @param {string} words of an act
 * @returns {string} as much of them as can be read whole
 */
function shortWords(words) {
  const act = words.replace(/^recorded: /, "").trim();
  if (act.length <= MOST_LETTERS) return act;
  const [kind] = act.split(/[:,]/);
  return kind.length <= MOST_LETTERS ? kind : ANY_ACT;
}

/** @param {Log} log */
export function wireUndo(log) {
  const box = byId("undo");
  const button = find(box, "button", HTMLButtonElement);
  let timer = 0;
  /** @type {unknown} */
  let shown = null;
  const leave = () => {
    log.lastAct = null;
    shown = null;
    paint();
  };
  const paint = () => {
    button.disabled = !log.lastAct;
    find(button, "span").textContent = shortWords(log.lastAct?.words ?? "");
    button.title = log.lastAct?.words ?? "";
  };
  log.addEventListener("change", () => {
    // What comes from elsewhere changes the log too, and is no act that begins anew.
    if (log.lastAct === shown) return;
    shown = log.lastAct;
    clearTimeout(timer);
    if (shown) timer = setTimeout(leave, STAYS_MS);
    paint();
  });
  button.addEventListener("click", () => {
    log.undo().catch(() => {}); // the log itself reports what could not be kept
    shown = null;
    clearTimeout(timer);
    paint();
  });
}
