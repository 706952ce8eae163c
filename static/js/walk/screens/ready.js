// Ready to go below: whether all that is needed without the computer is on this device.

import { handOverButton } from "../handover/hand_over_now.js";
import { sentenceOf } from "../page/alarm.js";
import { findIfAny, make } from "../page/elements.js";
import { CAUTION, looksOf, NOT_READY, PROOFS, READY } from "./ready_proofs.js";

/** @import { Readiness } from "../handover/tell_laptop.js" */
/** @import { Parts, Proof } from "./ready_proofs.js" */

/** @typedef {{ name: string, word: string, sentence: string, step: string }} Line */

/** The screen of what is ready. Tells of `looked` ({detail: Readiness}) after each look. */
export class Ready extends EventTarget {
  where = "ready to go below";
  #looks = 0;

  /** @param {Parts} parts */
  constructor(parts) {
    super();
    this.parts = parts;
  }

  /** @param {HTMLElement} box */
  async paint(box) {
    this.#looks += 1;
    const look = this.#looks;
    const head = make("h2", "Looking…");
    head.setAttribute("aria-live", "polite");
    // The last result stays in sight while the next is sought.
    if (!findIfAny(box, "ul")) box.replaceChildren(head);
    const lines = await this.look();
    if (look !== this.#looks) return; // a later look has begun
    head.textContent = verdictOf(lines);
    const list = make("ul", "", { className: "ready" });
    list.append(...lines.map(listItem));
    const kept = findIfAny(box, ".hand-over");
    box.replaceChildren(head, list, kept ?? handOverButton(), ...this.#buttons(box));
  }

  /**
   * Prove every line, and tell of it.
   *
   * @returns {Promise<Line[]>}
   */
  async look() {
    const lines = await Promise.all(PROOFS.map(([name, prove]) => this.#line(name, prove)));
    this.dispatchEvent(new CustomEvent("looked", { detail: this.#readiness(lines) }));
    return lines;
  }

  /**
   * @param {Line[]} lines
   * @returns {Readiness}
   */
  #readiness(lines) {
    const { python, followed } = this.parts;
    return {
      state: stateOf(lines),
      lines: lines
        .filter((line) => line.word !== READY)
        .map(({ name, word, step }) => [name, word, step]),
      judges: python.state === "ready",
      round: looksOf(followed) > 0,
    };
  }

  /**
   * @param {string} name
   * @param {(parts: Parts) => Proof | Promise<Proof>} prove
   * @returns {Promise<Line>}
   */
  async #line(name, prove) {
    try {
      const [word, sentence, step = ""] = await prove(this.parts);
      return { name, word, sentence, step };
    } catch (error) {
      // A proof that fails is no proof: its reason is shown, and the line is not ready.
      const sentence = `This could not be tested: ${sentenceOf(error)}.`;
      return { name, word: NOT_READY, sentence, step: "Look again." };
    }
  }

  /**
   * @param {HTMLElement} box
   * @returns {HTMLElement[]}
   */
  #buttons(box) {
    const { app } = this.parts;
    const again = make("button", "look again", { type: "button", className: "main" });
    again.addEventListener("click", () => {
      // Whoever looks again may have come back to the computer.
      this.parts.python.startAgain();
      this.paint(box);
    });
    if (!app.old) return [again];
    const newer = make("button", "take the newer page now", { type: "button" });
    newer.addEventListener("click", () => app.takeNewer());
    return [again, newer];
  }
}

/**
 * @param {Line} line
 * @returns {HTMLLIElement}
 */
function listItem({ name, word, sentence, step }) {
  const item = make("li");
  item.dataset.ready = word;
  item.append(make("b", name), make("span", word), make("small", sentence));
  if (step) item.append(make("small", `Next: ${step}`, { className: "next-step" }));
  return item;
}

/**
 * @param {Line[]} lines
 * @returns {string} the worst of them
 */
function stateOf(lines) {
  const words = lines.map((line) => line.word);
  return [NOT_READY, CAUTION].find((word) => words.includes(word)) ?? READY;
}

/**
 * The sentence over all lines names what is missing.
 *
 * @param {Line[]} lines
 * @returns {string}
 */
function verdictOf(lines) {
  const state = stateOf(lines);
  const names = lines.filter((line) => line.word === state).map((line) => line.name);
  if (state === NOT_READY) return `Not ready yet: ${names.join(", ")}.`;
  if (state === CAUTION) return `Ready, with a caution: ${names.join(", ")}.`;
  return "Ready to go below.";
}
