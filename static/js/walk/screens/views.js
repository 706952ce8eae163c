// The views over the plan, named in the address: the list of sheets, the cards of a sheet or a
// space, the photos without a place, the findings, and those that paint themselves.

import { around, byId, find, findIfAny, make } from "../page/elements.js";
import { paintPhotoStrip } from "../photos/thumbnails.js";
import { answerOf, counting, findingsOf, photosOn } from "../record/summary.js";
import { subjectsIn } from "../rows/like_units.js";
import { inOrder } from "../stop/arrange.js";
import { Chances } from "./chances.js";
import { paintHeader } from "./header.js";
import { paintSheetList } from "./sheet_list.js";
import { Stop, firstRows } from "../stop/stop.js";
import { Round } from "../visit/round.js";

/** @import { Log } from "../record/log.js" */
/** @import { FollowedRound } from "../python/followed_round.js" */
/** @import { Rows } from "../rows/unfold.js" */
/** @import { Filters } from "../stop/filters.js" */
/** @import { Item, Plan } from "./plan.js" */

/**
 * A view that paints itself.
 *
 * @typedef {object} Screen
 * @property {string} where what the header calls it
 * @property {(box: HTMLElement) => unknown} paint
 */

// A row of which less is in sight, below the header and a heading, is one that was passed already.
const LEAST_IN_SIGHT = 80;
/** @type {Record<string, string>} */
const TITLES = {
  scans: "before the visit, from the papers",
  sheets: "the whole vessel",
  tray: "photos without a place",
  find: "find a check by word",
};

/** Shows a view at a time. */
export class Views {
  kind = "sheets";
  id = "";
  /** @type {"sheet" | "space"} the order in which one walks */
  order = "sheet";

  /**
   * @param {Log} log
   * @param {Plan} plan
   * @param {string} title of the inspection
   * @param {Record<string, Screen>} screens by the name of their box
   * @param {{ rows: Rows, filters: Filters, followed: FollowedRound }} parts of a stop
   */
  constructor(log, plan, title, screens, { rows, filters, followed }) {
    this.log = log;
    this.plan = plan;
    this.title = title;
    this.screens = screens;
    const names = ["sheets", "cards", "tray", ...Object.keys(screens)];
    /** @type {Record<string, HTMLElement>} */
    this.boxes = Object.fromEntries(names.map((name) => [name, byId(name)]));
    this.filters = filters;
    this.chances = findIfAny(document, "#chances") && new Chances(log, plan);
    const open = (/** @type {string} */ subject) => this.open(subject);
    const parts = { log, plan, rows, filters, chances: this.chances, open };
    this.stop = new Stop(this.boxes.cards, parts);
    // What was found by another word has another count.
    filters.addEventListener("change", () => this.#paintHeader());
    this.round = new Round(log, plan, followed);
    addEventListener("hashchange", () => this.show());
  }

  /**
   * Show what the address names: #sheets, #sheet/<system>/<unit>, where wanted with a check behind
   * it, #space/<id>, #trial/<id>, #scans, #find, or a screen.
   */
  show() {
    const before = { kind: this.kind, id: this.id };
    const [kind, ...rest] = decodeURIComponent(location.hash.slice(1)).split("/");
    this.id = rest.slice(0, kind === "sheet" ? 2 : 1).join("/");
    const isSheet = kind === "sheet" && this.plan.sheets.has(this.id);
    const isSpace = kind === "space" && this.plan.spaces.has(this.id);
    const isTrial = kind === "trial" && this.plan.trials.has(this.id);
    const showsCards = isSheet || isSpace || isTrial || kind === "scans" || kind === "find";
    this.kind = showsCards || kind === "tray" || kind in this.screens ? kind : "sheets";
    const shown = showsCards ? "cards" : this.kind;
    for (const [name, box] of Object.entries(this.boxes)) box.hidden = name !== shown;
    if (showsCards) {
      if (isSheet || isSpace) this.order = isSheet ? "sheet" : "space";
      this.stop.show(kind, this.id, this.#itemsInSight());
    }
    this.paint();
    scrollTo(0, 0);
    if (this.kind === "sheets") showRowOf(before.kind, before.id);
    if (kind === "find") this.filters.focus();
    const item = isSheet && rest[2] ? this.plan.item(`sheet/${this.id}/${rest[2]}`) : undefined;
    if (item) this.#bringInSight(item);
  }

  /** Paint a view that does so itself anew, where it is in sight. */
  paintScreen() {
    this.screens[this.kind]?.paint(this.boxes[this.kind]);
  }

  /** @returns {Item[]} */
  #itemsInSight() {
    if (this.kind === "scans") return this.plan.within("scan", "yes");
    if (this.kind === "find") return firstRows(this.filters.found());
    const { kind } = this;
    if (kind !== "sheet" && kind !== "space" && kind !== "trial") return this.plan.items;
    return this.plan.within(kind, this.id);
  }

  /** Paint all that is in sight. */
  paint() {
    this.#paintAround();
    for (const row of this.#rowsInSight()) this.stop.paintRow(row);
    this.paintScreen();
  }

  /**
   * Paint what looks different now that something was recorded of these subjects.
   *
   * @param {Set<string>} subjects
   */
  paintChanged(subjects) {
    this.#paintAround();
    // A photo or a finding may belong to any row, and how she is met concerns all.
    const anyRow = [...subjects].some((subject) => /^(photo|finding)\/|^inspection$/.test(subject));
    for (const row of this.#rowsInSight()) {
      const isTouched = anyRow || subjectsIn(row).some((subject) => subjects.has(subject));
      if (isTouched) this.stop.paintRow(row);
    }
    if (["findings", "leaving", "visit"].includes(this.kind)) this.paintScreen();
  }

  #paintAround() {
    this.#paintHeader();
    if (!this.boxes.cards.hidden) this.stop.paintAround();
    if (this.kind === "sheets") this.#paintSheets();
    if (this.kind === "tray") this.#paintTray();
    find(document, "[data-tray-count]").textContent = String(photosOn(this.log, "").length);
    find(document, "[data-finding-count]").textContent = String(findingsOf(this.log).length);
  }

  /** @returns {HTMLElement[]} */
  #rowsInSight() {
    return this.boxes.cards.hidden ? [] : this.stop.rows();
  }

  #paintHeader() {
    const subjects = counting(this.log, this.#itemsInSight());
    const [here, where] = this.#titles();
    paintHeader(this.log, subjects, here, where);
  }

  /** @returns {[here: string, where: string]} */
  #titles() {
    const sheet = this.plan.sheets.get(this.id);
    if (this.kind === "sheet" && sheet) return [sheet.name, sheet.of];
    if (this.kind === "space") {
      return [this.plan.spaces.get(this.id) ?? "", "all that is looked at here"];
    }
    const trial = this.plan.trials.get(this.id);
    if (this.kind === "trial" && trial) return [trial.name, "all that is read off in this trial"];
    return [this.title, this.screens[this.kind]?.where ?? TITLES[this.kind]];
  }

  #paintSheets() {
    this.chances?.paint();
    this.round.paint();
    paintSheetList(this.log, this.plan);
  }

  #paintTray() {
    const { tray } = this.boxes;
    const strip = findIfAny(tray, ".strip") ?? make("div", "", { className: "strip" });
    const count = paintPhotoStrip(this.log, strip, "");
    const words = count
      ? "Tap a photo to give it a caption and its place."
      : "Every photo has its place. “snap” takes one first and files it later.";
    tray.replaceChildren(make("p", words, { className: "empty" }), strip);
  }

  /**
   * Go to the first look of the round without an answer, the one in view included. Where the round
   * is done, or there is none: to the first check without one, from the card in view on, in the
   * order one walks in.
   *
   * @returns {boolean} whether there is any
   */
  next() {
    const inRound = this.round.next();
    if (inRound) {
      this.#goTo(inRound, "space");
      return true;
    }
    const items = inOrder(this.plan, this.order);
    const row = this.cardInView();
    const [subject] = row ? subjectsIn(row) : [];
    const position = Math.max(
      items.findIndex((item) => item.subject === subject),
      0,
    );
    const following = [...items.slice(position), ...items.slice(0, position)];
    const next = following.find((item) => {
      return !item.optional && answerOf(this.log, item.subject) === "open";
    });
    if (!next) return false;
    this.#goTo(next, this.order);
    return true;
  }

  /**
   * Open a check on the sheet of its unit.
   *
   * @param {string} subject
   */
  open(subject) {
    const item = this.plan.item(subject);
    if (item) this.#goTo(item, "sheet");
  }

  /**
   * @param {Item} item
   * @param {"sheet" | "space"} order
   */
  #goTo(item, order) {
    const address = `#${order}/${item[order]}`;
    if (location.hash !== address) {
      // Not by location.hash: its event would build the cards once more and lose the place.
      history.pushState(null, "", address);
      this.show();
    }
    this.#bringInSight(item);
  }

  /** @param {Item} item whose row is among those shown */
  #bringInSight(item) {
    const row = this.stop.reveal(item);
    row.scrollIntoView({ block: "start" });
    row.focus({ preventScroll: true });
  }

  /**
   * The row that somebody works on: with the focus if it is in sight, else the first below the
   * header.
   *
   * @returns {HTMLElement | null | undefined}
   */
  cardInView() {
    const rows = this.#rowsInSight();
    if (!rows.length) return null;
    const top = find(document, ".walk-head").offsetHeight;
    const focused = around(document.activeElement, "article.check");
    if (focused && isInSight(focused, top)) return focused;
    return rows.find((row) => row.getBoundingClientRect().bottom > top + LEAST_IN_SIGHT);
  }
}

/**
 * Back on the list, the row of the sheet or space that one comes from is in sight, and so the next
 * one is.
 *
 * @param {string} kind
 * @param {string} id
 */
function showRowOf(kind, id) {
  if (kind !== "sheet" && kind !== "space") return;
  const row = findIfAny(document, `#sheets [data-${kind}="${CSS.escape(id)}"]`);
  if (row?.checkVisibility()) row.scrollIntoView({ block: "center" });
}

/**
 * @param {HTMLElement} element
 * @param {number} top where the header ends
 * @returns {boolean}
 */
function isInSight(element, top) {
  const place = element.getBoundingClientRect();
  return place.bottom > top && place.top < innerHeight;
}
