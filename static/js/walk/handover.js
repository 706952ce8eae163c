// Hands over what waits here and fetches what others recorded. Deletes nothing; an entry leaves the queue only when the
// computer has echoed its id with a fate. "All handed over" is said only when the computer's own count proves it.

import { photo as photoRow, queuedPhotos, refusedPhotos } from "./pictures.js";
import { HANDED } from "./database.js";
import { allEntries, countQueued, isFate, ownCounts, queuedEntries, refusedRows, requeue, setFates } from "./kept.js";
import { handOverPhotos } from "./photo_handover.js";
import { Away, Refusal } from "./talk.js";

const BATCH = 200, FIRST_WAIT = 2_000, LONGEST_WAIT = 30_000;

export class Handover extends EventTarget {
  queued = 0;
  photos = 0;
  since = "";
  refused = [];
  trouble = "";
  out = false;
  proved = false;
  lastContact = null;
  #wait = FIRST_WAIT;
  #timer = 0;
  #running = false;
  #again = false;
  #epoch = "";
  #position = 0;
  #held = {};

  constructor(log, talk) {
    super();
    this.log = log;
    this.talk = talk;
    this.base = `/exchange/${log.inspection}`;
  }

  get host() {
    return this.talk.host;
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
      Object.assign(this, { trouble: "", out: false });
      this.#wait = FIRST_WAIT;
    } catch (error) {
      this.out = error instanceof Refusal && error.status === 401;
      this.trouble = this.out ? "this device is not let in any more; pair it again" : error.message;
      this.#wait = Math.min(this.#wait * 2, LONGEST_WAIT);
    }
    await this.count().catch(() => {});
    this.#running = false;
    this.#timer = setTimeout(() => this.now(), this.#again ? 0 : this.trouble ? this.#wait : LONGEST_WAIT / 2);
  }

  // Something was recorded just now: the strip must not say "all handed over" for even a moment longer.
  added(entries) {
    this.queued += entries.length;
    this.since ||= entries[0]?.at ?? "";
    this.proved = false;
    this.dispatchEvent(new Event("change"));
  }

  async count() {
    const { inspection } = this.log;
    this.queued = await countQueued(inspection);
    this.photos = (await queuedPhotos(inspection)).length;
    if (!this.queued && !this.photos) this.since = "";
    else if (!this.since) this.since = await oldest(inspection);
    const pictures = await Promise.all((await refusedPhotos(inspection)).map((sha) => photoRow(inspection, sha)));
    this.refused = [...(await refusedRows(inspection)), ...pictures.map((row) => ({ sha: row.sha, why: row.why }))];
    this.proved = await this.#isProved();
    this.dispatchEvent(new Event("change"));
  }

  // For every name this browser recorded under, the computer has each number up to the last one given here, without a hole.
  async #isProved() {
    if (this.queued || this.photos || this.refused.length || !this.lastContact) return false;
    const counts = await ownCounts(this.log.inspection);
    return [...counts].every(([device, count]) => (this.#held[device] ?? 0) === count);
  }

  async #handOver() {
    if (!this.talk.ready || !this.lastContact) await this.talk.session();
    await this.#sendEntries();
    await this.#fetchEntries();
    if (await this.#fillHoles()) await this.#sendEntries();
    await handOverPhotos(this.talk, this.log.inspection, this.base, () => this.count());
  }

  async #sendEntries() {
    for (;;) {
      const rows = await queuedEntries(this.log.inspection, BATCH);
      if (!rows.length) return;
      const { device } = rows[0].entry;
      const batch = rows.filter((row) => row.entry.device === device);
      const body = JSON.stringify({ device, entries: batch.map((row) => row.entry) });
      const reply = await this.talk.write(`${this.base}/entries`, { method: "POST", body, headers: { "Content-Type": "application/json" } });
      this.#learn(reply);
      await setFates(this.log.inspection, reply.fates ?? {});
      await this.log.judge(reply.judgements);
      await this.count();
      // A batch of which no fate was told would come round for ever.
      if (!batch.some((row) => isFate(reply.fates?.[row.id]))) throw new Away(`${this.host} did not say what became of the entries`);
    }
  }

  async #fetchEntries() {
    const from = this.#epoch ? `?after=${this.#position}&epoch=${encodeURIComponent(this.#epoch)}` : "";
    const reply = await this.talk.ask(`${this.base}/entries${from}`);
    if (!Array.isArray(reply.entries)) throw new Away(`${this.host} answered something that is no answer`);
    await this.log.takeIn(reply.entries, reply.judgements);
    this.#learn(reply);
    // Another epoch means that everything came: what this device handed over once and is not in it has been lost there.
    if (reply.epoch !== this.#epoch) await this.#sendLost(new Set(reply.entries.map((entry) => entry.id)));
    this.#epoch = reply.epoch;
    this.#position = reply.position;
    const first = !this.lastContact;
    this.lastContact = new Date();
    if (first) this.dispatchEvent(new Event("contact"));
  }

  #learn(reply) {
    // Replaced and not merged: a name that the computer does not count any more is one of which it has nothing.
    if (reply.held) this.#held = reply.held;
  }

  async #sendLost(there) {
    const own = await ownCounts(this.log.inspection);
    const rows = (await allEntries(this.log.inspection)).filter((row) => own.has(row.entry.device) && row.handed === HANDED && !there.has(row.id));
    await requeue(this.log.inspection, rows.map((row) => row.id));
    if (rows.length) await this.#sendEntries();
  }

  // Send again all from the first hole on, the lost end included, of every name used here. Refused ones stay refused.
  async #fillHoles() {
    const refused = new Set(this.refused.map((row) => row.id));
    const ids = [];
    for (const [device, count] of await ownCounts(this.log.inspection)) {
      for (let number = (this.#held[device] ?? 0) + 1; number <= count; number += 1) ids.push(`${device}:${number}`);
    }
    const wanted = ids.filter((id) => !refused.has(id));
    await requeue(this.log.inspection, wanted);
    return wanted.length > 0;
  }
}

async function oldest(inspection) {
  const rows = await queuedEntries(inspection);
  return rows.map((row) => row.entry.at).sort()[0] ?? "";
}
