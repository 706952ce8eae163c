// How this device reaches the computer: who asks, what counts as its answer, and what is somebody
// else's.

import { keepEarlierPass, keepPass, readPass } from "../storage/pass.js";
import { Away, halfAnAnswer, noAnswer, noContact, Refusal, strangeAnswer } from "./problems.js";

/** @import { Pass } from "../storage/pass.js" */

/**
 * @template Body
 * @typedef {object} Answer
 * @property {boolean} ok
 * @property {number} status
 * @property {boolean} redirected
 * @property {string} type
 * @property {boolean} ours whether it bears the mark of our own answers
 * @property {Body} body
 */

const PATIENCE_MS = 20_000;
const SESSION_PATIENCE_MS = 8_000;
/** What a refused token looks like; it may only be outdated. */
const TOKEN_REFUSED = [400, 401, 403];

/** The connection to the computer. Tells of `answer` ({request}) whenever the computer answered. */
export class Connection extends EventTarget {
  /** @type {string} the edition of the walk page that the computer ships now, or "" */
  edition = "";
  /** @type {number} when the session was opened last, by this device's clock; 0 for never */
  openedAt = 0;
  /** @type {number | null} this device's clock minus the computer's, in milliseconds */
  clockOffset = null;
  #csrf = "";
  /** @type {Set<{ sent: number }>} the requests that are under way */
  #underWay = new Set();
  /** @type {Pass | null} */
  #pass = null;

  /**
   * @param {string} host the computer's name, for sentences
   * @param {string} [nearby] where it answers without a certificate, or ""
   */
  constructor(host, nearby = "") {
    super();
    this.host = host;
    this.nearby = nearby;
  }

  /** Whether writes can be sent with a token. */
  get ready() {
    return Boolean(this.#csrf || this.#pass);
  }

  /** When the oldest request that is under way was sent; 0 where none is. */
  get waitingSince() {
    const times = [...this.#underWay].map((request) => request.sent);
    return times.length ? Math.min(...times) : 0;
  }

  /** Learn the token for writes and the computer's name, clock and edition of the page. */
  async openSession() {
    await this.#readPass();
    const before = Date.now();
    const session = await this.ask("/session", {}, SESSION_PATIENCE_MS);
    this.#csrf = session.csrf ?? "";
    this.host = session.host || this.host;
    this.edition = session.edition ?? "";
    this.openedAt = Date.now();
    // The computer's clock was read about half way between request and answer.
    const middle = (before + Date.now()) / 2;
    const computerTime = Date.parse(session.now);
    this.clockOffset = Number.isNaN(computerTime) ? null : middle - computerTime;
  }

  /**
   * A browser whose store was wiped under this open page is still the same device, and one that
   * joined again in another tab can still prove which device it was.
   */
  async #readPass() {
    const kept = await readPass();
    const had = this.#pass;
    this.#pass = kept ?? had;
    if (!had || had.device === kept?.device) return;
    if (kept) await keepEarlierPass(had);
    else await keepPass(had);
  }

  /**
   * Ask the computer.
   *
   * @param {string} url
   * @param {RequestInit} [options]
   * @param {number} [patience] milliseconds
   * @returns {Promise<any>} the parsed JSON
   * @throws {Refusal | Away} never anything else
   */
  async ask(url, options = {}, patience = PATIENCE_MS) {
    const request = `${options.method ?? "GET"} ${url.split("?")[0]}`;
    try {
      const data = await this.#answerTo(url, options, patience);
      this.dispatchEvent(new CustomEvent("answer", { detail: { request } }));
      return data;
    } catch (error) {
      if (error instanceof Away || error instanceof Refusal) error.request = request;
      throw error;
    }
  }

  /**
   * @param {string} url
   * @param {RequestInit} options
   * @param {number} patience milliseconds
   * @returns {Promise<any>}
   */
  async #answerTo(url, options, patience) {
    const answer = await this.#fetch(url, options, patience, (response) => response.text());
    const data = parsed(answer.body);
    // Whatever is not our JSON is not from the computer, whatever its status says.
    if (!data || answer.redirected) throw strangeAnswer(this.host, answer);
    if (answer.ok) return data;
    throw new Refusal(answer.status, data.error ?? `${this.host} answered ${answer.status}`);
  }

  /**
   * Write with the token. A refused token may be outdated, so it is renewed once and the write
   * repeated.
   *
   * @param {string} url
   * @param {RequestInit} options
   * @param {number} [patience] milliseconds
   * @returns {Promise<any>}
   * @throws {Refusal | Away}
   */
  async write(url, options, patience = PATIENCE_MS) {
    if (!this.ready) await this.openSession();
    try {
      return await this.ask(url, options, patience);
    } catch (error) {
      const mayBeToken = error instanceof Refusal && TOKEN_REFUSED.includes(error.status);
      if (!mayBeToken) throw error;
      await this.openSession();
      return this.ask(url, options, patience);
    }
  }

  /**
   * The bytes of a picture, or null where the computer has none.
   *
   * @param {string} url
   * @returns {Promise<ArrayBuffer | null>}
   * @throws {Away}
   */
  async fetchPicture(url) {
    const answer = await this.#fetch(url, {}, PATIENCE_MS, (response) => response.arrayBuffer());
    const isPicture = answer.ok && !answer.redirected && answer.type.startsWith("image/");
    return isPicture ? answer.body : null;
  }

  /**
   * @template Body
   * @param {string} url
   * @param {RequestInit} options
   * @param {number} patience milliseconds, for the body too
   * @param {(response: Response) => Promise<Body>} readBody
   * @returns {Promise<Answer<Body>>}
   */
  async #fetch(url, options, patience, readBody) {
    const stop = new AbortController();
    const timer = setTimeout(() => stop.abort(), patience);
    const underWay = { sent: Date.now() };
    this.#underWay.add(underWay);
    let begun = false;
    try {
      const response = await fetch(url, {
        ...options,
        headers: this.#headers(options.headers),
        signal: stop.signal,
        cache: "no-store",
        credentials: "same-origin",
      });
      begun = true;
      return { ...headOf(response), body: await readBody(response) };
    } catch {
      if (begun) throw halfAnAnswer(this.host);
      if (stop.signal.aborted) throw noAnswer(this.host, patience);
      throw await noContact(this.host, this.nearby);
    } finally {
      clearTimeout(timer);
      this.#underWay.delete(underWay);
    }
  }

  /**
   * @param {HeadersInit} [given]
   * @returns {Headers}
   */
  #headers(given) {
    const headers = new Headers(given);
    if (this.#csrf) headers.set("X-CSRFToken", this.#csrf);
    if (this.#pass) headers.set("Authorization", `Bearer ${this.#pass.token}`);
    return headers;
  }
}

/**
 * @param {Response} response
 * @returns {Omit<Answer<unknown>, "body">}
 */
function headOf({ ok, status, redirected, headers }) {
  const type = headers.get("Content-Type") ?? "";
  return { ok, status, redirected, type, ours: headers.has("X-Inspector") };
}

/**
 * @param {string} text
 * @returns {any} an object, or null
 */
function parsed(text) {
  try {
    const data = JSON.parse(text);
    return data && typeof data === "object" ? data : null;
  } catch {
    return null;
  }
}
