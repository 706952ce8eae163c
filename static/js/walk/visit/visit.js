// The visit: how much of it is left, the round for that, what the round leaves out, and the words
// so far; all of it without the computer.

import { sentenceOf } from "../page/alarm.js";
import { find, findIfAny, make } from "../page/elements.js";
import { answerOf } from "../record/summary.js";
import { Folds } from "./folds.js";
import { Round } from "./round.js";

/** @import { FollowedRound, Stop } from "../python/followed_round.js" */
/** @import { JudgingHere } from "../python/judging_here.js" */
/** @import { Log } from "../record/log.js" */
/** @import { Item, Plan } from "../screens/plan.js" */

/**
 * @typedef {object} Parts
 * @property {Log} log
 * @property {Plan} plan
 * @property {FollowedRound} followed
 * @property {JudgingHere} judging
 * @property {(subject: string) => void} open goes to a check
 */

/**
 * A system as inspector/assess/words_so_far.py has it.
 *
 * @typedef {object} SystemNow
 * @property {string} name
 * @property {string} verdict
 * @property {string} firmness
 * @property {string} word
 * @property {string} sentence
 * @property {number} seen
 * @property {number} of
 * @property {number | null} points
 * @property {number} low
 * @property {number} high
 */

const NOT_YET = "This device is still starting what composes and assesses; look again in a minute.";

/** The screen. */
export class Visit {
  where = "the visit";
  #folds = new Folds();

  /** @param {Parts} parts */
  constructor(parts) {
    this.parts = parts;
    this.round = new Round(parts.log, parts.plan, parts.followed);
  }

  /** @param {HTMLElement} box */
  paint(box) {
    // The question stays while the rest is painted anew, because somebody may be typing in it.
    if (!findIfAny(box, ".visit-off")) {
      const rest = make("div", "", { className: "visit-rest" });
      box.replaceChildren(make("p", "", { className: "empty" }), this.#question(), rest);
    }
    find(box, "p").textContent = this.#sentence();
    const rest = find(box, ".visit-rest");
    rest.replaceChildren(this.#again(rest), ...this.#stops(), ...this.#leftOut(), this.#words());
  }

  #sentence() {
    const { followed } = this.parts;
    const { minutes, ahead, data } = followed;
    if (!followed.known) {
      return "Nobody has said how long the visit is: write when you have to be off.";
    }
    const parts = [];
    if (minutes !== null) parts.push(`${inHours(minutes)} are left.`);
    const off = Math.round(Math.abs(ahead));
    if (data && off) parts.push(`The walk is ${off} min ${ahead > 0 ? "ahead" : "behind"}.`);
    parts.push(followed.inWords());
    return parts.join(" ");
  }

  /** @returns {HTMLElement} the time to be off, which is recorded like any other answer */
  #question() {
    const { log } = this.parts;
    const input = make("input", "", { type: "time" });
    const recorded = log.state.value("inspection", "off");
    if (typeof recorded === "string") input.value = recorded;
    input.addEventListener("change", () => {
      log
        .record([["inspection", "off", input.value || null]], "the time to be off")
        .catch(() => {});
    });
    const label = make("label", "to be off at ", { className: "visit-off" });
    label.append(input);
    return label;
  }

  /**
   * @param {HTMLElement} rest
   * @returns {HTMLElement}
   */
  #again(rest) {
    const { followed } = this.parts;
    const button = make("button", "compose the round again now", { type: "button" });
    button.addEventListener("click", async () => {
      button.disabled = true;
      button.textContent = "composing…";
      try {
        await followed.look(true);
      } catch (error) {
        rest.prepend(make("p", `It cannot be composed here: ${sentenceOf(error)}`));
      }
    });
    button.disabled = followed.python.state !== "ready" || !followed.known;
    return button;
  }

  /** @returns {HTMLElement[]} the round, a fold for each stop */
  #stops() {
    const { followed, plan } = this.parts;
    const { data, person } = followed;
    const stops = (data?.stops ?? []).filter((stop) => !person || stop.person === person);
    if (!stops.length) return [];
    const folds = stops.map((stop) => {
      const items = this.#itemsOf(stop);
      const done = items.filter((item) => answerOf(this.parts.log, item.subject) !== "open");
      const who = (data?.seconds.length ?? 1) > 1 ? `, person ${stop.person}` : "";
      const name = `${plan.spaces.get(stop.space) ?? stop.space}${who}`;
      return this.#folds.fold(name, `${done.length} of ${items.length}`, (box) => {
        box.append(...items.map((item) => this.#row(item)));
      });
    });
    return [make("h2", "The round, in walking order"), ...folds];
  }

  /**
   * @param {Stop} stop
   * @returns {Item[]}
   */
  #itemsOf(stop) {
    const sheets = stop.looks.flatMap((look) => look.sheets);
    const items = sheets.map((sheet) => this.parts.plan.item(`sheet/${sheet}`));
    return items.filter((item) => item !== undefined);
  }

  /** @returns {HTMLElement[]} what has no place in the round, a fold for each space */
  #leftOut() {
    const { plan, followed } = this.parts;
    if (!followed.data) return [];
    const left = this.round.leftOut();
    const folds = [...plan.spaces].flatMap(([space, name]) => {
      const own = left.filter((item) => item.space === space);
      if (!own.length) return [];
      const fill = (/** @type {HTMLElement} */ box) =>
        box.append(...own.map((item) => this.#row(item)));
      return [this.#folds.fold(`left out: ${name}`, String(own.length), fill)];
    });
    const words = `Left out: ${left.length} checks, which count as not seen until somebody looks`;
    return [make("h2", words), ...folds];
  }

  /** @param {Item} item */
  #row({ subject, sheet, title, critical }) {
    const { log, open, plan } = this.parts;
    const row = make("button", "", { type: "button", className: "sheet-row" });
    const answer = log.state.value(subject, "rating") ?? (critical ? "critical" : "open");
    row.append(make("b", title), make("span", answer), make("small", plan.nameOf(sheet)));
    row.addEventListener("click", () => open(subject));
    return row;
  }

  /** @returns {HTMLElement} condition and word of every system, assessed when it is opened */
  #words() {
    return this.#folds.fold("the words so far", "", (box) => this.#fillWords(box));
  }

  /** @param {HTMLElement} box */
  async #fillWords(box) {
    const { followed, judging } = this.parts;
    if (followed.python.state !== "ready") {
      const { state, why } = followed.python;
      box.replaceChildren(make("p", state === "impossible" ? cannot(why) : NOT_YET));
      return;
    }
    box.replaceChildren(make("p", "assessing…"));
    try {
      const { sentences, systems } = await judging.ask("words", null);
      box.replaceChildren(make("p", sentences.join(" ")), ...systems.map(systemRow));
    } catch (error) {
      box.replaceChildren(make("p", `It cannot be assessed here: ${sentenceOf(error)}`));
    }
  }
}

/**
 * @param {number} minutes
 * @returns {string}
 */
function inHours(minutes) {
  const whole = Math.floor(minutes);
  if (whole < 120) return `${whole} minutes`;
  return `${Math.floor(whole / 60)} h ${whole % 60} min`;
}

/**
 * @param {string} why
 * @returns {string}
 */
function cannot(why) {
  return `This device cannot assess (${why}); the computer can, once it has what is recorded here.`;
}

/**
 * @param {SystemNow} system
 * @returns {HTMLElement}
 */
function systemRow({ name, verdict, firmness, word, sentence, seen, of, points, low, high }) {
  const row = make("div", "", { className: "word-row" });
  const mark = make("i", "", { className: `v v-${verdict.replaceAll(" ", "-")}` });
  mark.classList.toggle("v-open", firmness !== "firm");
  mark.setAttribute("aria-hidden", "true");
  // Outward, so that rounding never makes a condition look surer than it is.
  const span = `${Math.floor(low)} to ${Math.ceil(high)}`;
  const condition = points === null ? "" : `, condition ${Math.floor(points)} (${span})`;
  const said = make("b", name);
  const count = make("small", `${seen} of ${of} seen${condition}. ${sentence}`);
  const spoken = make("span", word, { className: "word" });
  spoken.prepend(mark);
  row.append(said, spoken, count);
  return row;
}
