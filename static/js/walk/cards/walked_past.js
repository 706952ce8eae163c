// Walked past: nothing, or something, seen against a unit. One tap gives it a first word.

import { around, byId, find, findAll, make } from "../page/elements.js";

/** @import { Log } from "../record/log.js" */

/**
 * @param {string} sheet "<system>/<unit>"
 * @param {string} name of the unit
 * @returns {HTMLElement}
 */
export function passedBox(sheet, name) {
  const holder = make("div");
  holder.append(byId("part-passed", HTMLTemplateElement).content.cloneNode(true));
  const box = find(holder, ".passed");
  box.dataset.subject = `unit/${sheet}`;
  box.setAttribute("aria-label", `${name}, walked past`);
  find(box, "[data-passed-name]").textContent = name;
  return box;
}

/**
 * @param {Log} log
 * @param {HTMLElement} root
 */
export function paintPassed(log, root) {
  for (const box of findAll(root, ".passed")) {
    const said = log.state.value(box.dataset.subject ?? "", "walked_past");
    for (const button of findAll(box, "[data-passed]")) {
      button.setAttribute("aria-pressed", String(button.dataset.passed === said));
    }
  }
}

/**
 * What the row of a unit says of it before its count.
 *
 * @param {Log} log
 * @param {string} sheet "<system>/<unit>"
 * @returns {string} "" where nobody said anything
 */
export function passedWords(log, sheet) {
  const said = log.state.value(`unit/${sheet}`, "walked_past");
  return said ? `passed: ${said} · ` : "";
}

/**
 * Record a tap within `root`; a tap on what is shown takes it away.
 *
 * @param {Log} log
 * @param {HTMLElement} root
 */
export function recordPassedWithin(log, root) {
  root.addEventListener("click", (event) => {
    const button = around(event.target, "[data-passed]");
    const subject = around(button, ".passed")?.dataset.subject;
    if (!button || !subject) return;
    const { passed = "" } = button.dataset;
    const takesAway = button.getAttribute("aria-pressed") === "true";
    const value = takesAway ? null : passed;
    const words = takesAway ? "taken away" : `walked past, ${passed} seen against it`;
    const act = log.record([[subject, "walked_past", value]], `recorded: ${words}`);
    act.catch(() => {}); // the log itself reports what could not be kept
  });
}
