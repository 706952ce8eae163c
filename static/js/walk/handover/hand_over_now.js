// The button “hand over now”, wherever it stands: it begins at once and says beside it what came of
// it.

import { around, findIfAny, make } from "../page/elements.js";

/** @import { Handover } from "./handover.js" */

/**
 * @param {Handover} handover
 * @returns {string}
 */
function outcome({ host, proved, refused, trouble, waits }) {
  const time = new Date().toLocaleTimeString([], { hour12: false });
  if (trouble) return `Not handed over: ${trouble}. All of it is kept here.`;
  if (refused.length) return `${host} refused ${refused.length}: see the tools.`;
  if (waits) return "Something waits still; it is handed over by itself.";
  return proved ? `All of it is on ${host}, at ${time}.` : `Handed over at ${time}.`;
}

/** @returns {HTMLElement} a button, with the place for its outcome */
export function handOverButton() {
  const box = make("div", "", { className: "hand-over" });
  const button = make("button", "hand over now", { type: "button" });
  button.dataset.handOver = "";
  const said = make("p");
  said.setAttribute("role", "status");
  box.append(button, said);
  return box;
}

/**
 * Serve every such button on the page.
 *
 * @param {Handover} handover
 */
export function wireHandOverNow(handover) {
  document.addEventListener("click", async ({ target }) => {
    const button = around(target, "[data-hand-over]");
    const said = button?.parentElement && findIfAny(button.parentElement, "[role=status]");
    if (!button || !said) return;
    said.textContent = "Handing over…";
    await handover.nowToTheEnd();
    said.textContent = outcome(handover);
  });
}
