// Who is recording: asked once on this device, changed from the list of sheets.

import { around, byId, find } from "../page/elements.js";

/** @import { Log } from "../record/log.js" */

// While somebody changes the name, what is handed over meanwhile must not shut the box.
let isChanging = false;

/** @param {Log} log */
export function paintWho(log) {
  byId("who").hidden = Boolean(log.who) && !isChanging;
  find(document, "[data-who-now]").textContent = log.who || "nobody yet";
}

/**
 * @param {Log} log
 * @param {(error: unknown) => void} reportLost
 */
export function wireWho(log, reportLost) {
  const box = byId("who");
  const field = byId("who-name", HTMLInputElement);
  /** @param {string} name */
  const setWho = (name) => {
    if (!name) return;
    isChanging = false;
    log.setWho(name).catch(reportLost);
  };
  const keepTyped = () => setWho(field.value.trim());
  box.addEventListener("click", (event) => {
    setWho(around(event.target, "[data-who]")?.dataset.who ?? "");
  });
  byId("who-keep").addEventListener("click", keepTyped);
  field.addEventListener("keydown", (event) => {
    if (event.key === "Enter") keepTyped();
  });
  byId("change-who").addEventListener("click", () => {
    isChanging = true;
    box.hidden = false;
    field.focus();
  });
}
