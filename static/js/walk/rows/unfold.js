// A row unfolds by a tap on its title: what to ask and where to look, readings, photos, note. What
// unfolds is made then, and not before: most rows are answered without it.

import { paintCard } from "../cards/paint_card.js";
import { find, findAll } from "../page/elements.js";
import { bodyOf, fillTexts } from "./build_body.js";
import { addressedIn, subjectsIn } from "./like_units.js";
import { paintRow } from "./paint_row.js";
import { bodyOfAll, paintCells } from "./reading_cells.js";

/** @import { Log } from "../record/log.js" */
/** @import { Item, Plan } from "../screens/plan.js" */
/** @import { CheckTexts } from "./check_texts.js" */

/** Builds and paints what is folded. */
export class Rows {
  /**
   * @param {Log} log
   * @param {Plan} plan
   * @param {CheckTexts} texts
   * @param {HTMLElement} root that holds the rows
   */
  constructor(log, plan, texts, root) {
    this.log = log;
    this.plan = plan;
    this.texts = texts;
    this.root = root;
    texts.addEventListener("change", () => {
      for (const row of this.unfolded()) this.#fill(row);
    });
  }

  /** @returns {HTMLElement[]} */
  unfolded() {
    return findAll(this.root, "article.check").filter((row) => !find(row, ".body").hidden);
  }

  /**
   * @param {HTMLElement} row
   * @param {boolean} isOpen
   */
  fold(row, isOpen) {
    const body = find(row, ".body");
    find(row, "[data-act=unfold]").setAttribute("aria-expanded", String(isOpen));
    row.classList.toggle("open", isOpen);
    body.hidden = !isOpen;
    if (isOpen && body.dataset.of !== addressedIn(row).join(" ")) this.rebuild(row);
    else this.paint(row);
  }

  /**
   * Make what is unfolded anew, for the unit that the row is about now.
   *
   * @param {HTMLElement} row
   */
  rebuild(row) {
    const body = find(row, ".body");
    if (body.hidden) return;
    const items = subjectsIn(row).map((subject) => this.plan.item(subject));
    const found = /** @type {Item[]} */ (items.filter(Boolean));
    const one = row.dataset.subject && this.plan.item(row.dataset.subject);
    body.replaceChildren(...(one ? bodyOf(row, one) : bodyOfAll(row, found, this.plan)));
    body.dataset.of = addressedIn(row).join(" ");
    this.#fill(row);
    this.paint(row);
  }

  /** @param {HTMLElement} row */
  #fill(row) {
    const [, system] = subjectsIn(row)[0].split("/");
    const texts = this.texts.of(system, row.dataset.check ?? "");
    if (!texts) this.texts.read();
    fillTexts(row, texts);
  }

  /** @param {HTMLElement} row */
  paint(row) {
    paintRow(this.log, row);
    paintCard(this.log, row);
    if (!find(row, ".body").hidden && !row.dataset.subject) paintCells(this.log, row);
  }
}
