// Ready to go below: whether all that is needed without the computer is on this device.

import { sentenceOf } from "../page/alarm.js";
import { findIfAny, make } from "../page/elements.js";
import { CAUTION, NOT_READY, PROOFS, UNKNOWN } from "./ready_proofs.js";

/** @import { Parts, Proof } from "./ready_proofs.js" */

/** @typedef {{ name: string, word: string, sentence: string }} Line */

/** The screen of what is ready. */
export class Ready {
  where = "ready to go below";
  #looks = 0;

  /** @param {Parts} parts */
  constructor(parts) {
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
    const lines = await Promise.all(PROOFS.map(([name, prove]) => this.#line(name, prove)));
    if (look !== this.#looks) return; // a later look has begun
    head.textContent = verdictOf(lines);
    const list = make("ul", "", { className: "ready" });
    list.append(...lines.map(listItem));
    box.replaceChildren(head, list, ...this.#buttons(box));
  }

  /**
   * @param {string} name
   * @param {(parts: Parts) => Proof | Promise<Proof>} prove
   * @returns {Promise<Line>}
   */
  async #line(name, prove) {
    try {
      const [word, sentence] = await prove(this.parts);
      return { name, word, sentence };
    } catch (error) {
      // A proof that fails is no proof: its reason is shown, and the line is not ready.
      const sentence = `This could not be tested: ${sentenceOf(error)}.`;
      return { name, word: NOT_READY, sentence };
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
function listItem({ name, word, sentence }) {
  const item = make("li");
  item.dataset.ready = word;
  item.append(make("b", name), make("span", word), make("small", sentence));
  return item;
}

/**
 * The sentence over all lines names what is missing.
 *
 * @param {Line[]} lines
 * @returns {string}
 */
function verdictOf(lines) {
  const missing = lines.filter((line) => line.word === NOT_READY).map((line) => line.name);
  if (missing.length) return `Not ready yet: ${missing.join(", ")}.`;
  const cautions = lines.filter((line) => line.word === CAUTION).map((line) => line.name);
  if (cautions.length) return `Ready, with a caution: ${cautions.join(", ")}.`;
  const isUnknown = lines.some((line) => line.word === UNKNOWN);
  return isUnknown ? "Ready as far as it can be known here." : "Ready to go below.";
}
