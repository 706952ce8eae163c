// The plan of the page (which checks there are, on which unit, in which space) and the views over it, named in the address.

import { build } from "./build.js";
import { paint } from "./card_paint.js";
import { hasDispute } from "./answers.js";
import { findings } from "./found.js";
import { photosOn, paintStrip } from "./thumbs.js";
import { answerOf, paintHeader, paintTide, tally } from "./status.js";

// Read once from the templates and the list of sheets.
export class Plan {
  items = [];
  sheets = new Map();

  constructor() {
    const sources = new Map([...document.querySelectorAll("template[data-system]")].map((template) => [template.dataset.system, template.content]));
    this.sources = sources;
    for (const row of document.querySelectorAll("[data-sheet]")) {
      const [system] = row.dataset.sheet.split("/");
      const { name, of, kind, at } = row.dataset;
      const { home } = document.querySelector(`template[data-system="${system}"]`).dataset;
      this.sheets.set(row.dataset.sheet, { name, of });
      for (const source of sources.get(system).querySelectorAll("article.check")) {
        const { check, in: where, for: kinds } = source.dataset;
        // A unit is asked what its kind is asked; what is walked at the system's home is walked where this unit stands.
        if (kind && kinds && !kinds.split(" ").includes(kind)) continue;
        const space = where === home && at ? at : where;
        this.items.push({ subject: `sheet/${row.dataset.sheet}/${check}`, sheet: row.dataset.sheet, space, check, source, title: source.querySelector("h2").textContent });
      }
    }
    this.spaces = new Map([...document.querySelectorAll("[data-space]")].map((row) => [row.dataset.space, row.dataset.name]));
  }

  within(kind, id) {
    return this.items.filter((item) => kind === "all" || item[kind] === id);
  }

  subjects(kind, id) {
    return this.within(kind, id).map((item) => item.subject);
  }

  checksOf(sheet) {
    return this.within("sheet", sheet).map((item) => ({ id: item.check, title: item.title }));
  }

  // A check by its subject; undefined where this page has none of that name.
  item(subject) {
    return this.items.find((one) => one.subject === subject);
  }

  nameOf(sheet) {
    const found = this.sheets.get(sheet);
    return found ? `${found.of} · ${found.name}` : sheet;
  }

  // Where a photo is filed, in words.
  placeOf(on) {
    const [, system, unit] = on.split("/");
    if (!on) return "photos without a place";
    return [this.nameOf(`${system}/${unit}`), this.item(on)?.title].filter(Boolean).join(", ");
  }

  // The cautions of every system met in these items, each once.
  cautions(items) {
    const boxes = new Map();
    for (const system of new Set(items.map((item) => item.sheet.split("/")[0]))) {
      for (const box of this.sources.get(system).querySelectorAll(".caution.general")) boxes.set(box.dataset.caution, box);
    }
    return [...boxes.values()].map((box) => box.cloneNode(true));
  }
}

export class Views {
  // `more` are views that paint themselves: name -> {paint(box), where}.
  constructor(log, plan, findingsView, title, more) {
    Object.assign(this, { log, plan, findingsView, title, more });
    this.boxes = Object.fromEntries(["sheets", "cards", "tray", "findings", ...Object.keys(more)].map((id) => [id, document.getElementById(id)]));
    this.order = "sheet";
    addEventListener("hashchange", () => this.show());
  }

  // Go to what the address names: #sheets, #sheet/<system>/<unit>, #space/<id>, #tray, #findings, #ready or #refused.
  show() {
    const [kind, ...rest] = decodeURIComponent(location.hash.slice(1)).split("/");
    const id = rest.slice(0, kind === "sheet" ? 2 : 1).join("/");
    const known = (kind === "sheet" && this.plan.sheets.has(id)) || (kind === "space" && this.plan.spaces.has(id));
    this.kind = known || kind === "tray" || kind === "findings" || kind in this.more ? kind : "sheets";
    this.id = id;
    if (known) this.order = kind;
    for (const [name, box] of Object.entries(this.boxes)) box.hidden = name !== (known ? "cards" : this.kind);
    if (known) this.#buildCards();
    this.paint();
    this.again();
    scrollTo(0, 0);
  }

  // Paint a view that does so itself anew, where it is in sight.
  again() {
    this.more[this.kind]?.paint(this.boxes[this.kind]);
  }

  #buildCards() {
    const items = this.plan.within(this.kind, this.id);
    const cards = items.map((item) => build(item.source, item.subject, this.kind === "space" ? this.plan.nameOf(item.sheet) : this.plan.spaces.get(item.space)));
    const none = Object.assign(document.createElement("p"), { className: "empty", textContent: "No check of the systems counted on board is done here." });
    this.boxes.cards.replaceChildren(...this.plan.cautions(items), ...(cards.length ? cards : [none]));
  }

  paint(subjects = null) {
    for (const card of this.boxes.cards.hidden ? [] : this.boxes.cards.querySelectorAll("article.check")) {
      if (!subjects || subjects.has(card.dataset.subject) || [...subjects].some((subject) => /^(photo|finding)\//.test(subject))) paint(this.log, card);
    }
    this.#paintHeader();
    if (this.kind === "sheets") this.#paintSheets();
    if (this.kind === "tray") this.#paintTray();
    if (this.kind === "findings") this.findingsView.paint(this.boxes.findings);
    document.querySelector("[data-tray-count]").textContent = photosOn(this.log, "").length;
    document.querySelector("[data-finding-count]").textContent = findings(this.log).length;
  }

  #paintHeader() {
    const sheet = this.plan.sheets.get(this.id);
    if (this.kind === "sheet") paintHeader(this.log, this.plan.subjects("sheet", this.id), sheet.name, sheet.of);
    else if (this.kind === "space") paintHeader(this.log, this.plan.subjects("space", this.id), this.plan.spaces.get(this.id), "all that is looked at here");
    else paintHeader(this.log, this.plan.subjects("all"), this.title, this.more[this.kind]?.where ?? { sheets: "the whole vessel", tray: "photos without a place", findings: "findings" }[this.kind]);
  }

  #paintSheets() {
    for (const row of document.querySelectorAll(".sheet-row[data-sheet], .sheet-row[data-space]")) {
      const subjects = row.dataset.sheet ? this.plan.subjects("sheet", row.dataset.sheet) : this.plan.subjects("space", row.dataset.space);
      const counts = tally(this.log, subjects);
      row.hidden = !subjects.length;
      const disputed = subjects.some((subject) => hasDispute(this.log, subject));
      row.querySelector("[data-tally]").textContent = `${disputed ? "two answers · " : ""}${counts.seen} of ${counts.of}`;
      paintTide(row.querySelector(".tide"), counts);
    }
  }

  #paintTray() {
    const strip = this.boxes.tray.querySelector(".strip") ?? Object.assign(document.createElement("div"), { className: "strip" });
    const count = paintStrip(this.log, strip, "");
    const words = count ? "Tap a photo to give it a caption and its place." : "Every photo has its place. “snap” takes one first and files it later.";
    this.boxes.tray.replaceChildren(Object.assign(document.createElement("p"), { className: "empty", textContent: words }), strip);
  }

  // The next check without any answer, after the card in view, by the order (system or space) one walks in.
  next() {
    const ordered = this.order === "space" ? [...this.plan.spaces.keys()].flatMap((space) => this.plan.within("space", space)) : this.plan.items;
    const from = ordered.findIndex((item) => item.subject === this.#cardInView());
    const around = [...ordered.slice(from + 1), ...ordered.slice(0, from + 1)];
    const item = around.find((one) => answerOf(this.log, one.subject) === "open");
    if (!item) return false;
    const address = this.order === "space" ? `#space/${item.space}` : `#sheet/${item.sheet}`;
    if (location.hash !== address) {
      history.pushState(null, "", address);
      this.show();
    }
    this.#goTo(item.subject);
    return true;
  }

  // Open a check on the sheet of its unit.
  open(subject) {
    const item = this.plan.item(subject);
    if (!item) return;
    // Not by location.hash: its event would build the cards once more and lose the place.
    history.pushState(null, "", `#sheet/${item.sheet}`);
    this.show();
    this.#goTo(subject);
  }

  #goTo(subject) {
    const card = this.boxes.cards.querySelector(`[data-subject="${subject}"]`);
    card.scrollIntoView({ block: "start" });
    card.focus({ preventScroll: true });
  }

  #cardInView() {
    if (this.boxes.cards.hidden) return "";
    const cards = [...this.boxes.cards.querySelectorAll("article.check")];
    const focused = document.activeElement?.closest?.("article.check");
    const top = document.querySelector(".walk-head").offsetHeight;
    const inView = cards.find((card) => card.getBoundingClientRect().bottom > top + 80);
    const focusedRect = focused?.getBoundingClientRect();
    const focusShown = focusedRect && focusedRect.bottom > top && focusedRect.top < innerHeight;
    const card = focusShown ? focused : inView;
    // The card at the top of the view counts as "before" only once it is answered.
    return card?.dataset.subject ?? "";
  }
}
