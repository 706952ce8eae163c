// The dialog in which a photo gets its caption and its place.

import { paintDisputes } from "../cards/answers.js";
import { byId, find } from "../page/elements.js";
import { addressOf } from "../photos/thumbnails.js";
import { readPhoto } from "../storage/photo_store.js";

/** @import { Change, Log } from "../record/log.js" */
/** @import { Plan } from "./plan.js" */

const FIRST = "choose the sheet first";

/** Files a photo. */
export class PhotoDialog {
  #sha = "";

  /**
   * @param {Log} log
   * @param {Plan} plan
   */
  constructor(log, plan) {
    this.log = log;
    this.plan = plan;
    this.dialog = byId("photo-dialog", HTMLDialogElement);
    this.caption = byId("photo-caption", HTMLInputElement);
    this.sheet = byId("photo-sheet", HTMLSelectElement);
    this.check = byId("photo-check", HTMLSelectElement);
    this.sheet.addEventListener("change", () => this.#offerChecks());
    find(this.dialog, "[data-photo-keep]").addEventListener("click", () => this.#keep());
  }

  /** @param {string} sha */
  async open(sha) {
    this.#sha = sha;
    const subject = `photo/${sha}`;
    const on = this.log.state.value(subject, "on") ?? "";
    const [kind, system = "", unit = "", check = ""] = on.split("/");
    this.caption.value = this.log.state.value(subject, "caption") ?? "";
    const unitChosen = system ? `${system}/${unit}` : "";
    this.sheet.value = kind === "space" ? on : unitChosen;
    this.#offerChecks(check);
    const row = await readPhoto(this.log.inspection, sha);
    this.#showRefusal(row?.why ?? "");
    this.dialog.dataset.subject = subject;
    paintDisputes(this.log, this.dialog);
    const address = await addressOf(this.log.inspection, sha);
    find(this.dialog, "img", HTMLImageElement).src = address ?? "";
    this.dialog.showModal();
  }

  /** @param {string} why */
  #showRefusal(why) {
    const box = find(this.dialog, ".alarm");
    box.hidden = !why;
    box.textContent = why && `Not taken by the computer, kept on this device: ${why}`;
  }

  /** @param {string} [chosen] id of a check */
  #offerChecks(chosen = "") {
    const items = this.plan.within("sheet", this.sheet.value);
    const options = items.map(({ title, check }) => {
      return new Option(title, check, false, check === chosen);
    });
    if (!options.length) options.push(new Option(this.#isSpace ? "the whole space" : FIRST, ""));
    this.check.replaceChildren(...options);
  }

  get #isSpace() {
    return this.sheet.value.startsWith("space/");
  }

  /** @returns {string} where the photo belongs, as it is recorded */
  #chosenPlace() {
    if (this.#isSpace || !this.sheet.value) return this.sheet.value;
    return `sheet/${this.sheet.value}/${this.check.value}`;
  }

  async #keep() {
    const subject = `photo/${this.#sha}`;
    const on = this.#chosenPlace();
    /** @type {Change[]} */
    const changes = [
      [subject, "caption", this.caption.value.trim() || null],
      [subject, "on", on],
    ];
    try {
      await this.log.record(this.log.unlessShown(changes), "photo filed");
      this.dialog.close();
    } catch {
      // The log has reported that it was not kept; the dialog stays open with what was typed.
    }
  }
}
