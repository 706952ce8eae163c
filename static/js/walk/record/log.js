// What this device records: entries are stored first, and only then folded into the state that the
// page shows.

import { readMeta, whenClosed, writeMeta } from "../storage/database.js";
import { addEntries, allEntries, entryRows, storeReceived } from "../storage/entry_store.js";
import { Cleared, Memory } from "../storage/memory.js";
import { deviceId } from "../storage/pass.js";
import { putBackPhotos } from "../storage/photo_memory.js";
import { State, same } from "./fold.js";

/** @import { Draft, Entry } from "../storage/entry_store.js" */

/** @typedef {[subject: string, field: string, value: any]} Change */

/**
 * What a criterion says of a check's readings; `waiting` until they are judged again.
 *
 * @typedef {object} Judgement
 * @property {boolean} [waiting]
 * @property {string} [cannot] why it cannot be judged
 * @property {string} [rating]
 * @property {string} [sentence]
 * @property {string[]} [notes]
 * @property {string} [source]
 * @property {boolean} [here] judged on this device and not by the computer yet
 */

/**
 * @typedef {object} WrittenBack what became of a store that was cleared
 * @property {number} entries of this device that were written again
 * @property {number} photos that were written again
 * @property {number} lost photos that waited and could not be read again
 */

/**
 * Tells of `change` ({subjects, entries}), `recorded` (the entries), `lost` (why nothing was
 * stored) and `cleared` (what was written back).
 */
export class Log extends EventTarget {
  state = new State();
  /** @type {Record<string, Judgement>} */
  judgements = {};
  /** Whether this device judges readings itself, now or in a moment. */
  judgesHere = false;
  who = "";
  device = "";
  /** @type {{ before: Change[], words: string } | null} */
  lastAct = null;
  /** @type {Promise<unknown>} */
  #chain = Promise.resolve();
  /** @type {Entry[]} stored, and not yet proved and folded */
  #inHand = [];
  /** @type {Promise<unknown>} */
  #looking = Promise.resolve();

  /** @param {string} inspection */
  constructor(inspection) {
    super();
    this.inspection = inspection;
    this.memory = new Memory(inspection);
  }

  /** Read what this device keeps of the inspection. */
  async open() {
    this.device = await deviceId();
    this.who = (await readMeta("who")) ?? "";
    this.judgements = (await readMeta(this.#judgementsKey)) ?? {};
    for (const row of await allEntries(this.inspection)) this.state.add(row.entry);
    await this.memory.open();
    whenClosed(() => this.makeSure().catch(() => {})); // looked at again before each hand-over
  }

  /**
   * Make sure that the store still is the one that this page wrote to; where it was cleared, write
   * back what is in memory. One look follows the other.
   *
   * @returns {Promise<void>}
   * @throws {Error} where it cannot be written back
   */
  makeSure() {
    const look = this.#looking.then(async () => {
      if (await this.memory.isCleared()) await this.#writeBack();
    });
    this.#looking = look.catch(() => {});
    return look;
  }

  async #writeBack() {
    const entries = await this.memory.writeBack([...this.state.all(), ...this.#inHand]);
    await this.#keepJudgements();
    const { photos, lost } = await putBackPhotos(this.memory);
    /** @type {WrittenBack} */
    const detail = { entries, photos, lost };
    this.dispatchEvent(new CustomEvent("cleared", { detail }));
  }

  /** @param {string} name who records from now on */
  async setWho(name) {
    this.who = name;
    await writeMeta("who", name);
    this.#announce([]);
  }

  /**
   * Record an act in one transaction. Resolves with its entries once they are stored, and rejects
   * if they are not.
   *
   * Acts follow one another, so that each replaces what the act before it recorded. Instead of the
   * changes a function may be given that makes them: it is called when its turn comes, and sees
   * all that was recorded before.
   *
   * @param {Change[] | (() => Change[])} changes
   * @param {string} words the act in words, for "undo"
   * @param {boolean} [undoable]
   * @returns {Promise<Entry[]>}
   */
  record(changes, words, undoable = true) {
    const act = this.#chain.then(() => this.#record(changes, words, undoable));
    this.#chain = act.catch(() => {});
    return act;
  }

  /**
   * The changes without those that only repeat the value in sight: leaving a field untouched must
   * not settle two answers in it.
   *
   * @param {Change[]} changes
   * @returns {Change[]}
   */
  unlessShown(changes) {
    return changes.filter(([subject, field, value]) => {
      return !same(this.state.value(subject, field), value);
    });
  }

  /**
   * @param {Change[] | (() => Change[])} given
   * @param {string} words
   * @param {boolean} undoable
   * @returns {Promise<Entry[]>}
   */
  async #record(given, words, undoable) {
    const changes = typeof given === "function" ? given() : given;
    const needed = changes.filter((change) => this.#isNews(change));
    if (!needed.length) return [];
    const before = needed.map((change) => this.#valueBefore(change));
    const entries = await this.#store(this.#drafts(needed));
    for (const entry of entries) this.#fold(entry);
    if (entries.some(isReading)) await this.#keepJudgements().catch(() => {});
    this.lastAct = undoable ? { before, words } : null;
    this.#announce(entries);
    this.dispatchEvent(new CustomEvent("recorded", { detail: entries }));
    return entries;
  }

  /**
   * Whether a change says anything that the state does not say already.
   *
   * @param {Change} change
   * @returns {boolean}
   */
  #isNews([subject, field, value]) {
    const heads = this.state.heads(subject, field);
    if (!heads.length) return value !== null;
    return heads.length > 1 || !same(heads[0].value, value);
  }

  /**
   * @param {Change} change
   * @returns {Change} what takes it back
   */
  #valueBefore([subject, field]) {
    return [subject, field, this.state.value(subject, field)];
  }

  /**
   * @param {Change[]} changes
   * @returns {Draft[]}
   */
  #drafts(changes) {
    const at = new Date().toISOString();
    const { device, who } = this;
    return changes.map(([subject, field, value]) => {
      const replaces = this.state.heads(subject, field).map((head) => head.id);
      return { at, device, who, subject, field, value, replaces };
    });
  }

  /**
   * @param {Draft[]} drafts
   * @returns {Promise<Entry[]>}
   */
  async #store(drafts) {
    try {
      const entries = await this.#addEntries(drafts);
      this.#inHand = entries;
      await this.#prove(entries).catch(() => this.#proveAgain(entries));
      return entries;
    } catch (error) {
      this.dispatchEvent(new CustomEvent("lost", { detail: error }));
      throw error;
    } finally {
      this.#inHand = [];
    }
  }

  /**
   * @param {Draft[]} drafts
   * @returns {Promise<Entry[]>}
   */
  async #addEntries(drafts) {
    try {
      return await addEntries(this.memory, this.device, drafts);
    } catch (error) {
      if (!(error instanceof Cleared)) throw error;
      await this.makeSure();
      return addEntries(this.memory, this.device, drafts);
    }
  }

  /**
   * What was written is read back before it is shown as kept: a browser that only pretends to store
   * is found out at once.
   *
   * @param {Entry[]} entries
   */
  async #prove(entries) {
    const ids = entries.map((entry) => entry.id);
    const rows = await entryRows(this.inspection, ids);
    const isKept = rows.every((row, index) => row && same(row.entry, entries[index]));
    if (!isKept) throw new Error("what was written could not be read back");
  }

  /**
   * The store may have been cleared in this very moment: then it is written back, these entries
   * with it, because their numbers are given and may have been handed over.
   *
   * @param {Entry[]} entries
   */
  async #proveAgain(entries) {
    await this.makeSure();
    await this.#prove(entries);
  }

  /** @param {Entry} entry */
  #fold(entry) {
    this.state.add(entry);
    // A changed reading makes the old judgement void until it is judged again.
    if (isReading(entry)) this.judgements[entry.subject] = { waiting: true };
  }

  get #judgementsKey() {
    return `judgements/${this.inspection}`;
  }

  #keepJudgements() {
    return writeMeta(this.#judgementsKey, this.judgements);
  }

  /** Record what takes the last act back. */
  async undo() {
    const act = this.lastAct;
    this.lastAct = null;
    if (act) await this.record(act.before, "", false);
  }

  /**
   * Store and show entries from the other side, with its judgements.
   *
   * @param {Entry[]} entries
   * @param {Record<string, Judgement | null>} [judgements]
   */
  async takeIn(entries, judgements) {
    await storeReceived(this.inspection, entries);
    // A union: what another tab or the computer gave already is added twice without harm.
    for (const entry of entries) this.state.add(entry);
    await this.judge(judgements, entries);
  }

  /**
   * Show what another tab of this device recorded, and has stored already.
   *
   * @param {Entry[]} entries
   */
  addFromOtherTab(entries) {
    for (const entry of entries) this.#fold(entry);
    this.#announce(entries);
  }

  /**
   * Keep and show judgements, the computer's or this device's own.
   *
   * @param {Record<string, Judgement | null>} [judgements] subject -> judgement; null where every
   *   reading was cleared, so that nothing is judged any more
   * @param {Entry[]} [fresh] entries that came with them
   */
  async judge(judgements = {}, fresh = []) {
    const subjects = Object.keys(judgements);
    if (subjects.length) {
      for (const [subject, judgement] of Object.entries(judgements)) {
        if (judgement) this.judgements[subject] = judgement;
        else delete this.judgements[subject];
      }
      await this.#keepJudgements();
    }
    if (subjects.length || fresh.length) this.#announce(fresh, subjects);
  }

  /**
   * @param {Entry[]} entries
   * @param {string[]} [subjects] others that look different now
   */
  #announce(entries, subjects = []) {
    const touched = new Set([...entries.map((entry) => entry.subject), ...subjects]);
    this.dispatchEvent(new CustomEvent("change", { detail: { subjects: touched, entries } }));
  }
}

/**
 * @param {Entry} entry
 * @returns {boolean}
 */
function isReading(entry) {
  return entry.field.startsWith("reading/");
}
