// One check as a card, painted from the state: what stands, what is proposed, what is disputed.

import { paintDisputes, paintHistory } from "./answers.js";
import { paintFound } from "./found.js";
import { paintGate } from "./gate.js";
import { judgeHere, numberOf } from "./judge.js";
import { paintStrip } from "./thumbs.js";

const WHOLE = /^[+−-]?\d+$/;

export function paint(log, card) {
  const { subject } = card.dataset;
  const rating = log.state.value(subject, "rating");
  const judgement = log.judgements[subject];
  // Where two answers stand, none of them is shown as the one.
  paintRating(card, log.state.disputed(subject, "rating") ? "two answers" : rating, judgement);
  paintJudged(card, rating, current(log, card, judgement));
  paintReadings(log, card);
  paintGate(log, card);
  paintNote(card, log.state.value(subject, "note"));
  const photos = paintStrip(log, card.querySelector("[data-photos]"), subject);
  card.querySelector("[data-act=photo]").textContent = photos ? `photo ${photos}` : "photo";
  paintFound(log, card);
  paintDisputes(log, card);
  const history = card.querySelector("[data-panel=history]");
  if (!history.hidden) paintHistory(log, history, subject);
}

function paintRating(card, rating, judgement) {
  for (const button of card.querySelectorAll("[data-rate]")) {
    button.setAttribute("aria-pressed", String(button.dataset.rate === rating));
    button.classList.toggle("proposed", !rating && judgement?.rating === button.dataset.rate);
  }
  for (const button of card.querySelectorAll("[data-reason]")) button.setAttribute("aria-pressed", String(rating === `not seen: ${button.dataset.reason}`));
  const notSeen = card.querySelector("[data-act=not-seen]");
  const unseen = rating?.startsWith("not seen");
  notSeen.textContent = unseen ? rating : "not seen, because…";
  notSeen.setAttribute("aria-pressed", String(Boolean(unseen)));
  card.querySelector("[data-act=not-fitted]").setAttribute("aria-pressed", String(rating === "not fitted"));
}

// The computer's judgement, or until it comes this device's own where the check's bands are on the page.
function current(log, card, judgement) {
  if (judgement && !judgement.waiting) return judgement;
  return judgeHere(log, card) ?? judgement;
}

function paintJudged(card, rating, judgement) {
  const box = card.querySelector(".judged");
  const line = (tag, text) => Object.assign(document.createElement(tag), { textContent: text });
  const lines = [];
  if (judgement?.waiting && "criterion" in card.dataset) lines.push("Readings kept; judged once they are handed over.");
  if (judgement?.cannot) lines.push(judgement.cannot);
  if (judgement?.sentence) {
    if (judgement.rating) lines.push(line("b", `${judgement.rating[0].toUpperCase()}${judgement.rating.slice(1)}. `));
    lines.push(judgement.sentence);
    // The note that names the limits says what the cited source says once more.
    for (const note of (judgement.notes ?? []).filter((one) => !one.startsWith("Limits used"))) lines.push(line("span", note));
    if (judgement.source) lines.push(line("cite", judgement.source));
    if (judgement.here) lines.push(line("cite", "Judged on this device; the computer judges again once the reading is handed over."));
    else if (!rating && judgement.rating) lines.push(line("cite", "Proposed: counts as seen until you rate it yourself."));
    const own = ["good", "fair", "poor", "failed"].includes(rating);
    if (own && judgement.rating && judgement.rating !== rating) lines.push(line("strong", `you overruled the proposed ${judgement.rating}`));
  }
  box.hidden = !lines.length;
  box.replaceChildren(...lines);
}

function paintReadings(log, card) {
  for (const input of card.querySelectorAll("[data-reading]")) {
    const value = log.state.value(card.dataset.subject, `reading/${input.dataset.reading}`);
    const unit = card.querySelector(`[data-unit-of="${input.dataset.reading}"]`);
    // What could not be kept stays in its field, so that it can be kept later.
    if (document.activeElement !== input && !input.dataset.unkept) input.value = value?.value ?? "";
    if (unit && value?.unit && document.activeElement !== unit) {
      if (![...unit.options].some((option) => option.value === value.unit)) unit.add(new Option(value.unit));
      unit.value = value.unit;
    }
    checkSpelling(card, input);
  }
}

export function checkSpelling(card, input) {
  const odd = card.querySelector(`[data-odd="${input.dataset.reading}"]`);
  const typed = input.value.trim(), { kind } = input.dataset;
  const wrong = Boolean(typed && ((kind === "number" && numberOf(typed) === null) || (kind === "whole" && !WHOLE.test(typed))));
  input.setAttribute("aria-invalid", String(wrong));
  odd.hidden = !wrong;
  odd.textContent = wrong ? `Kept as typed, but it cannot be judged: write ${kind === "whole" ? "a whole number" : "a number such as 9.6"}.` : "";
}

function paintNote(card, note) {
  const area = card.querySelector("[data-note]");
  if (document.activeElement !== area && !area.dataset.unkept) area.value = note ?? "";
  if (note) card.querySelector("[data-panel=note]").hidden = false;
}
