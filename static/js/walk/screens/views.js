// The views over the plan, named in the address: the list of sheets, the cards of a sheet or a
// space, the photos without a place, the findings, and those that paint themselves.

import { buildCard } from "../cards/build_card.js";
import { Dangers } from "../cards/dangers.js";
import { paintCard } from "../cards/paint_card.js";
import { paintPassed, passedBox, passedWords } from "../cards/walked_past.js";
import { WholeUnit } from "../cards/whole_unit.js";
import { around, byId, find, findAll, findIfAny, make } from "../page/elements.js";
import { paintPhotoStrip } from "../photos/thumbnails.js";
import { answerOf, counting, findingsOf, hasDispute, photosOn, tally } from "../record/summary.js";
import { AlsoLines } from "./also_lines.js";
import { Chances } from "./chances.js";
import { paintHeader, paintTide } from "./header.js";
import { Round } from "../visit/round.js";

/** @import { Log } from "../record/log.js" */
/** @import { FollowedRound } from "../python/followed_round.js" */
/** @import { Item, Plan } from "./plan.js" */

/**
 * A view that paints itself.
 *
 * @typedef {object} Screen
 * @property {string} where what the header calls it
 * @property {(box: HTMLElement) => unknown} paint
 */

// A card of which less is in sight, below the header, is one that was passed already.
const LEAST_IN_SIGHT = 80;
/** @type {Record<string, string>} */
const TITLES = {
  scans: "before the visit, from the papers",
  sheets: "the whole vessel",
  tray: "photos without a place",
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
   * @param {FollowedRound} followed
   * @param {string} title of the inspection
   * @param {Record<string, Screen>} screens by the name of their box
   */
  constructor(log, plan, followed, title, screens) {
    this.log = log;
    this.plan = plan;
    this.title = title;
    this.screens = screens;
    const names = ["sheets", "cards", "tray", ...Object.keys(screens)];
    /** @type {Record<string, HTMLElement>} */
    this.boxes = Object.fromEntries(names.map((name) => [name, byId(name)]));
    /** @type {Dangers | null} */
    this.dangers = null;
    /** @type {AlsoLines | null} */
    this.also = null;
    this.chances = findIfAny(document, "#chances") && new Chances(log, plan);
    this.round = new Round(log, plan, followed);
    addEventListener("hashchange", () => this.show());
  }

  /**
   * Show what the address names: #sheets, #sheet/<system>/<unit>, where wanted with a check behind
   * it, #space/<id>, #trial/<id>, #scans, or a screen.
   */
  show() {
    const [kind, ...rest] = decodeURIComponent(location.hash.slice(1)).split("/");
    this.id = rest.slice(0, kind === "sheet" ? 2 : 1).join("/");
    const isSheet = kind === "sheet" && this.plan.sheets.has(this.id);
    const isSpace = kind === "space" && this.plan.spaces.has(this.id);
    const isTrial = kind === "trial" && this.plan.trials.has(this.id);
    const showsCards = isSheet || isSpace || isTrial || kind === "scans";
    this.kind = showsCards || kind === "tray" || kind in this.screens ? kind : "sheets";
    const shown = showsCards ? "cards" : this.kind;
    for (const [name, box] of Object.entries(this.boxes)) box.hidden = name !== shown;
    if (showsCards) {
      if (isSheet || isSpace) this.order = isSheet ? "sheet" : "space";
      this.#buildCards();
    }
    this.paint();
    scrollTo(0, 0);
    const item = isSheet && rest[2] ? this.plan.item(`sheet/${this.id}/${rest[2]}`) : undefined;
    if (item) this.#bringInSight(item);
  }

  /** Paint a view that does so itself anew, where it is in sight. */
  paintScreen() {
    this.screens[this.kind]?.paint(this.boxes[this.kind]);
  }

  #buildCards() {
    const items = this.#itemsInSight();
    const cards = items.map((item) => buildCard(item.source, item.subject, this.#nameOn(item)));
    const words = "No check of the systems counted on board is done here.";
    const content = cards.length ? cards : [make("p", words, { className: "empty" })];
    this.also = new AlsoLines(
      this.log,
      this.plan,
      this.kind === "sheet" ? this.id : "",
      (subject) => this.open(subject),
    );
    const passed = this.#unitsOf(items).map((sheet) => passedBox(sheet, this.plan.nameOf(sheet)));
    this.dangers = new Dangers(this.log, this.plan.cautions(items), this.#stop());
    const around = this.dangers.box ? [this.dangers.box, ...passed] : passed;
    if (this.kind === "sheet") around.push(new WholeUnit(this.log, this.plan, this.id).box);
    this.boxes.cards.replaceChildren(...around, ...content, ...this.also.rows);
  }

  /** @returns {string} the stop whose cautions are read: a space, a system, a trial, the papers */
  #stop() {
    return this.kind === "sheet" ? this.id.split("/")[0] : this.id || this.kind;
  }

  /**
   * @param {Item[]} items
   * @returns {string[]} the units that are looked at there, each once
   */
  #unitsOf(items) {
    return [...new Set(items.map((item) => item.sheet))];
  }

  /**
   * @param {Item} item
   * @returns {string} what its card names: the unit within a space, and the space on a unit's sheet
   */
  #nameOn(item) {
    if (this.kind !== "sheet") return this.plan.nameOf(item.sheet);
    return this.plan.spaces.get(item.space) ?? "";
  }

  /** @returns {Item[]} */
  #itemsInSight() {
    if (this.kind === "scans") return this.plan.within("scan", "yes");
    const { kind } = this;
    if (kind !== "sheet" && kind !== "space" && kind !== "trial") return this.plan.items;
    return this.plan.within(kind, this.id);
  }

  /** Paint all that is in sight. */
  paint() {
    this.#paintAround();
    for (const card of this.#cardsInSight()) this.#paintCard(card);
    paintPassed(this.log, this.boxes.cards);
    this.paintScreen();
  }

  /** @param {HTMLElement} card */
  #paintCard(card) {
    paintCard(this.log, card);
    this.chances?.mark(card);
  }

  /**
   * Paint what looks different now that something was recorded of these subjects.
   *
   * @param {Set<string>} subjects
   */
  paintChanged(subjects) {
    this.#paintAround();
    // A photo or a finding may belong to any card, and how she is met concerns all.
    const anyCard = [...subjects].some((subject) =>
      /^(photo|finding)\/|^inspection$/.test(subject),
    );
    for (const card of this.#cardsInSight()) {
      if (anyCard || subjects.has(card.dataset.subject ?? "")) this.#paintCard(card);
    }
    paintPassed(this.log, this.boxes.cards);
    if (["findings", "leaving", "visit"].includes(this.kind)) this.paintScreen();
  }

  #paintAround() {
    this.#paintHeader();
    this.also?.paint();
    this.dangers?.paint();
    if (this.kind === "sheets") this.#paintSheets();
    if (this.kind === "tray") this.#paintTray();
    find(document, "[data-tray-count]").textContent = String(photosOn(this.log, "").length);
    find(document, "[data-finding-count]").textContent = String(findingsOf(this.log).length);
  }

  /** @returns {HTMLElement[]} */
  #cardsInSight() {
    const { cards } = this.boxes;
    return cards.hidden ? [] : findAll(cards, "article.check");
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
    for (const row of findAll(document, "#sheets .sheet-row")) {
      const { sheet, space } = row.dataset;
      const items = this.plan.within(...rowKey(sheet, space));
      const subjects = items.map((item) => item.subject);
      const counts = tally(this.log, counting(this.log, items));
      const disputed = subjects.some((subject) => hasDispute(this.log, subject));
      const warning = disputed ? "two answers · " : "";
      row.hidden = !subjects.length;
      const passed = passedWords(this.log, sheet ?? "");
      find(row, "[data-tally]").textContent = `${warning}${passed}${counts.seen} of ${counts.of}`;
      paintTide(find(row, ".tide"), counts);
    }
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
    const items = this.#itemsInOrder();
    const subject = this.cardInView()?.dataset.subject;
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

  /** @returns {Item[]} */
  #itemsInOrder() {
    if (this.order === "sheet") return this.plan.items;
    return [...this.plan.spaces.keys()].flatMap((space) => this.plan.within("space", space));
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

  /** @param {Item} item whose card is among those shown */
  #bringInSight(item) {
    const card = find(this.boxes.cards, `[data-subject="${item.subject}"]`);
    card.scrollIntoView({ block: "start" });
    card.focus({ preventScroll: true });
  }

  /**
   * The card that somebody works on: with the focus if it is in sight, else the first below the
   * header.
   *
   * @returns {HTMLElement | null | undefined}
   */
  cardInView() {
    const cards = this.#cardsInSight();
    if (!cards.length) return null;
    const top = find(document, ".walk-head").offsetHeight;
    const focused = around(document.activeElement, "article.check");
    if (focused && isInSight(focused, top)) return focused;
    return cards.find((card) => card.getBoundingClientRect().bottom > top + LEAST_IN_SIGHT);
  }
}

/**
 * @param {string} [sheet]
 * @param {string} [space]
 * @returns {["sheet" | "space" | "scan", string]} what a row of the list holds
 */
function rowKey(sheet, space) {
  if (sheet) return ["sheet", sheet];
  return space ? ["space", space] : ["scan", "yes"];
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
