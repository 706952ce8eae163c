// Taps and typing on the cards of checks become entries.

import { describe, paintHistory } from "./answers.js";
import { checkSpelling } from "./card_paint.js";
import { recordGate } from "./gate.js";
import { take } from "./photos.js";
import { alarm } from "./status.js";

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
    return this.#keep(changes.map(([field, value]) => [subject, field, value]), words);
  }

  // What was typed, rather than tapped.
  #recordTyped(subject, field, value, words) {
    return this.#keep(this.log.unlessShown([[subject, field, value]]), words);
  }

  #keep(changes, words) {
    const act = this.log.record(changes, words && `recorded: ${words}`);
    return act.then(() => true, () => false); // the log itself says aloud what could not be kept
  }

  #clicked(event) {
    const button = event.target.closest("button");
    const card = button?.closest("article.check");
    if (!card) return;
    const { subject } = card.dataset;
    const { rate, reason, act, gate, sign } = button.dataset;
    if (rate) this.#rate(card, button, rate);
    else if (reason) { this.#rate(card, button, `not seen: ${reason}`); toggle(card, "not-seen", false); }
    else if (act === "not-fitted") this.#rate(card, button, "not fitted");
    else if (act === "finding") this.onFinding(subject);
    else if (act) this.#open(card, act);
    else if (gate) this.#gate(card, button);
    else if (sign) this.#sign(card, sign);
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

  #gate(card, target) {
    recordGate(this.log, card, target).catch(() => {}); // the log itself says aloud what could not be kept
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
    const { reading, unitOf, photo, air } = target.dataset;
    if (photo) this.#take(target, subject);
    else if (air) this.#gate(card, target);
    else if (reading || unitOf) this.#keepReading(card, subject, reading ?? unitOf);
    else if ("note" in target.dataset) {
      this.#recordTyped(subject, "note", target.value.trim() || null, "note").then((kept) => markKept(target, kept));
    }
  }

  #keepReading(card, subject, id) {
    const input = card.querySelector(`[data-reading="${id}"]`);
    const unit = card.querySelector(`[data-unit-of="${id}"]`);
    const text = input.value.trim();
    const value = text ? { value: text, ...(unit ? { unit: unit.value } : {}) } : null;
    checkSpelling(card, input);
    this.#recordTyped(subject, `reading/${id}`, value, describe(value)).then((kept) => markKept(input, kept));
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
