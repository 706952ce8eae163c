// What this device records: entries are stored first, and only then folded into the state that the page shows.

import { meta, setMeta } from "./database.js";
import { State, same } from "./fold.js";
import { addEntries, allEntries, entryRows, takeIn } from "./kept.js";
import { deviceId } from "./pass.js";

export class Log extends EventTarget {
  state = new State();
  judgements = {};
  who = "";
  lastAct = null;
  #chain = Promise.resolve();

  constructor(inspection) {
    super();
    this.inspection = inspection;
  }

  async open() {
    this.device = await deviceId();
    this.who = (await meta("who")) ?? "";
    this.judgements = (await meta(`judgements/${this.inspection}`)) ?? {};
    for (const row of await allEntries(this.inspection)) this.state.add(row.entry);
  }

  async setWho(name) {
    this.who = name;
    await setMeta("who", name);
    this.#tell([]);
  }

  // Record an act: [[subject, field, value], ...] in one transaction. Resolves once it is kept; rejects if it is not.
  // Acts follow one another, so that each one replaces what the one before it left standing. Instead of changes it may be
  // given what makes them: that is asked when its turn comes, and sees all that was recorded before.
  record(changes, words, undoable = true) {
    const act = this.#chain.then(() => this.#record(changes, words, undoable));
    this.#chain = act.catch(() => {});
    return act;
  }

  // Without what only repeats the value in sight: leaving a field untouched must not settle two answers that stand in it.
  unlessShown(changes) {
    return changes.filter(([subject, field, value]) => !same(this.state.value(subject, field), value));
  }

  async #record(given, words, undoable) {
    const changes = typeof given === "function" ? given() : given;
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
    this.dispatchEvent(new CustomEvent("recorded", { detail: entries }));
    return entries;
  }

  async #store(drafts) {
    try {
      const entries = await addEntries(this.inspection, this.device, drafts);
      await this.#prove(entries);
      return entries;
    } catch (error) {
      this.dispatchEvent(new CustomEvent("lost", { detail: error }));
      throw error;
    }
  }

  // What was written is read back before it is shown as kept: a browser that only pretends to store is found out at once.
  async #prove(entries) {
    const rows = await entryRows(this.inspection, entries.map((entry) => entry.id));
    if (!rows.every((row, index) => row && same(row.entry, entries[index]))) throw new Error("what was written could not be read back");
  }

  #fold(entry) {
    this.state.add(entry);
    // A changed reading makes the old judgement void until the computer has judged again.
    if (entry.field.startsWith("reading/")) this.judgements[entry.subject] = { waiting: true };
  }

  #keepJudgements() {
    return setMeta(`judgements/${this.inspection}`, this.judgements);
  }

  async undo() {
    const act = this.lastAct;
    this.lastAct = null;
    if (act) await this.record(act.before, "", false);
  }

  // Entries from the other side, and the judgements that stand there.
  async takeIn(entries, judgements) {
    await takeIn(this.inspection, entries);
    this.see(entries);
    await this.judge(judgements, entries);
  }

  // Entries that lie in the store already, because another tab of this device or the computer gave them. A union: twice is once.
  see(entries) {
    for (const entry of entries) this.state.add(entry);
  }

  // Another tab of this device recorded something.
  hear(entries) {
    for (const entry of entries) this.#fold(entry);
    this.#tell(entries);
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
