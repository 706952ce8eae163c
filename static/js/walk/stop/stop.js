// The rows of a stop: a unit's sheet, a space, a trial, the papers, or what was searched for. They
// stand under headings that fold.

import { Dangers } from "../cards/dangers.js";
import { paintPassed, passedBox } from "../cards/walked_past.js";
import { WholeUnit } from "../cards/whole_unit.js";
import { around, find, findAll, findIfAny, make } from "../page/elements.js";
import { counting, tally } from "../record/summary.js";
import { buildRow } from "../rows/build_row.js";
import { address, subjectsIn } from "../rows/like_units.js";
import { AlsoLines } from "./also_lines.js";
import { OPTIONAL, arrange } from "./arrange.js";
import { DoorPhoto } from "./door_photo.js";

/** @import { Log } from "../record/log.js" */
/** @import { Rows } from "../rows/unfold.js" */
/** @import { Chances } from "../screens/chances.js" */
/** @import { Filters } from "./filters.js" */
/** @import { Group } from "./arrange.js" */
/** @import { Item, Plan } from "../screens/plan.js" */

/**
 * @typedef {object} Parts
 * @property {Log} log
 * @property {Plan} plan
 * @property {Rows} rows
 * @property {Filters} filters
 * @property {Chances | null} chances
 * @property {(subject: string) => void} open goes to a check
 */

/** As many rows of what was searched for as a thumb goes through. */
const MOST_FOUND = 60;
const NOTHING_HERE = "No check of the systems counted on board is done here.";
const NOTHING_ASKED =
  "Write a word, or choose a filter: every check of the vessel is searched, its texts too.";

/** The stop in sight. */
export class Stop {
  /** @type {Item[]} */
  items = [];
  /** @type {Dangers | null} */
  #dangers = null;
  /** @type {AlsoLines | null} */
  #also = null;
  /** @type {DoorPhoto | null} */
  #door = null;
  /** @type {Map<HTMLElement, Item[]>} heading -> what stands below it */
  #headings = new Map();
  kind = "";

  /**
   * @param {HTMLElement} box
   * @param {Parts} parts
   */
  constructor(box, parts) {
    this.box = box;
    this.parts = parts;
    box.addEventListener("click", (event) => {
      const heading = around(event.target, "[data-fold]");
      if (heading) this.#fold(heading, heading.getAttribute("aria-expanded") !== "true");
    });
    parts.filters.addEventListener("change", () => this.#filterAnew());
    // A word may stand in a text that came just now.
    parts.filters.texts.addEventListener("change", () => {
      if (this.kind === "find" && !box.hidden) this.#filterAnew();
    });
  }

  /**
   * Show a stop.
   *
   * @param {string} kind sheet, space, trial, scans or find
   * @param {string} id
   * @param {Item[]} items
   */
  show(kind, id, items) {
    const { log, plan, filters, open } = this.parts;
    this.kind = kind;
    this.items = items;
    this.#also = new AlsoLines(log, plan, kind === "sheet" ? id : "", open);
    const stop = kind === "sheet" ? id.split("/")[0] : id || kind;
    this.#dangers = new Dangers(log, kind === "find" ? [] : plan.cautions(items), stop);
    this.#door = kind === "space" ? new DoorPhoto(log, id) : null;
    const head = kind === "find" ? [filters.search] : this.#head(kind, id);
    const rows = make("div", "", { className: "rows" });
    this.box.replaceChildren(...head, filters.box, filters.count, rows, ...this.#also.rows);
    this.#build();
  }

  /**
   * @param {string} kind
   * @param {string} id
   * @returns {HTMLElement[]}
   */
  #head(kind, id) {
    const { log, plan } = this.parts;
    const head = [];
    if (this.#dangers?.box) head.push(this.#dangers.box);
    if (this.#door) head.push(this.#door.box);
    const sheets = [...new Set(this.items.map((item) => item.sheet))];
    const passed = sheets.map((sheet) => passedBox(sheet, plan.nameOf(sheet)));
    if (kind === "sheet") head.push(...passed, new WholeUnit(log, plan, id).box);
    else if (passed.length) head.push(folded(`walked past only: ${passed.length} units`, passed));
    return head;
  }

  #build() {
    const { plan } = this.parts;
    const groups = arrange(plan, this.kind === "sheet", this.items);
    this.#headings.clear();
    const sections = groups.map((group) => this.#section(group));
    const words = this.kind === "find" ? NOTHING_ASKED : NOTHING_HERE;
    const content = sections.length ? sections : [make("p", words, { className: "empty" })];
    find(this.box, ".rows").replaceChildren(...content);
    this.#filter();
  }

  /** @param {Group} group */
  #section({ key, name, rows }) {
    const section = make("section");
    const heading = make("button", "", { type: "button" });
    heading.dataset.fold = key;
    heading.append(make("span", name), make("small"));
    this.#headings.set(heading, rows.flat());
    const title = make("h2");
    title.append(heading);
    const list = make("div");
    list.append(...rows.map((items) => buildRow(items, this.parts.plan, this.#nameOn(key, items))));
    section.append(title, list);
    setFolded(heading, list, key === OPTIONAL);
    return section;
  }

  /**
   * What a row names beside its title: the heading says the rest.
   *
   * @param {string} key of its group
   * @param {Item[]} items
   * @returns {string}
   */
  #nameOn(key, [{ sheet, space }]) {
    const { plan } = this.parts;
    const isOptional = key === OPTIONAL;
    if (this.kind === "sheet") return isOptional ? (plan.spaces.get(space) ?? "") : "";
    return isOptional ? plan.nameOf(sheet) : (plan.sheets.get(sheet)?.name ?? "");
  }

  /**
   * @param {HTMLElement} heading
   * @param {boolean} isOpen
   */
  #fold(heading, isOpen) {
    setFolded(heading, find(around(heading, "section") ?? this.box, "h2 + div"), !isOpen);
    // Folded while it stuck below the header, it would be out of sight.
    if (!isOpen) heading.scrollIntoView({ block: "nearest" });
  }

  /** @returns {HTMLElement[]} */
  rows() {
    return findAll(this.box, "article.check");
  }

  /**
   * The row of a check, brought into sight whatever was folded or left out.
   *
   * @param {Item} item
   * @returns {HTMLElement}
   */
  reveal(item) {
    const row = find(this.box, `[data-subjects~="${item.subject}"]`);
    if (subjectsIn(row).length > 1) {
      address(row, item.subject);
      this.parts.rows.rebuild(row);
      this.paintRow(row);
    }
    row.hidden = false;
    const section = around(row, "section");
    if (section) {
      section.hidden = false;
      this.#fold(find(section, "[data-fold]"), true);
    }
    return row;
  }

  /** Show what is left by the filters now; an answer given later leaves its row where it is. */
  #filter() {
    const { filters, plan } = this.parts;
    const rows = this.rows();
    for (const row of rows) {
      const items = subjectsIn(row).map((subject) => plan.item(subject));
      row.hidden = !items.some((item) => item && filters.shows(item));
    }
    for (const section of findAll(this.box, ".rows section")) {
      section.hidden = !findIfAny(section, "article:not([hidden])");
      // What was asked for is shown, optional or not.
      if (filters.any) this.#fold(find(section, "[data-fold]"), true);
    }
    this.#count(rows.length);
  }

  /** @param {number} total */
  #count(total) {
    const { filters } = this.parts;
    const shown = this.rows().filter((row) => !row.hidden).length;
    const isFind = this.kind === "find";
    filters.count.hidden = isFind ? !filters.asks : !filters.any;
    filters.count.textContent = `${shown} of ${total} rows shown`;
    if (!isFind) return;
    const isCut = filters.found().length > this.items.length;
    filters.count.textContent = isCut
      ? `the first ${shown} rows; write more of the word`
      : `${shown} ${shown === 1 ? "row" : "rows"} found`;
  }

  #filterAnew() {
    if (this.kind === "find") {
      this.items = firstRows(this.parts.filters.found());
      this.#build();
    } else {
      this.#filter();
    }
    this.paint();
  }

  /** Paint all that is in sight. */
  paint() {
    this.paintAround();
    for (const row of this.rows()) this.paintRow(row);
  }

  /** @param {HTMLElement} row */
  paintRow(row) {
    this.parts.rows.paint(row);
    this.parts.chances?.mark(row);
  }

  /** Paint what stands around the rows. */
  paintAround() {
    const { log } = this.parts;
    this.#also?.paint();
    this.#dangers?.paint();
    this.#door?.paint();
    paintPassed(log, this.box);
    for (const [heading, items] of this.#headings) {
      const { seen, of } = tally(log, counting(log, items));
      find(heading, "small").textContent = of ? `${seen} of ${of}` : "";
    }
  }
}

/**
 * @param {Item[]} items
 * @returns {Item[]} as many as stand in the most rows that are shown
 */
export function firstRows(items) {
  const rows = new Set();
  return items.filter(({ sheet, check }) => {
    const row = `${sheet.split("/")[0]} ${check}`;
    if (rows.size < MOST_FOUND) rows.add(row);
    return rows.has(row);
  });
}

/**
 * @param {HTMLElement} heading
 * @param {HTMLElement} list
 * @param {boolean} isFolded
 */
function setFolded(heading, list, isFolded) {
  heading.setAttribute("aria-expanded", String(!isFolded));
  list.hidden = isFolded;
}

/**
 * @param {string} words
 * @param {HTMLElement[]} content
 */
function folded(words, content) {
  const box = make("details", "", { className: "folded" });
  box.append(make("summary", words), ...content);
  return box;
}
