// How this device talks to the computer: who asks, what counts as its answer, and what is somebody else's.

import { readPass } from "./pass.js";

const PATIENCE = 20_000;

// The computer itself said no; the sentence is its own.
export class Refusal extends Error {
  constructor(status, sentence) {
    super(sentence);
    this.status = status;
  }
}

// No answer, or none of ours: a dead link, a server that is starting, a hotspot's sign-in page.
export class Away extends Error {}

export class Talk {
  version = "";
  offset = null;
  #csrf = "";
  #pass = null;

  constructor(host) {
    this.host = host;
  }

  // What a fresh session says: the token for writes, the computer's name, clock and version.
  async session() {
    this.#pass = await readPass();
    const before = Date.now();
    const session = await this.ask("/session", {}, 8_000);
    this.#csrf = session.csrf ?? "";
    this.host = session.host || this.host;
    this.version = session.version ?? "";
    const there = Date.parse(session.now);
    this.offset = Number.isNaN(there) ? null : (before + Date.now()) / 2 - there;
    return session;
  }

  get ready() {
    return Boolean(this.#csrf || this.#pass);
  }

  // Ask; resolves with parsed JSON. Rejects with Refusal or Away, never with anything else.
  async ask(url, options = {}, patience = PATIENCE) {
    const response = await this.#fetch(url, options, patience, (answer) => answer.text());
    const data = parsed(response.body);
    // Whatever is no JSON of ours is not from the computer, whatever its status says.
    if (!data || response.redirected) throw new Away(response.ok ? this.#stranger() : `${this.host} answers ${response.status} and nothing else`);
    if (!response.ok) throw new Refusal(response.status, data.error ?? `${this.host} answered ${response.status}`);
    return data;
  }

  // A write with its token; a refused token may be outdated, so it is renewed once and the write repeated.
  async write(url, options, patience = PATIENCE) {
    if (!this.ready) await this.session();
    try {
      return await this.ask(url, options, patience);
    } catch (error) {
      if (!(error instanceof Refusal) || ![400, 401, 403].includes(error.status)) throw error;
      await this.session();
      return this.ask(url, options, patience);
    }
  }

  // The bytes of a picture of ours, or null where the computer has none.
  async picture(url) {
    const answer = await this.#fetch(url, {}, PATIENCE, (one) => one.arrayBuffer());
    return answer.ok && !answer.redirected && answer.type.startsWith("image/") ? answer.body : null;
  }

  #stranger() {
    return `something else answers in place of ${this.host}, such as a sign-in page of the network`;
  }

  async #fetch(url, options, patience, read) {
    const stop = new AbortController();
    const timer = setTimeout(() => stop.abort(), patience);
    const headers = { ...options.headers, ...(this.#csrf ? { "X-CSRFToken": this.#csrf } : {}), ...(this.#pass ? { Authorization: `Bearer ${this.#pass.token}` } : {}) };
    try {
      const response = await fetch(url, { ...options, headers, signal: stop.signal, cache: "no-store", credentials: "same-origin" });
      const { ok, status, redirected } = response;
      return { ok, status, redirected, type: response.headers.get("Content-Type") ?? "", body: await read(response) };
    } catch {
      throw new Away(`no contact with ${this.host}`);
    } finally {
      clearTimeout(timer);
    }
  }
}

function parsed(text) {
  try {
    const data = JSON.parse(text);
    return data && typeof data === "object" ? data : null;
  } catch {
    return null;
  }
}
