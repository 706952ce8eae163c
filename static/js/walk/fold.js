// Entries -> state, by the same rule as on the other side: a field's value is its heads, the entries that no other entry
// replaces. A union: neither order, clock nor repetition can change what it yields.

// By code point as on the other side, never by the device's own language.
const compare = (a, b) => (a < b ? -1 : a > b ? 1 : 0);
const byAge = (a, b) => compare(a.at, b.at) || compare(a.id, b.id);
const same = (a, b) => canonical(a) === canonical(b);

// One spelling of a value, whatever the order of its keys; an empty list is not an empty object.
function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical).join()}]`;
  if (value && typeof value === "object") return `{${Object.keys(value).sort().map((key) => `${JSON.stringify(key)}:${canonical(value[key])}`).join()}}`;
  return JSON.stringify(value);
}

export class State {
  #subjects = new Map();

  constructor(entries = []) {
    for (const entry of entries) this.add(entry);
  }

  add(entry) {
    if (!this.#subjects.has(entry.subject)) this.#subjects.set(entry.subject, new Map());
    const fields = this.#subjects.get(entry.subject);
    if (!fields.has(entry.field)) fields.set(entry.field, { entries: new Map(), replaced: new Set() });
    const field = fields.get(entry.field);
    field.entries.set(entry.id, entry);
    for (const id of entry.replaces) field.replaced.add(id);
  }

  #field(subject, field) {
    return this.#subjects.get(subject)?.get(field);
  }

  // What nobody has replaced, oldest first.
  heads(subject, field) {
    const found = this.#field(subject, field);
    if (!found) return [];
    const heads = [...found.entries.values()].filter((entry) => !found.replaced.has(entry.id));
    // Honest devices cannot replace in a circle; if a forged set does, every entry is shown rather than none.
    return (heads.length ? heads : [...found.entries.values()]).sort(byAge);
  }

  value(subject, field) {
    return this.heads(subject, field).at(-1)?.value ?? null;
  }

  disputed(subject, field) {
    const heads = this.heads(subject, field);
    return heads.some((entry) => !same(entry.value, heads[0].value));
  }

  fields(subject) {
    return [...(this.#subjects.get(subject)?.keys() ?? [])].sort();
  }

  // Every entry of a subject, newest first.
  history(subject) {
    const fields = [...(this.#subjects.get(subject)?.values() ?? [])];
    return fields.flatMap((field) => [...field.entries.values()]).sort(byAge).reverse();
  }

  subjects(prefix) {
    return [...this.#subjects.keys()].filter((subject) => subject.startsWith(prefix)).sort();
  }
}

export { same };
