// What this device records: entries are stored first, and only then folded into the state that the page shows.

import * as database from "./database.js";
import { State, same } from "./fold.js";

export class Log extends EventTarget {
  state = new State();
  judgements = {};
  who = "";
  lastAct = null;
  #chain = Promise.resolve();
  #proved = false;

  constructor(inspection) {
    super();
    this.inspection = inspection;
  }

  async open() {
    this.device = await database.deviceId();
    this.who = (await database.meta("who")) ?? "";
    this.judgements = (await database.meta(`judgements/${this.inspection}`)) ?? {};
    for (const row of await database.allEntries(this.inspection)) this.state.add(row.entry);
  }

  async setWho(name) {
    this.who = name;
    await database.setMeta("who", name);
    this.#tell([]);
  }

  // Record an act: [[subject, field, value], ...] in one transaction. Resolves once it is kept; rejects if it is not.
  // Acts follow one another, so that each one replaces what the one before it left standing.
  record(changes, words, undoable = true) {
    const act = this.#chain.then(() => this.#record(changes, words, undoable));
    this.#chain = act.catch(() => {});
    return act;
  }

  async #record(changes, words, undoable) {
    const at = new Date().toISOString();
    const before = [];
    const drafts = [];
    for (const [subject, field, value] of changes) {
      const heads = this.state.heads(subject, field);
      if (!heads.length && value === null) continue;
      if (heads.length === 1 && same(heads[0].value, value)) continue;
      before.push([subject, field, heads.at(-1)?.value ?? null]);
      drafts.push({ at, device: this.device, who: this.who, subject, field, value, replaces: heads.map((head) => head.id) });
    }
    if (!drafts.length) return [];
    const entries = await this.#store(drafts);
    for (const entry of entries) this.#fold(entry);
    if (entries.some((entry) => entry.field.startsWith("reading/"))) await this.#keepJudgements().catch(() => {});
    this.lastAct = undoable ? { before, words } : null;
    this.#tell(entries);
    return entries;
  }

  async #store(drafts) {
    try {
      const entries = await database.addEntries(this.inspection, this.device, drafts);
      if (!this.#proved) await this.#prove(entries[0]);
      return entries;
    } catch (error) {
      this.dispatchEvent(new CustomEvent("lost", { detail: error }));
      throw error;
    }
  }

  // The first record of a session is read back: a browser that only pretends to store is found out at once.
  async #prove(entry) {
    const row = await database.entryRow(this.inspection, entry.id);
    if (!row || !same(row.entry, entry)) throw new Error("what was written could not be read back");
    this.#proved = true;
  }

  #fold(entry) {
    this.state.add(entry);
    // A changed reading makes the old judgement void until the computer has judged again.
    if (entry.field.startsWith("reading/")) this.judgements[entry.subject] = { waiting: true };
  }

  #keepJudgements() {
    return database.setMeta(`judgements/${this.inspection}`, this.judgements);
  }

  async undo() {
    const act = this.lastAct;
    this.lastAct = null;
    if (act) await this.record(act.before, "", false);
  }

  // Entries from the other side, and the judgements that stand there.
  async takeIn(entries, judgements) {
    await database.takeIn(this.inspection, entries);
    // Folding is a union: what another tab of this device stored comes in this way too.
    for (const entry of entries) this.state.add(entry);
    await this.judge(judgements, entries);
  }

  async judge(judgements, fresh = []) {
    const subjects = Object.keys(judgements ?? {});
    if (subjects.length) {
      Object.assign(this.judgements, judgements);
      await this.#keepJudgements();
    }
    if (subjects.length || fresh.length) this.#tell(fresh, subjects);
  }

  #tell(entries, subjects = []) {
    const touched = new Set([...entries.map((entry) => entry.subject), ...subjects]);
    this.dispatchEvent(new CustomEvent("change", { detail: { subjects: touched } }));
  }
}
