// What keeps things from being handed over just now. It is shown only as long as it is true, so an
// answer of the computer ends it at once, long before everything is handed over.

import { Away, Refusal, troubleOf } from "./problems.js";

// It is asked for before each attempt, and answers also where the work itself meets silence.
const SESSION = "GET /session";

/** One trouble at a time. */
export class Trouble {
  /** @type {string} a sentence, or "" */
  words = "";
  /** Whether nothing at all came back. */
  silent = false;
  #request = "";

  /**
   * @param {unknown} error
   * @param {string} host
   */
  met(error, host) {
    const known = error instanceof Away || error instanceof Refusal;
    this.words = troubleOf(error, host);
    this.#request = known ? error.request : "";
    this.silent = known && error.silent;
  }

  /**
   * The computer answered a request: silence is over, and so is what this very request met. That
   * the session answers says nothing of requests that met silence behind it.
   *
   * @param {string} request
   * @returns {boolean} whether a trouble ended
   */
  endedBy(request) {
    const endsSilence = this.silent && request !== SESSION;
    if (!this.words || !(endsSilence || this.#request === request)) return false;
    this.end();
    return true;
  }

  /** Everything was handed over. */
  end() {
    this.words = "";
  }
}
