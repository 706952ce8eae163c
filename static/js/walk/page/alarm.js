// A sentence that stays in sight until somebody confirms having read it.

import { byId, findAll, make } from "./elements.js";

// A refusal lasts as long as its entry does; once it was understood it is not shown again.
/** @type {Set<string>} */
const understood = new Set();

/**
 * Show a sentence. One that was not read yet stays, whatever comes after it.
 *
 * @param {string} sentence
 */
export function alarm(sentence) {
  const box = byId("alarm");
  const shown = findAll(box, "[data-sentence]").map((row) => row.dataset.sentence);
  if (understood.has(sentence) || shown.includes(sentence)) return;
  const row = make("span", "", { className: "sentence" });
  row.dataset.sentence = sentence;
  const button = make("button", "understood", { type: "button" });
  button.addEventListener("click", () => {
    row.remove();
    box.hidden = !box.childElementCount;
    if (sentence.startsWith("Refused")) understood.add(sentence);
  });
  row.append(make("span", sentence), button);
  box.append(row);
  box.hidden = false;
}

/**
 * The sentence of something that was thrown.
 *
 * @param {unknown} error
 * @returns {string}
 */
export function sentenceOf(error) {
  return error instanceof Error ? error.message : String(error);
}
