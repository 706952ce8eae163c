// One check as a card: copied from its system's template, painted from the state, and turning taps into entries.

import { paintStrip, take } from "./photos.js";
import { alarm } from "./status.js";
import { describe, paintDisputes, paintHistory } from "./answers.js";

const NUMBER = { number: /^[+-−]?\d+([.,]\d+)?$/, whole: /^[+-−]?\d+$/ };

export function paint(log, card) {
  const { subject } = card.dataset;
  const rating = log.state.value(subject, "rating");
  const judgement = log.judgements[subject];
  paintRating(card, rating, judgement);
  paintJudged(card, rating, judgement);
  paintReadings(log, card);
  paintGate(card, log.state.value(subject, "gate") ?? {});
  paintNote(card, log.state.value(subject, "note"));
  const photos = paintStrip(log, card.querySelector("[data-photos]"), subject);
  card.querySelector("[data-act=photo]").textContent = photos ? `photo ${photos}` : "photo";
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
    if (!rating && judgement.rating) lines.push(line("cite", "Proposed: counts as seen until you rate it yourself."));
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

function checkSpelling(card, input) {
  const odd = card.querySelector(`[data-odd="${input.dataset.reading}"]`);
  const pattern = NUMBER[input.dataset.kind];
  const wrong = Boolean(pattern && input.value.trim() && !pattern.test(input.value.trim()));
  input.setAttribute("aria-invalid", String(wrong));
  odd.hidden = !wrong;
  odd.textContent = wrong ? `Kept as typed, but it cannot be judged: write ${input.dataset.kind === "whole" ? "a whole number" : "a number such as 9.6"}.` : "";
}

function paintGate(card, gate) {
  const box = card.querySelector(".gate");
  if (!box) return;
  for (const button of box.querySelectorAll("[data-gate]")) button.setAttribute("aria-pressed", String(gate[button.dataset.gate] === button.dataset.is));
  card.querySelector(".answers").hidden = !gate.entered;
}

function paintNote(card, note) {
  const area = card.querySelector("[data-note]");
  if (document.activeElement !== area && !area.dataset.unkept) area.value = note ?? "";
  if (note) card.querySelector("[data-panel=note]").hidden = false;
}

// Listens once for every card inside `root`.
export class Cards {
  constructor(log, root, { onFinding, onPhotoTaken }) {
    this.log = log;
    this.onFinding = onFinding;
    this.onPhotoTaken = onPhotoTaken;
    root.addEventListener("click", (event) => this.#clicked(event));
    root.addEventListener("change", (event) => this.#changed(event.target));
    root.addEventListener("focusout", (event) => this.#changed(event.target));
    root.addEventListener("keydown", (event) => this.#key(event));
    const flush = () => { if (document.activeElement) this.#changed(document.activeElement); };
    document.addEventListener("visibilitychange", () => { if (document.visibilityState === "hidden") flush(); });
    addEventListener("pagehide", flush);
  }

  #record(subject, changes, words) {
    const act = this.log.record(changes.map(([field, value]) => [subject, field, value]), words && `recorded: ${words}`);
    return act.then(() => true, () => false); // the log itself says aloud what could not be kept
  }

  #clicked(event) {
    const button = event.target.closest("button");
    const card = button?.closest("article.check");
    if (!card) return;
    const { subject } = card.dataset;
    const { rate, reason, act, gate, sign, putBack } = button.dataset;
    if (rate) this.#rate(card, button, rate);
    else if (reason) { this.#rate(card, button, `not seen: ${reason}`); toggle(card, "not-seen", false); }
    else if (act === "not-fitted") this.#rate(card, button, "not fitted");
    else if (act === "finding") this.onFinding(subject);
    else if (act) this.#open(card, act);
    else if (gate) this.#gate(card, button);
    else if (sign) this.#sign(card, sign);
    else if (putBack) this.#record(subject, [[button.dataset.field, JSON.parse(putBack)]], `put back ${describe(JSON.parse(putBack))}`);
  }

  // A tap on the answer that stands takes it away again; on two standing answers it settles them.
  #rate(card, button, value) {
    const { subject } = card.dataset;
    const standing = button.getAttribute("aria-pressed") === "true" && !this.log.state.disputed(subject, "rating");
    this.#record(subject, [["rating", standing ? null : value]], standing ? "answer taken away" : value);
  }

  #open(card, act) {
    const shown = toggle(card, act);
    if (shown && act === "history") paintHistory(this.log, card.querySelector("[data-panel=history]"), card.dataset.subject);
    if (shown && act === "note") card.querySelector("[data-note]").focus();
  }

  #gate(card, button) {
    const gate = { ...this.log.state.value(card.dataset.subject, "gate"), [button.dataset.gate]: button.dataset.is };
    const ready = ["permit", "attendant", "instrument"].every((key) => gate[key] === "yes");
    const odd = card.querySelector("[data-gate-odd]");
    odd.hidden = !(gate.entered === "yes" && !ready);
    odd.textContent = odd.hidden ? "" : "Without permit, attendant and tester nobody goes in. Answer the three with yes, or look from outside.";
    if (!odd.hidden) {
      if (button.dataset.gate === "entered") return;
      delete gate.entered;
    }
    this.#record(card.dataset.subject, [["gate", gate]], "what was asked before going in");
  }

  #sign(card, id) {
    const input = card.querySelector(`[data-reading="${id}"]`);
    const text = input.value.trim();
    if (!text) return;
    input.value = /^[-−]/.test(text) ? text.slice(1) : `-${text.replace(/^\+/, "")}`;
    this.#changed(input);
  }

  #key(event) {
    if (event.key !== "Enter" || !event.target.matches("input[data-reading]")) return;
    event.preventDefault();
    const inputs = [...event.target.closest("article").querySelectorAll("[data-reading]")];
    (inputs[inputs.indexOf(event.target) + 1] ?? event.target.closest("article").querySelector("[data-rate]")).focus();
  }

  #changed(target) {
    const card = target.closest?.("article.check");
    if (!card) return;
    const { subject } = card.dataset;
    const { reading, unitOf, photo } = target.dataset;
    if (photo) this.#take(target, subject);
    else if (reading || unitOf) this.#keepReading(card, subject, reading ?? unitOf);
    else if ("note" in target.dataset) {
      this.#record(subject, [["note", target.value.trim() || null]], "note").then((kept) => markKept(target, kept));
    }
  }

  #keepReading(card, subject, id) {
    const input = card.querySelector(`[data-reading="${id}"]`);
    const unit = card.querySelector(`[data-unit-of="${id}"]`);
    const text = input.value.trim();
    const value = text ? { value: text, ...(unit ? { unit: unit.value } : {}) } : null;
    checkSpelling(card, input);
    this.#record(subject, [[`reading/${id}`, value]], describe(value)).then((kept) => markKept(input, kept));
  }

  async #take(input, subject) {
    const files = [...input.files];
    input.value = "";
    for (const file of files) {
      try {
        this.onPhotoTaken(await take(this.log, file, subject));
      } catch (error) {
        alarm(`A photo was not kept: ${error.message}`);
      }
    }
  }
}

function markKept(field, kept) {
  if (kept) delete field.dataset.unkept;
  else field.dataset.unkept = "yes";
}

function toggle(card, name, shown) {
  const panel = card.querySelector(`[data-panel="${name}"]`);
  panel.hidden = shown === undefined ? !panel.hidden : !shown;
  card.querySelector(`[data-act="${name}"]`).setAttribute("aria-expanded", String(!panel.hidden));
  return !panel.hidden;
}
