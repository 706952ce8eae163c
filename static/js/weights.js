// Weights that are moved: the server ranks again, so that the sums are written in one place; the
// last answer counts.

import { queryOf } from "./form_query.js";
import { around, byId, find, findIfAny, make } from "./walk/page/elements.js";

const form = findIfAny(document, ".weights", HTMLFormElement);
let requests = 0;

/** @param {HTMLFormElement} weights */
async function rank(weights) {
  requests += 1;
  const request = requests;
  const answer = await fetch(`/compare/ranking?${queryOf(weights)}`);
  if (request !== requests) return;
  const place = byId("ranking");
  if (answer.ok) {
    place.innerHTML = await answer.text();
    return;
  }
  const words = "At least one weight must be above 0, so there is no order now.";
  place.replaceChildren(make("p", words, { className: "fault" }));
}

form?.addEventListener("input", (event) => {
  const label = around(event.target, "label");
  if (label) find(label, "output").textContent = find(label, "input", HTMLInputElement).value;
  rank(form).catch(() => {});
});
