// The round as it is followed on this device: as the computer composed it for this page, or as our
// own Python composed it here since, whenever time ran ahead or behind.

import { findIfAny } from "../page/elements.js";
import { whenQuiet } from "../page/quiet.js";
import { readOwn, writeOwn } from "../storage/own_settings.js";

/** @import { Log } from "../record/log.js" */
/** @import { JudgingHere } from "./judging_here.js" */
/** @import { Python } from "./python.js" */

/** @typedef {{ sheets: string[], way: string, seconds: number }} Look */
/** @typedef {{ space: string, person: number, entering: number, looks: Look[] }} Stop */

/**
 * As `composed` of inspector/assess/round/followed_round.py makes it; `here` where this device did.
 *
 * @typedef {object} RoundData
 * @property {string} at when it was composed, ISO time with its zone
 * @property {number} minutes for which time
 * @property {Stop[]} stops in walking order
 * @property {number[]} seconds what each of the people needs
 * @property {number} left how many checks are left out
 * @property {boolean} [here] whether this device composed it
 */

/**
 * @typedef {object} Answer of `follow` in inspector/in_browser/door.py
 * @property {boolean} known whether somebody said how long the visit is
 * @property {number} [minutes] that are left
 * @property {number} [ahead] how many minutes the walk is ahead of the round
 * @property {string} [why] it was composed again
 * @property {RoundData} [round] where it was composed again
 */

/** @type {Record<string, string>} */
const REASONS = {
  ahead: ", because time was won",
  behind: ", because time ran short",
  changed: ", because the visit was changed",
};
const PERSON = "round-person";
/** Composing keeps our Python from judging, so it waits until nobody taps. */
const QUIET_MS = 3_000;
const AT_THE_LATEST_MS = 30_000;
const LOOK_AT_CLOCK_MS = 60_000;

/** Tells of `change` when the round, or how far the walk is ahead of it, has changed. */
export class FollowedRound extends EventTarget {
  /** @type {RoundData | null} */
  data = JSON.parse(findIfAny(document, "#round")?.textContent ?? "null");
  /** @type {number | null} minutes left of the visit, as it was when they were last asked for */
  minutes = null;
  /** How many minutes the walk was ahead of the round then. */
  ahead = 0;
  /** Why it was last composed again here, or "". */
  why = "";
  /** Whether somebody said how long the visit is, as far as it is known. */
  known = this.data !== null;
  #isDue = false;

  /**
   * @param {Log} log
   * @param {Python} python
   * @param {JudgingHere} judging
   * @param {() => string | null} here the space where this person is, as far as it is known
   */
  constructor(log, python, judging, here) {
    super();
    this.log = log;
    this.python = python;
    this.judging = judging;
    this.here = here;
  }

  /** @returns {string} who composed the round, when and why; "" where there is none */
  inWords() {
    const { data } = this;
    if (!data) return "";
    const time = new Date(data.at).toLocaleTimeString([], {
      hour: "2-digit",
      minute: "2-digit",
      hour12: false,
    });
    const reason = REASONS[this.why] ?? "";
    const said = data.here
      ? `Composed on this device at ${time}${reason}.`
      : `Composed by the computer at ${time}.`;
    const { state, why } = this.python;
    return state === "impossible"
      ? `${said} This device cannot compose it again (${why}): ask the computer when it is near.`
      : said;
  }

  get #key() {
    return `round/${this.log.inspection}`;
  }

  /** Take up what this device composed before the page was loaded, and follow the visit. */
  open() {
    const kept = /** @type {RoundData | null} */ (readOwn(this.#key, null));
    if (kept && (!this.data || Date.parse(kept.at) > Date.parse(this.data.at))) this.data = kept;
    this.dispatchEvent(new Event("change"));
    this.python.addEventListener("change", () => {
      this.#lookSoon();
      // Where it cannot run here, the line says so.
      this.dispatchEvent(new Event("change"));
    });
    this.log.addEventListener("change", () => this.#lookSoon());
    setInterval(() => this.#lookSoon(), LOOK_AT_CLOCK_MS);
    // A phone that slept in a pocket has counted no minutes.
    document.addEventListener("visibilitychange", () => this.#lookSoon());
  }

  /** @returns {number} whose part is walked with this device; 0 for everybody's */
  get person() {
    const kept = Number(sessionStorage.getItem(PERSON));
    return kept <= (this.data?.seconds.length ?? 0) ? kept : 0;
  }

  set person(number) {
    sessionStorage.setItem(PERSON, String(number));
    this.#lookSoon();
    this.dispatchEvent(new Event("change"));
  }

  /** At the next moment in which nobody taps: see whether the round still fits the time. */
  #lookSoon() {
    if (this.#isDue || this.python.state !== "ready") return;
    this.#isDue = true;
    const look = () => {
      this.#isDue = false;
      this.look().catch(() => {}); // Python ended, and says so itself
    };
    whenQuiet(look, QUIET_MS, AT_THE_LATEST_MS);
  }

  /**
   * See whether the round still fits the time; where it does not, compose it again.
   *
   * @param {boolean} [anew] compose it in any case
   * @throws {Error} where this device cannot
   */
  async look(anew = false) {
    const asked = { now: nowHere(), here: this.here(), person: this.person, anew };
    const answer = await this.#ask({ ...asked, before: this.data });
    this.known = answer.known;
    this.minutes = answer.minutes ?? null;
    this.ahead = answer.ahead ?? 0;
    if (answer.round) {
      this.why = answer.why ?? "";
      this.data = { ...answer.round, here: true };
      writeOwn(this.#key, this.data);
    }
    this.dispatchEvent(new Event("change"));
  }

  /**
   * @param {{ before: RoundData | null }} asked
   * @returns {Promise<Answer>}
   */
  async #ask(asked) {
    try {
      return await this.judging.ask("follow", asked);
    } catch (error) {
      // A round that an older edition kept here may lack something: then it is composed afresh.
      if (!asked.before) throw error;
      return this.judging.ask("follow", { ...asked, before: null });
    }
  }
}

/** @returns {string} this moment with its zone, in which the time to be off was written */
function nowHere() {
  const now = new Date();
  const offset = -now.getTimezoneOffset();
  const local = new Date(now.getTime() + offset * 60_000).toISOString().slice(0, 19);
  const [hours, minutes] = [Math.trunc(Math.abs(offset) / 60), Math.abs(offset) % 60];
  const two = (/** @type {number} */ number) => String(number).padStart(2, "0");
  return `${local}${offset < 0 ? "-" : "+"}${two(hours)}:${two(minutes)}`;
}
