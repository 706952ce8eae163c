// Readings judged on this device: what is recorded goes to our own Python beside the page, and its
// judgements come back to the cards. Where it cannot run, a card waits for the computer.

/** @import { Judgement, Log } from "../record/log.js" */
/** @import { Entry } from "../storage/entry_store.js" */
/** @import { Python } from "./python.js" */

// A message of this many entries is copied without delaying a tap.
const PER_MESSAGE = 300;

/** Keeps our Python up to date with what is recorded, and the cards with what it says. */
export class JudgingHere {
  /** One after the other: nothing is judged before all that was recorded earlier is known there. */
  #chain = Promise.resolve();

  /**
   * @param {Log} log
   * @param {Python} python
   */
  constructor(log, python) {
    this.log = log;
    this.python = python;
    python.addEventListener("change", () => this.#stateChanged());
    log.addEventListener("change", (event) => {
      const { entries } = /** @type {CustomEvent<{ entries: Entry[] }>} */ (event).detail;
      // What came before Python was up is read from the log when it is.
      if (python.state === "ready" && entries.length) this.#tell(entries);
    });
  }

  /**
   * Ask Python about the inspection, once it knows all that was recorded until now.
   *
   * @param {string} question one of QUESTIONS in inspector/in_browser/door.py
   * @param {any} given as it becomes JSON
   * @returns {Promise<any>}
   */
  async ask(question, given) {
    await this.#chain;
    return this.python.ask(question, given);
  }

  #stateChanged() {
    const { state } = this.python;
    this.log.judgesHere = state === "starting" || state === "ready";
    if (state === "ready") this.#tell(this.log.state.all());
    // The cards that wait say for whom they wait.
    const waiting = Object.entries(this.log.judgements).filter(([, said]) => said.waiting);
    this.log.judge(Object.fromEntries(waiting)).catch(() => {});
  }

  /** @param {Entry[]} entries */
  #tell(entries) {
    // Python ended, and says so itself; or these cannot be judged here, and the computer will.
    this.#chain = this.#chain.then(() => this.#handOver(entries)).catch(() => {});
  }

  /**
   * Hand entries over, those that nobody has judged yet last, to be judged.
   *
   * @param {Entry[]} entries
   */
  async #handOver(entries) {
    const unjudged = entries.filter(({ subject, field }) => {
      return field.startsWith("reading/") && this.#awaits(subject);
    });
    const asked = new Set(unjudged);
    const others = entries.filter((entry) => !asked.has(entry));
    for (let from = 0; from < others.length; from += PER_MESSAGE) {
      await this.python.ask("add", others.slice(from, from + PER_MESSAGE));
    }
    if (unjudged.length) await this.#show(await this.python.ask("judge", unjudged));
  }

  /** @param {Record<string, Judgement | null>} judgements */
  async #show(judgements) {
    // The computer may have judged meanwhile, and its word stays.
    const news = Object.entries(judgements).filter(([subject]) => this.#awaits(subject));
    const marked = news.map(([subject, said]) => [subject, said && { ...said, here: true }]);
    await this.log.judge(Object.fromEntries(marked));
  }

  /**
   * @param {string} subject
   * @returns {boolean} whether the computer has not judged what is recorded now
   */
  #awaits(subject) {
    const { waiting, here } = this.log.judgements[subject] ?? {};
    return Boolean(waiting || here);
  }
}
