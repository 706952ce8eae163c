// Making a report takes seconds: this shows it, counts them, and lets it be stopped. Without this
// script the form does the same, only silently.

import { queryOf } from "./form_query.js";
import { byId, find, findIfAny } from "./walk/page/elements.js";

const form = findIfAny(document, "form[data-making]", HTMLFormElement);
/** @type {AbortController | null} */
let stop = null;

/**
 * The sentence on the page that the computer answered with instead of a report.
 *
 * @param {Response} answer
 * @returns {Promise<string>}
 */
async function faultIn(answer) {
  const page = await answer.text();
  const content = page.match(/<main[^>]*>([\s\S]*?)<\/main>/)?.[1] ?? "";
  return content.replace(/<[^>]+>/g, " ").trim() || `the computer answered ${answer.status}`;
}

/**
 * @param {HTMLFormElement} asked
 * @param {AbortSignal} signal
 * @returns {Promise<Blob>} the report
 */
async function make(asked, signal) {
  const answer = await fetch(`${asked.action}?${queryOf(asked)}`, { signal });
  if (!answer.ok) throw new Error(await faultIn(answer));
  return answer.blob();
}

/**
 * @param {unknown} error
 * @returns {string}
 */
function sentenceOf(error) {
  if (!(error instanceof Error)) return `The report could not be made: ${error}`;
  if (error.name === "AbortError") return "Stopped. Nothing was changed.";
  return `The report could not be made: ${error.message}`;
}

/** @param {HTMLFormElement} asked */
async function makeAndCount(asked) {
  stop?.abort();
  const control = new AbortController();
  stop = control;
  const box = byId("making");
  const words = find(box, "p");
  const link = find(box, "a", HTMLAnchorElement);
  const button = find(box, "button", HTMLButtonElement);
  const began = Date.now();
  const seconds = () => Math.round((Date.now() - began) / 1000);
  const count = () => {
    words.textContent =
      `Making the report, ${seconds()} s. Everything recorded is set anew, so a large one ` +
      "takes up to a minute.";
  };
  const clock = setInterval(count, 1000);
  box.hidden = false;
  button.hidden = false;
  link.hidden = true;
  count();
  button.onclick = () => control.abort();
  try {
    const report = await make(asked, control.signal);
    URL.revokeObjectURL(link.href);
    link.href = URL.createObjectURL(report);
    link.download = asked.dataset.making ?? "";
    link.hidden = false;
    words.textContent = `The report is ready after ${seconds()} s.`;
    link.focus();
  } catch (error) {
    words.textContent = sentenceOf(error);
  }
  clearInterval(clock);
  button.hidden = true;
}

form?.addEventListener("submit", (event) => {
  event.preventDefault();
  makeAndCount(form);
});
