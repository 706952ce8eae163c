// What the computer refused: each entry or photo with its content and why it was not taken. It
// stays on this device.

import { make } from "../page/elements.js";
import { whyRefused } from "../page/vocabulary.js";
import { describe } from "../record/summary.js";
import { requeueEntries } from "../storage/entry_store.js";
import { requeuePhotos } from "../storage/photo_store.js";

/** @import { Handover } from "../handover/handover.js" */
/** @import { Entry, EntryRow } from "../storage/entry_store.js" */
/** @import { PhotoRow } from "../storage/photo_store.js" */
/** @import { Plan } from "./plan.js" */

const NONE = "Nothing was refused.";
const SOME =
  "Not taken by the computer, kept on this device. Answer again on the card if the " +
  "sentence says how; the file of what waits holds these too.";

/** The screen of what was refused. */
export class Refused {
  where = "refused entries";

  /**
   * @param {Handover} handover
   * @param {Plan} plan
   * @param {string} inspection
   */
  constructor(handover, plan, inspection) {
    this.handover = handover;
    this.plan = plan;
    this.inspection = inspection;
  }

  /** @param {HTMLElement} box */
  paint(box) {
    const rows = this.handover.refused.map((row) => this.#article(row));
    const words = rows.length ? SOME : NONE;
    box.replaceChildren(make("p", words, { className: "empty" }), ...rows);
  }

  /**
   * @param {EntryRow | PhotoRow} row
   * @returns {HTMLElement}
   */
  #article(row) {
    const article = make("article", "", { className: "check refused" });
    const isEntry = "entry" in row;
    article.dataset.refused = isEntry ? row.id : row.sha;
    const heads = isEntry ? this.#entryHead(row.entry) : photoHead(row.sha);
    const button = make("button", "hand over once more", { type: "button" });
    button.addEventListener("click", () => this.#handOverAgain(row));
    const why = make("p", whyRefused(row.why), { className: "odd" });
    article.append(...heads, why, button);
    return article;
  }

  /**
   * @param {Entry} entry
   * @returns {HTMLElement[]}
   */
  #entryHead({ subject, field, value, who, at }) {
    const [kind, system, unit] = subject.split("/");
    const on = kind === "sheet" ? this.plan.nameOf(`${system}/${unit}`) : subject;
    const title = `${field.replace("reading/", "")}: ${describe(value)}`;
    const about = `${on} · ${who || "nobody named"}, ${at}`;
    return [make("h2", title), make("p", about, { className: "of" })];
  }

  /** @param {EntryRow | PhotoRow} row */
  async #handOverAgain(row) {
    if ("entry" in row) await requeueEntries(this.inspection, [row.id]);
    else await requeuePhotos(this.inspection, [row.sha]);
    this.handover.now();
  }
}

/**
 * @param {string} sha
 * @returns {HTMLElement[]}
 */
function photoHead(sha) {
  return [make("h2", "a photo"), make("p", sha.slice(0, 12), { className: "of" })];
}
