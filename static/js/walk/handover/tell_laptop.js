// Tells the laptop what this device still holds and whether it is ready to go below, so that its
// page of phones can say it of each.

import { readPass } from "../storage/pass.js";

/** @import { Connection } from "./connection.js" */
/** @import { Handover } from "./handover.js" */

/**
 * @typedef {object} Readiness
 * @property {string} state
 * @property {string[][]} lines what is not simply ready: its name, its state, the next step
 * @property {boolean} judges
 * @property {boolean} round
 */

/** The same is told again after so long, so that the laptop knows that it still holds. */
const AGAIN_MS = 60_000;
/** While photos are handed over, which may take minutes, it is told no more often than this. */
const MEANWHILE_MS = 5_000;

/** Speaks after each hand-over and during a long one, and only on a device that was let in. */
export class TellLaptop {
  #told = "";
  #toldAt = 0;
  #triedAt = 0;
  /** @type {Readiness | null} */
  #ready = null;
  #running = false;

  /**
   * @param {Handover} handover
   * @param {Connection} connection
   */
  constructor(handover, connection) {
    this.handover = handover;
    this.connection = connection;
    handover.addEventListener("rested", () => this.tell());
    handover.addEventListener("change", () => {
      const isLong = handover.active && handover.waits;
      if (isLong && Date.now() - this.#triedAt > MEANWHILE_MS) this.tell();
    });
  }

  /** @param {Readiness} ready */
  learn(ready) {
    this.#ready = ready;
    return this.tell();
  }

  /** Tell it now, where it is something new. */
  async tell() {
    const { handover, connection } = this;
    if (this.#running || !handover.answersUs) return;
    this.#triedAt = Date.now();
    if (!(await readPass().catch(() => null))) return;
    const body = JSON.stringify(this.#words());
    const isSame = body === this.#told && Date.now() - this.#toldAt < AGAIN_MS;
    if (isSame) return;
    this.#running = true;
    try {
      await connection.write(`${handover.base}/device`, {
        method: "POST",
        body,
        headers: { "Content-Type": "application/json" },
      });
      this.#told = body;
      this.#toldAt = Date.now();
    } catch {
      // Told with the next hand-over.
    } finally {
      this.#running = false;
    }
  }

  #words() {
    const { answers, queued, photos, refused, since } = this.handover;
    const ready = this.#ready;
    return {
      answers: answers || queued,
      photos,
      refused: refused.length,
      since,
      ready: ready?.state ?? "",
      lines: ready?.lines ?? [],
      judges: ready?.judges ?? false,
      round: ready?.round ?? false,
    };
  }
}
