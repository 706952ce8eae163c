// Entries -> state, by the same rule as on the other side: a field's value is its heads, the
// entries that no other entry replaces. A union: neither order, clock nor repetition can change the
// result.

/** @import { Entry } from "../storage/entry_store.js" */

/**
 * @typedef {object} Field
 * @property {Map<string, Entry>} entries by their ids
 * @property {{ counts: string, list: Entry[] }} heads of so many entries and notes
 */

/** @typedef {Map<string, string[]>} Replaces id -> ids of the known entries that it replaces */

/**
 * What computers noted when they took entries in: id -> ids that it names as replaced and that its
 * author cannot have seen.
 *
 * @typedef {Map<string, Set<string>>} Unseen
 */

const NOTE = /^unseen\/(.+)_([0-9]+)$/;

/**
 * By code point as on the other side, never by the device's own language.
 *
 * @param {string} a
 * @param {string} b
 */
function compare(a, b) {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

/**
 * @param {Entry} a
 * @param {Entry} b
 */
function byAge(a, b) {
  return compare(a.at, b.at) || compare(a.id, b.id);
}

/** @param {string} id */
function numberOf(id) {
  return Number(id.slice(id.lastIndexOf(":") + 1));
}

/**
 * The ids of the known entries that an entry can have replaced: none of its device's later ones,
 * and none that its author cannot have seen.
 *
 * @param {Entry} entry
 * @param {Map<string, Entry>} entries
 * @param {Unseen} unseen
 * @returns {string[]}
 */
function replacedBy(entry, entries, unseen) {
  return [...new Set(entry.replaces)].filter((id) => {
    const other = entries.get(id);
    if (!other || unseen.get(entry.id)?.has(id)) return false;
    return other.device !== entry.device || numberOf(id) < numberOf(entry.id);
  });
}

/**
 * Remove, again and again, the entries that no remaining one replaces.
 *
 * @param {Replaces} replaces
 * @returns {Replaces}
 */
function withoutEnds(replaces) {
  const remaining = new Map(replaces);
  /** @type {Map<string, number>} */
  const counts = new Map();
  for (const id of [...replaces.values()].flat()) counts.set(id, (counts.get(id) ?? 0) + 1);
  const ends = [...replaces.keys()].filter((id) => !counts.has(id));
  for (let end = ends.pop(); end !== undefined; end = ends.pop()) {
    const targets = remaining.get(end) ?? [];
    remaining.delete(end);
    for (const id of targets) {
      const count = (counts.get(id) ?? 0) - 1;
      counts.set(id, count);
      if (!count) ends.push(id);
    }
  }
  return remaining;
}

/**
 * Who is replaced by whom, in place of who replaces whom.
 *
 * @param {Replaces} replaces
 * @returns {Replaces}
 */
function turned(replaces) {
  /** @type {Replaces} */
  const result = new Map([...replaces.keys()].map((id) => [id, []]));
  for (const [id, targets] of replaces) {
    for (const target of targets) result.get(target)?.push(id);
  }
  return result;
}

/**
 * The entries that none of the others replaces, oldest first. Where entries replace one another in
 * a circle, somebody forged one: none of them replaces another one of the circle.
 *
 * @param {Map<string, Entry>} entries
 * @param {Unseen} unseen
 * @returns {Entry[]}
 */
function headsOf(entries, unseen) {
  const all = [...entries.values()];
  const replaces = new Map(all.map((entry) => [entry.id, replacedBy(entry, entries, unseen)]));
  const inCircles = withoutEnds(turned(withoutEnds(replaces)));
  /** @type {Set<string>} */
  const replaced = new Set();
  for (const [id, targets] of replaces) {
    for (const target of targets) {
      if (!(inCircles.has(id) && inCircles.has(target))) replaced.add(target);
    }
  }
  return all.filter((entry) => !replaced.has(entry.id)).sort(byAge);
}

/**
 * A value's only spelling, whatever the order of its keys; an empty list is not an empty object.
 *
 * @param {any} value
 * @returns {string}
 */
function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical).join()}]`;
  if (!value || typeof value !== "object") return JSON.stringify(value);
  const keys = Object.keys(value).sort();
  const pairs = keys.map((key) => `${JSON.stringify(key)}:${canonical(value[key])}`);
  return `{${pairs.join()}}`;
}

/**
 * Whether two recorded values are equal.
 *
 * @param {any} a
 * @param {any} b
 * @returns {boolean}
 */
export function same(a, b) {
  return canonical(a) === canonical(b);
}

/** What all entries together say. */
export class State {
  /** @type {Map<string, Map<string, Field>>} */
  #subjects = new Map();
  /** @type {Unseen} */
  #unseen = new Map();
  /** How many claims the notes name. */
  #claims = 0;
  /** How many entries were added: what was counted of them holds while this stays. */
  added = 0;

  /** @param {Entry[]} [entries] */
  constructor(entries = []) {
    for (const entry of entries) this.add(entry);
  }

  /** @param {Entry} entry */
  add(entry) {
    this.added += 1;
    const [, device, number] = entry.field.match(NOTE) ?? [];
    if (entry.subject === "inspection" && device) this.#addNote(`${device}:${number}`, entry.value);
    else this.#fieldFor(entry).entries.set(entry.id, entry);
  }

  /**
   * @param {string} id
   * @param {any} value the ids that it names as replaced and that its author cannot have seen
   */
  #addNote(id, value) {
    const claims = this.#unseen.get(id) ?? new Set();
    const before = claims.size;
    for (const claim of Array.isArray(value) ? value : []) {
      if (typeof claim === "string") claims.add(claim);
    }
    this.#unseen.set(id, claims);
    this.#claims += claims.size - before;
  }

  /**
   * The field that an entry belongs to, made where it is new.
   *
   * @param {Entry} entry
   * @returns {Field}
   */
  #fieldFor(entry) {
    const fields = this.#subjects.get(entry.subject) ?? new Map();
    this.#subjects.set(entry.subject, fields);
    const field = fields.get(entry.field) ?? {
      entries: new Map(),
      heads: { counts: "", list: [] },
    };
    fields.set(entry.field, field);
    return field;
  }

  /**
   * The entries that nobody has replaced, oldest first.
   *
   * @param {string} subject
   * @param {string} field
   * @returns {Entry[]}
   */
  heads(subject, field) {
    const found = this.#subjects.get(subject)?.get(field);
    if (!found) return [];
    // Entries are only ever added, so their count says whether the heads are still these.
    const counts = `${found.entries.size} ${this.#claims}`;
    if (found.heads.counts !== counts) {
      found.heads = { counts, list: headsOf(found.entries, this.#unseen) };
    }
    return [...found.heads.list];
  }

  /**
   * The newest of the heads, as it was recorded; null where there is none.
   *
   * @param {string} subject
   * @param {string} field
   * @returns {any}
   */
  value(subject, field) {
    return this.heads(subject, field).at(-1)?.value ?? null;
  }

  /**
   * Whether heads with different values exist.
   *
   * @param {string} subject
   * @param {string} field
   * @returns {boolean}
   */
  disputed(subject, field) {
    const heads = this.heads(subject, field);
    return heads.some((entry) => !same(entry.value, heads[0].value));
  }

  /**
   * @param {string} subject
   * @returns {string[]} the names of its fields
   */
  fields(subject) {
    const fields = this.#subjects.get(subject);
    return fields ? [...fields.keys()].sort() : [];
  }

  /**
   * Every entry of a subject, newest first.
   *
   * @param {string} subject
   * @returns {Entry[]}
   */
  history(subject) {
    const fields = [...(this.#subjects.get(subject)?.values() ?? [])];
    const entries = fields.flatMap((field) => [...field.entries.values()]);
    return entries.sort(byAge).reverse();
  }

  /** @returns {Entry[]} all of them */
  all() {
    const fields = [...this.#subjects.values()].flatMap((each) => [...each.values()]);
    return fields.flatMap((field) => [...field.entries.values()]);
  }

  /**
   * @param {string} prefix
   * @returns {string[]} every subject that begins so
   */
  subjects(prefix) {
    return [...this.#subjects.keys()].filter((subject) => subject.startsWith(prefix)).sort();
  }
}
