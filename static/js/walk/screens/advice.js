// What is still worth the minutes left on board: asked of the computer after each answer; without
// it, of our own Python on this device; without that, the critical and heavy checks.

import { find, findIfAny, make } from "../page/elements.js";
import { notSeenBecause, vocabulary } from "../page/vocabulary.js";
import { Refusal } from "../handover/problems.js";
import { answerOf } from "../record/summary.js";

/** @import { Connection } from "../handover/connection.js" */
/** @import { FollowedRound } from "../python/followed_round.js" */
/** @import { Log } from "../record/log.js" */
/** @import { Item, Plan } from "./plan.js" */

/** @typedef {{ subject: string, label: string, sentence: string }} Look a check worth a look */
/** @typedef {{ looks: Look[], words: string }} Suggestion */

/**
 * @typedef {object} Parts
 * @property {Log} log
 * @property {Plan} plan
 * @property {Connection} connection
 * @property {FollowedRound} followed
 * @property {(subject: string) => void} open goes to a check
 */

const USUAL_MINUTES = 45;
const MOST_MINUTES = 24 * 60;
const PATIENCE_MS = 6_000;
// More than the weight of any check, so that a critical check comes before all others.
const CRITICAL_WEIGHT = 100;
const HERE = "The computer does not answer: advised on this device, by the computer's own rules.";
const AWAY =
  "The computer does not answer, so this is the plain order: critical checks first, then " +
  "the heaviest, as many as fit.";

/** The screen of the minutes left. */
export class Advice {
  where = "the minutes left";
  #questions = 0;

  /** @param {Parts} parts */
  constructor(parts) {
    this.parts = parts;
  }

  /** @param {HTMLElement} box */
  paint(box) {
    // The question stays while the list is painted anew, because somebody may be typing in it.
    if (!findIfAny(box, "input")) {
      box.replaceChildren(this.#question(box), make("div", "", { className: "advice" }));
    }
    this.#fill(box);
  }

  /**
   * @param {HTMLElement} box
   * @returns {HTMLElement}
   */
  #question(box) {
    const kept = Number(sessionStorage.getItem("minutes"));
    const input = make("input", "", {
      type: "number",
      min: "1",
      max: String(MOST_MINUTES),
      value: String(kept > 0 ? kept : USUAL_MINUTES),
      inputMode: "numeric",
    });
    input.addEventListener("change", () => {
      const minutes = Number(input.value);
      const isPossible = minutes > 0 && minutes <= MOST_MINUTES;
      if (isPossible) sessionStorage.setItem("minutes", input.value);
      this.#fill(box);
    });
    const label = make("label", "minutes left on board ");
    label.append(input);
    return label;
  }

  /** @param {HTMLElement} box */
  async #fill(box) {
    this.#questions += 1;
    const question = this.#questions;
    const { value } = find(box, "input", HTMLInputElement);
    const { looks, words } = await this.#suggest(value);
    // Meanwhile another number may have been asked about.
    if (question !== this.#questions) return;
    const rows = looks.map((look) => this.#row(look));
    find(box, ".advice").replaceChildren(make("p", words, { className: "empty" }), ...rows);
  }

  /**
   * The computer's advice, or this device's own; what the computer has against the number is shown
   * in its own words.
   *
   * @param {string} minutes as typed
   * @returns {Promise<Suggestion>}
   */
  async #suggest(minutes) {
    if (!(Number(minutes) > 0)) {
      return { looks: [], words: `Write the minutes left as a number from 1 to ${MOST_MINUTES}.` };
    }
    try {
      return await this.#askComputer(minutes);
    } catch (error) {
      if (!(error instanceof Refusal)) return this.#adviseHere(minutes);
      const isAboutNumber = error.status === 400;
      return { looks: isAboutNumber ? [] : this.#plainOrder(minutes), words: error.message };
    }
  }

  /**
   * @param {string} minutes
   * @returns {Promise<Suggestion>}
   */
  async #askComputer(minutes) {
    const { connection, log } = this.parts;
    const url = `/exchange/${log.inspection}/next?minutes=${encodeURIComponent(minutes)}`;
    return suggestionOf(await connection.ask(url, {}, PATIENCE_MS), minutes);
  }

  /**
   * @param {string} minutes
   * @returns {Promise<Suggestion>}
   */
  async #adviseHere(minutes) {
    try {
      const asked = { minutes: Number(minutes), here: "" };
      const answer = await this.parts.followed.judging.ask("looks", asked);
      const { looks, words } = suggestionOf(answer, minutes);
      return { looks, words: `${words} ${HERE}` };
    } catch {
      return { looks: this.#plainOrder(minutes), words: AWAY };
    }
  }

  /**
   * The unit in bold; the sentence begins with the check's own title.
   *
   * @param {Look} look
   * @returns {HTMLButtonElement}
   */
  #row({ subject, label, sentence }) {
    const { open, plan } = this.parts;
    const unit = plan.sheets.get(plan.item(subject)?.sheet ?? "")?.name;
    const row = make("button", "", { type: "button", className: "sheet-row advised" });
    row.append(make("b", unit ?? label), make("span", sentence));
    row.addEventListener("click", () => open(subject));
    return row;
  }

  /**
   * Without the computer: what has no answer, critical before heavy, while it fits.
   *
   * @param {string} minutes
   * @returns {Look[]}
   */
  #plainOrder(minutes) {
    const items = this.parts.plan.items.filter((item) => this.#isWorthALook(item));
    items.sort((a, b) => rank(b) - rank(a));
    let left = Number(minutes);
    const chosen = [];
    const runs = new Set();
    for (const item of items) {
      // A trial takes its time once, for the first of its checks that is chosen.
      const run = this.parts.plan.runOf(item);
      const needed = Number(item.source.dataset.minutes) + (runs.has(run.key) ? 0 : run.minutes);
      if (needed > left) continue;
      left -= needed;
      runs.add(run.key);
      chosen.push(item);
    }
    return chosen.map((item) => this.#asLook(item));
  }

  /**
   * @param {Item} item
   * @returns {boolean}
   */
  #isWorthALook({ subject, optional }) {
    const { log } = this.parts;
    if (optional) return false;
    if (answerOf(log, subject) === "open") return true;
    return log.state.value(subject, "rating") === notSeenBecause(vocabulary.noTime);
  }

  /**
   * @param {Item} item
   * @returns {Look}
   */
  #asLook({ subject, title, space, source }) {
    const { minutes, critical } = source.dataset;
    const where = this.parts.plan.spaces.get(space);
    const addition = critical ? ", critical" : "";
    return { subject, label: title, sentence: `${title}: ${where}, ${minutes} min${addition}` };
  }
}

/**
 * @param {{ looks: Look[], minutes: number, why: string, joint: string }} answer
 * @param {string} minutes
 * @returns {Suggestion}
 */
function suggestionOf(answer, minutes) {
  const words =
    `${answer.minutes} of ${minutes} minutes, walks between spaces included. ` + `${answer.joint}`;
  return { looks: answer.looks, words: answer.why || words };
}

/**
 * @param {Item} item
 * @returns {number}
 */
function rank({ source }) {
  const { critical, weight } = source.dataset;
  return (critical ? CRITICAL_WEIGHT : 0) + Number(weight);
}
