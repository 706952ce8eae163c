// What to ask, where to look and what is bad, of every check: read once from the checklists that
// this device keeps for judging as well, so that the page need not carry them a second time.

import { byId } from "../page/elements.js";

/** @typedef {{ ask: string, look: string, bad: string, glance: string }} Texts of a check */

/** @type {Record<string, string>} */
const NEEDED = JSON.parse(byId("needed").textContent ?? "{}");

/** Tells of `change` once the texts are here. */
export class CheckTexts extends EventTarget {
  /** @type {Map<string, Texts> | null} by system and check; null until they are read */
  #texts = null;
  /** @type {Promise<void> | null} */
  #reading = null;

  /** @param {string} address of the inspection's checklists, which names their content */
  constructor(address) {
    super();
    this.address = address;
  }

  get here() {
    return this.#texts !== null;
  }

  /** Read them, where that was not done yet; where they cannot be had it is tried again later. */
  read() {
    if (this.#texts) return Promise.resolve();
    this.#reading ??= this.#read().finally(() => {
      this.#reading = null;
    });
    return this.#reading;
  }

  async #read() {
    const response = await fetch(this.address).catch(() => null);
    if (!response?.ok) return;
    const tables = await response.json().catch(() => null);
    if (!tables) return;
    this.#texts = textsOf(tables);
    this.dispatchEvent(new Event("change"));
  }

  /**
   * @param {string} system
   * @param {string} check
   * @returns {Texts | null} null where they are not here
   */
  of(system, check) {
    return this.#texts?.get(`${system}/${check}`) ?? null;
  }
}

/**
 * @param {Record<string, any>} tables by the names of their files
 * @returns {Map<string, Texts>}
 */
function textsOf(tables) {
  const found = new Map();
  for (const { system, check = [] } of Object.values(tables)) {
    if (!system) continue;
    for (const { id, ask, look, bad, glance } of check) {
      const passing = glance ? `${glance.look} Stop for: ${glance.bad}.` : "";
      found.set(`${system.id}/${id}`, { ask, look, bad, glance: passing });
    }
  }
  return found;
}

/**
 * @param {HTMLElement} row
 * @returns {string} what a check needs and what proves it, in words
 */
export function proofWords({ dataset: { needs = "", proof, once } }) {
  const words = `needs ${NEEDED[needs]}; proved when ${proof}`;
  return once === undefined ? words : `${words}; asked once for the vessel`;
}
