// Hands over what waits here and fetches what others recorded. Deletes nothing; an entry leaves the queue only when the
// computer has echoed its id with a fate. Photos follow once the entries are over.

import * as database from "./database.js";

const BATCH = 200, FIRST_WAIT = 2_000, LONGEST_WAIT = 30_000, PATIENCE = 20_000, PHOTO_PATIENCE = 120_000;

class Refusal extends Error {
  constructor(status, sentence) {
    super(sentence);
    this.status = status;
  }
}

export class Handover extends EventTarget {
  queued = 0;
  photos = 0;
  refused = [];
  trouble = "";
  #wait = FIRST_WAIT;
  #timer = 0;
  #running = false;
  #again = false;
  #token = "";
  #epoch = "";
  #position = 0;

  constructor(log, host) {
    super();
    this.log = log;
    this.host = host;
    this.base = `/exchange/${log.inspection}`;
  }

  // Begin, or begin again at once because something new waits.
  async now() {
    clearTimeout(this.#timer);
    if (this.#running) {
      this.#again = true;
      return;
    }
    this.#running = true;
    this.#again = false;
    try {
      await this.count();
      await this.#handOver();
      this.trouble = "";
      this.#wait = FIRST_WAIT;
    } catch (error) {
      this.trouble = error instanceof Refusal ? error.message : `no contact with ${this.host}`;
      this.#wait = Math.min(this.#wait * 2, LONGEST_WAIT);
    }
    await this.count().catch(() => {});
    this.#running = false;
    this.#timer = setTimeout(() => this.now(), this.#again ? 0 : this.trouble ? this.#wait : LONGEST_WAIT / 2);
  }

  async count() {
    const { inspection } = this.log;
    this.queued = await database.countQueued(inspection);
    this.photos = await database.countQueued(inspection, "photos");
    const rows = await database.refusedRows(inspection);
    const pictures = await Promise.all((await database.refusedPhotoKeys(inspection)).map(([, sha]) => database.photo(inspection, sha)));
    this.refused = [...rows, ...pictures].map((row) => row.why);
    this.dispatchEvent(new Event("change"));
  }

  async #handOver() {
    if (!this.#token) await this.#session();
    await this.#sendEntries();
    await this.#fetchEntries();
    await this.#sendPhotos();
  }

  async #session() {
    const session = await this.#ask("/session", {}, PATIENCE);
    this.#token = session.csrf;
    this.host = session.host || this.host;
  }

  async #sendEntries() {
    for (;;) {
      const rows = await database.queuedEntries(this.log.inspection, BATCH);
      if (!rows.length) return;
      const body = JSON.stringify({ entries: rows.map((row) => row.entry) });
      const reply = await this.#write(`${this.base}/entries`, { method: "POST", body, headers: { "Content-Type": "application/json" } });
      await database.setFates(this.log.inspection, reply.fates ?? {});
      await this.log.judge(reply.judgements);
      await this.count();
      // A batch of which nothing was echoed would come round for ever.
      if (!rows.some((row) => reply.fates?.[row.id])) throw new Refusal(0, `${this.host} did not say what became of the entries`);
    }
  }

  async #fetchEntries() {
    const from = this.#epoch ? `?after=${this.#position}&epoch=${encodeURIComponent(this.#epoch)}` : "";
    const reply = await this.#ask(`${this.base}/entries${from}`, {}, PATIENCE);
    await this.log.takeIn(reply.entries, reply.judgements);
    this.#epoch = reply.epoch;
    this.#position = reply.position;
  }

  async #sendPhotos() {
    const { inspection } = this.log;
    for (const [, sha] of await database.queuedPhotoKeys(inspection)) {
      const row = await database.photo(inspection, sha);
      try {
        const headers = { "Content-Type": "application/octet-stream" };
        const reply = await this.#write(`${this.base}/photo/${sha}`, { method: "PUT", body: row.bytes, headers }, PHOTO_PATIENCE);
        if (reply.sha !== sha) throw new Refusal(0, `${this.host} answered for another photo`);
        await database.setPhotoFate(inspection, sha);
      } catch (error) {
        // Only a verdict on this very photo takes it out of the queue; it stays on this device, with the sentence.
        if (!(error instanceof Refusal) || ![400, 413, 415, 422].includes(error.status)) throw error;
        await database.setPhotoFate(inspection, sha, error.message);
      }
      await this.count();
    }
  }

  // A write with the token; a 400 may mean an outdated token, so it is renewed once and the write repeated.
  async #write(url, options, patience = PATIENCE) {
    const send = () => this.#ask(url, { ...options, headers: { ...options.headers, "X-CSRFToken": this.#token } }, patience);
    try {
      return await send();
    } catch (error) {
      if (!(error instanceof Refusal) || error.status !== 400) throw error;
      await this.#session();
      return send();
    }
  }

  async #ask(url, options, patience) {
    const stop = new AbortController();
    const timer = setTimeout(() => stop.abort(), patience);
    try {
      const response = await fetch(url, { ...options, signal: stop.signal, cache: "no-store", credentials: "same-origin" });
      const text = await response.text();
      const data = parsed(text);
      if (!response.ok) throw new Refusal(response.status, data?.error ?? `${this.host} answered ${response.status}`);
      if (!data) throw new Refusal(0, `${this.host} answered something that is no answer`);
      return data;
    } finally {
      clearTimeout(timer);
    }
  }
}

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
