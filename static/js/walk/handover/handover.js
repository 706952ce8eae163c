// Hands over what waits here and fetches what others recorded. Deletes nothing; an entry leaves the
// queue only when the computer has echoed its id with an outcome. "All handed over" is shown only
// when the computer's own count proves it.

import {
  handedEntries,
  isOutcome,
  markOutcomes,
  ownCounts,
  queuedEntries,
  refusedEntries,
  requeueEntries,
} from "../storage/entry_store.js";
import { proofOf } from "../storage/pass.js";
import { queuedPhotos, readPhoto, refusedPhotos } from "../storage/photo_store.js";
import { PhotoHandover } from "./photo_handover.js";
import { Away } from "./problems.js";
import { Trouble } from "./trouble.js";

/** @import { Judgement, Log } from "../record/log.js" */
/** @import { Entry, EntryRow } from "../storage/entry_store.js" */
/** @import { PhotoRow } from "../storage/photo_store.js" */
/** @import { Connection } from "./connection.js" */

/**
 * The computer's answer to entries handed over or asked for.
 *
 * @typedef {object} Reply
 * @property {Record<string, unknown>} [fates] the outcome of each entry, by its id
 * @property {Record<string, number>} [held] per device, how far its entries are there without a
 *   hole
 * @property {Record<string, Judgement | null>} [judgements] by their subjects
 * @property {Entry[]} [entries]
 * @property {string} [epoch] changes when the computer's journal was replaced
 * @property {number} [position] how much of that journal was read
 */

const BATCH = 200;
const FIRST_WAIT_MS = 2_000;
const LONGEST_WAIT_MS = 30_000;
const USUAL_WAIT_MS = LONGEST_WAIT_MS / 2;
/** How long the computer's clock, edition and token are believed before they are asked again. */
const SESSION_LIFE_MS = 60_000;

/**
 * Tells of `change`, of `rested` after each attempt, and once of `contact` when the computer has
 * answered for the first time.
 */
export class Handover extends EventTarget {
  /** How many entries wait. */
  queued = 0;
  /** How many of them somebody gave with a tap: the depth of an answer comes beside it. */
  answers = 0;
  photos = 0;
  /** @type {string} when the oldest entry that waits was recorded, or "" */
  since = "";
  /** @type {(EntryRow | PhotoRow)[]} */
  refused = [];
  /** Whether something is being handed over just now, and the computer answers. */
  active = false;
  proved = false;
  /** @type {Date | null} */
  lastContact = null;
  #wait = FIRST_WAIT_MS;
  #timer = 0;
  #running = false;
  #again = false;
  #trouble = new Trouble();
  #epoch = "";
  #position = 0;
  /** @type {Record<string, number>} */
  #countsThere = {};

  /**
   * @param {Log} log
   * @param {Connection} connection
   */
  constructor(log, connection) {
    super();
    this.log = log;
    this.connection = connection;
    this.base = `/exchange/${log.inspection}`;
    this.photoHandover = new PhotoHandover(connection, log.inspection, this.base);
    connection.addEventListener("answer", (event) => {
      this.#answered(/** @type {CustomEvent<{ request: string }>} */ (event).detail.request);
    });
  }

  /** What keeps things from being handed over, or "". */
  get trouble() {
    return this.#trouble.words;
  }

  /** Whether the computer answered last, be it with a refusal. */
  get answersUs() {
    return this.lastContact !== null && !(this.trouble && this.#trouble.silent);
  }

  get host() {
    return this.connection.host;
  }

  get waits() {
    return this.queued + this.photos > 0;
  }

  /** Begin, or begin again at once because something new waits. */
  async now() {
    clearTimeout(this.#timer);
    if (this.#running) {
      this.#again = true;
      return;
    }
    this.#running = true;
    this.#again = false;
    await this.#attempt();
    this.active = false;
    await this.count().catch(() => {});
    this.#running = false;
    this.dispatchEvent(new Event("rested"));
    this.#timer = setTimeout(() => this.now(), this.#pause());
  }

  /** The same, and wait until an attempt that begins after this has ended. */
  async nowToTheEnd() {
    const ended = () =>
      new Promise((done) => this.addEventListener("rested", done, { once: true }));
    // What runs just now may have passed by what was recorded last.
    if (this.#running) await ended();
    const end = ended();
    this.now();
    await end;
  }

  async #attempt() {
    try {
      await this.count();
      await this.#handOver();
      this.#trouble.end();
      this.#wait = FIRST_WAIT_MS;
    } catch (error) {
      this.#trouble.met(error, this.host);
      this.#wait = Math.min(this.#wait * 2, LONGEST_WAIT_MS);
    }
  }

  /** @param {string} request */
  #answered(request) {
    const begins = this.#running && !this.active;
    this.active = this.#running;
    if (this.#trouble.endedBy(request) || begins) this.dispatchEvent(new Event("change"));
  }

  #pause() {
    if (this.#again) return 0;
    return this.trouble ? this.#wait : USUAL_WAIT_MS;
  }

  /**
   * Something was recorded just now: the strip must not say "all handed over" for even a moment
   * longer.
   *
   * @param {Entry[]} entries
   */
  added(entries) {
    this.queued += entries.length;
    this.answers += answersIn(entries);
    this.since ||= entries[0]?.at ?? "";
    this.proved = false;
    this.dispatchEvent(new Event("change"));
  }

  /** Count what waits and what was refused. */
  async count() {
    const { inspection, memory } = this.log;
    await this.log.makeSure();
    const waiting = (await queuedEntries(inspection)).map((row) => row.entry);
    this.queued = waiting.length;
    this.answers = answersIn(waiting);
    const photos = await queuedPhotos(inspection);
    this.photos = photos.length;
    memory.expectPhotos(photos);
    if (!this.waits) this.since = "";
    else if (!this.since) this.since = waiting.map((entry) => entry.at).sort()[0] ?? "";
    this.refused = [...(await refusedEntries(inspection)), ...(await refusedPhotoRows(inspection))];
    this.proved = await this.#isProved();
    this.dispatchEvent(new Event("change"));
  }

  /**
   * For every name this browser recorded under, the computer has each number up to the last number
   * given here, without a hole.
   */
  async #isProved() {
    if (this.waits || this.refused.length || !this.lastContact) return false;
    const counts = [...(await ownCounts(this.log.inspection))];
    return counts.every(([device, count]) => this.#countThere(device) === count);
  }

  /** @param {string} device */
  #countThere(device) {
    return this.#countsThere[device] ?? 0;
  }

  async #handOver() {
    if (this.#sessionIsStale()) await this.connection.openSession();
    await this.#sendEntries();
    await this.#fetchEntries();
    if (await this.#fillHoles()) await this.#sendEntries();
    await this.photoHandover.run(() => this.count());
  }

  /** After a trouble everything is asked anew: token, clock and edition may be others now. */
  #sessionIsStale() {
    const { ready, openedAt } = this.connection;
    const age = Date.now() - openedAt;
    if (!ready || !this.lastContact || this.trouble) return true;
    // A clock that was set back makes it stale too.
    return age < 0 || age > SESSION_LIFE_MS;
  }

  async #sendEntries() {
    for (;;) {
      const rows = await queuedEntries(this.log.inspection, BATCH);
      if (!rows.length) return;
      // A batch is of one device only; a browser has two names once it is paired.
      const { device } = rows[0].entry;
      await this.#sendBatch(
        device,
        rows.map((row) => row.entry).filter((entry) => entry.device === device),
      );
    }
  }

  /**
   * @param {string} device
   * @param {Entry[]} entries
   */
  async #sendBatch(device, entries) {
    const body = JSON.stringify({ device, entries, proof: await proofOf(device) });
    const headers = { "Content-Type": "application/json" };
    /** @type {Reply} */
    const reply = await this.connection.write(`${this.base}/entries`, {
      method: "POST",
      body,
      headers,
    });
    this.#learn(reply);
    const outcomes = reply.fates ?? {};
    await markOutcomes(this.log.inspection, outcomes);
    await this.log.judge(reply.judgements);
    await this.count();
    // A batch without any outcome would come round for ever.
    if (!entries.some((entry) => isOutcome(outcomes[entry.id]))) {
      throw new Away(`${this.host} did not say what became of the entries`);
    }
  }

  async #fetchEntries() {
    const reply = await this.#askForEntries();
    await this.log.takeIn(reply.entries, reply.judgements);
    this.#learn(reply);
    // Another epoch means that everything came: what this device handed over once and is not in it
    // has been lost there.
    if (reply.epoch !== this.#epoch) {
      await this.#sendLost(new Set(reply.entries.map((entry) => entry.id)));
    }
    this.#epoch = reply.epoch ?? "";
    this.#position = reply.position ?? 0;
    const isFirst = !this.lastContact;
    this.lastContact = new Date();
    if (isFirst) this.dispatchEvent(new Event("contact"));
  }

  /** @returns {Promise<Reply & { entries: Entry[] }>} */
  async #askForEntries() {
    const epoch = encodeURIComponent(this.#epoch);
    const from = this.#epoch ? `?after=${this.#position}&epoch=${epoch}` : "";
    const reply = await this.connection.ask(`${this.base}/entries${from}`);
    if (Array.isArray(reply.entries)) return reply;
    throw new Away(`${this.host} answered something that is no answer`);
  }

  /** @param {Reply} reply */
  #learn(reply) {
    // Replaced and not merged: of a name that the computer does not count any more it has nothing.
    if (reply.held) this.#countsThere = reply.held;
  }

  /**
   * Send again what this device handed over and the computer does not have any more.
   *
   * @param {Set<string>} idsThere
   */
  async #sendLost(idsThere) {
    const { inspection } = this.log;
    const own = await ownCounts(inspection);
    const handed = await handedEntries(inspection);
    const lost = handed.filter((row) => own.has(row.entry.device) && !idsThere.has(row.id));
    const ids = lost.map((row) => row.id);
    await requeueEntries(inspection, ids);
    if (ids.length) await this.#sendEntries();
  }

  /**
   * Let all entries from the first hole on wait again, the lost end included, of every name used
   * here. Refused entries stay refused.
   *
   * @returns {Promise<boolean>} whether there was a hole
   */
  async #fillHoles() {
    const refused = new Set(this.refused.map((row) => ("id" in row ? row.id : "")));
    const ids = [];
    for (const [device, count] of await ownCounts(this.log.inspection)) {
      const first = this.#countThere(device) + 1;
      for (let number = first; number <= count; number += 1) ids.push(`${device}:${number}`);
    }
    const missing = ids.filter((id) => !refused.has(id));
    await requeueEntries(this.log.inspection, missing);
    return missing.length > 0;
  }
}

/**
 * @param {Entry[]} entries
 * @returns {number} without the depths that are recorded beside answers
 */
function answersIn(entries) {
  return entries.filter((entry) => entry.field !== "depth").length;
}

/**
 * @param {string} inspection
 * @returns {Promise<PhotoRow[]>}
 */
async function refusedPhotoRows(inspection) {
  const digests = await refusedPhotos(inspection);
  const rows = await Promise.all(digests.map((sha) => readPhoto(inspection, sha)));
  return rows.filter((row) => row !== undefined);
}
