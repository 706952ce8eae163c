// The plan of the walk: which checks there are, on which unit, in which space. Read from the page.

import { NOTICE, signalOf } from "../cards/dangers.js";
import { findAll } from "../page/elements.js";

const PAPER = "paper";

/**
 * A check of a unit.
 *
 * @typedef {object} Item
 * @property {string} subject
 * @property {string} sheet `<system>/<unit>`
 * @property {string} space
 * @property {string} check
 * @property {string} title
 * @property {string} needs the most demanding thing it needs
 * @property {string} asks what the crew must do for it, "" for nothing
 * @property {boolean} glance whether passing by shows something of it
 * @property {string} scan "yes" where it can be read from scans before the visit
 * @property {string} trial in which it is done, "" for none
 * @property {boolean} critical
 * @property {boolean} photo whether one is wanted
 * @property {boolean} optional whether it counts only where it is answered
 * @property {boolean} enclosed whether its space is asked about before anyone goes in
 * @property {string} kind of its unit: units of one kind are alike
 * @property {string[]} also other systems on whose sheets it is named
 * @property {HTMLElement} source its card in the template of its system
 */

/** @typedef {{ name: string, minutes: number, per: string }} Trial */
/** @typedef {{ name: string, of: string }} Sheet a unit's name and its system's */

/** Every check of the inspection. */
export class Plan {
  /** @type {Item[]} */
  items = [];
  /** @type {Map<string, Sheet>} */
  sheets = new Map();
  /** @type {Map<string, string>} id -> name */
  spaces = new Map();
  /** @type {Map<string, Trial>} */
  trials = new Map();
  /** @type {Map<string, HTMLTemplateElement>} */
  #templates = new Map();
  /** @type {Map<string, Item>} */
  #bySubject = new Map();

  /** Read it from the templates and the list of sheets. */
  constructor() {
    for (const template of findAll(document, "template[data-system]", HTMLTemplateElement)) {
      this.#templates.set(template.dataset.system ?? "", template);
    }
    for (const row of findAll(document, "[data-sheet]")) this.#addSheet(row);
    for (const row of findAll(document, "[data-space]")) {
      this.spaces.set(row.dataset.space ?? "", row.dataset.name ?? "");
    }
    for (const part of findAll(document, "template[data-trial-name]")) {
      const { trial = "", trialName: name = "", minutes, per = "" } = part.dataset;
      this.trials.set(trial, { name, minutes: Number(minutes), per });
    }
  }

  /** @param {HTMLElement} row of the list of sheets */
  #addSheet(row) {
    const { sheet = "", name = "", of = "", kind, at, skipped = "" } = row.dataset;
    const elsewhere = skipped.split(" ");
    this.sheets.set(sheet, { name, of });
    const template = this.#templateOf(sheet);
    for (const source of findAll(template.content, "article")) {
      const { check = "", in: where = "", for: kinds } = source.dataset;
      // A unit is asked what its kind is asked.
      if (kind && kinds && !kinds.split(" ").includes(kind)) continue;
      // What is asked once for the vessel is on the sheet of another unit.
      if (elsewhere.includes(check)) continue;
      // What is looked at where the system is at home is looked at where this unit is.
      const space = where === template.dataset.home && at ? at : where;
      const { title = "" } = source.dataset;
      const subject = `sheet/${sheet}/${check}`;
      const own = { subject, sheet, space, check, source, title, kind: kind ?? "" };
      const item = { ...own, ...markedOn(source) };
      this.items.push(item);
      this.#bySubject.set(subject, item);
    }
  }

  /**
   * @param {string} sheet
   * @returns {HTMLTemplateElement} with the checks of the sheet's system
   */
  #templateOf(sheet) {
    const [system] = sheet.split("/");
    const template = this.#templates.get(system);
    if (!template) throw new Error(`This page has no checks of ${system}.`);
    return template;
  }

  /**
   * @param {"sheet" | "space" | "trial" | "scan"} kind
   * @param {string} id
   * @returns {Item[]}
   */
  within(kind, id) {
    return this.items.filter((item) => item[kind] === id);
  }

  /**
   * The run in which a check is read off: alike for all checks of one run.
   *
   * @param {Item} item
   * @returns {{ key: string, minutes: number }} minutes of the run itself; 0 for a check by itself
   */
  runOf({ trial, sheet, subject }) {
    const found = this.trials.get(trial);
    if (!found) return { key: subject, minutes: 0 };
    return { key: found.per === "vessel" ? trial : `${trial} ${sheet}`, minutes: found.minutes };
  }

  /**
   * The checks of other systems that are also named on a sheet.
   *
   * @param {string} sheet
   * @returns {Item[]}
   */
  alsoOn(sheet) {
    const [system] = sheet.split("/");
    return this.items.filter((item) => item.also.includes(system));
  }

  /**
   * A check by its subject; undefined where this page has none of that name.
   *
   * @param {string} subject
   */
  item(subject) {
    return this.#bySubject.get(subject);
  }

  /**
   * @param {string} sheet
   * @returns {string} its system and its unit, in words
   */
  nameOf(sheet) {
    const found = this.sheets.get(sheet);
    return found ? `${found.of} · ${found.name}` : sheet;
  }

  /**
   * Where a photo is filed, in words.
   *
   * @param {string} on
   * @returns {string}
   */
  placeOf(on) {
    if (!on) return "photos without a place";
    const [kind, system, unit] = on.split("/");
    if (kind === "space") return this.spaces.get(system) ?? on;
    const words = [this.nameOf(`${system}/${unit}`), this.item(on)?.title];
    return words.filter(Boolean).join(", ");
  }

  /**
   * The ids of the cautions of every system met in these items, each once. Whoever only reads a
   * paper there meets none of the system's dangers, and is told what is due to papers.
   *
   * @param {Item[]} items
   * @returns {string[]}
   */
  cautions(items) {
    const done = items.filter((item) => item.needs !== PAPER);
    const ids = this.#cautionsOf(done);
    const notices = this.#cautionsOf(items).filter((id) => signalOf(id) === NOTICE);
    return [...new Set([...ids, ...notices])];
  }

  /** @param {Item[]} items */
  #cautionsOf(items) {
    const templates = new Set(items.map((item) => this.#templateOf(item.sheet)));
    return [...templates]
      .flatMap(({ dataset }) => (dataset.cautions ?? "").split(" "))
      .filter(Boolean);
  }
}

/**
 * @param {HTMLElement} source a check's card in its template
 */
function markedOn(source) {
  const { needs = "", asks = "", glance, scan, trial = "" } = source.dataset;
  const { optional, also = "", critical } = source.dataset;
  return {
    needs,
    asks,
    glance: glance !== undefined,
    trial,
    critical: critical !== undefined,
    photo: source.dataset.photoWanted !== undefined,
    enclosed: source.dataset.enclosed !== undefined,
    scan: scan === undefined ? "" : "yes",
    optional: optional !== undefined,
    also: also.split(" ").filter(Boolean),
  };
}
