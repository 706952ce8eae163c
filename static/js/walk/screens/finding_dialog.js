// The dialog in which a finding is written. What was typed and not kept stays half-written, whether
// the dialog was closed or the tab was killed (which closes nothing).

import { paintDisputes } from "../cards/answers.js";
import { sentenceOf } from "../page/alarm.js";
import { byId, find, findAll } from "../page/elements.js";
import { deleteDraft, readDrafts, writeDraft } from "../storage/draft_store.js";

/** @import { Change, Log } from "../record/log.js" */
/** @import { Plan } from "./plan.js" */

/** @typedef {Record<string, string>} FindingTexts by the names of their fields */

/**
 * @typedef {object} FindingDraft
 * @property {string} on what the finding was begun on
 * @property {string} subject of a finding that was there already, or ""
 * @property {FindingTexts} typed
 * @property {boolean} open whether the dialog was open when it was kept
 */

/**
 * @typedef {object} Opened what the dialog is open for
 * @property {string} key of its draft
 * @property {string} begunOn the subject from which it was opened
 * @property {string} existing its subject where it is there already, or ""
 * @property {string} subject
 * @property {string} on the unit, or "" for the whole vessel
 * @property {string} check
 * @property {FindingTexts} shown
 */

/** Fields of a finding that are written, and the ids of their elements. */
const TEXT_FIELDS = { title: "finding-title", text: "finding-text", action: "finding-action" };
const LEFT_OVER = "This was left half-written. Keep it, or drop what was typed.";
const INTERRUPTED = "This was being written when the page closed. Keep it, or drop what was typed.";

/** Writes a finding. */
export class FindingDialog {
  /** @type {Map<string, FindingDraft>} */
  #drafts = new Map();
  /** @type {Opened | null} */
  #opened = null;

  /**
   * @param {Log} log
   * @param {Plan} plan
   */
  constructor(log, plan) {
    this.log = log;
    this.plan = plan;
    this.dialog = byId("finding-dialog", HTMLDialogElement);
    this.dialog.addEventListener("input", () => this.#keepDraft(true));
    this.dialog.addEventListener("close", () => this.#closed());
    this.#onClick("[data-finding-drop]", () => {
      this.#dropDraft();
      this.dialog.close();
    });
    this.#onClick("[data-finding-keep]", () => this.#keep());
    this.#onClick("[data-finding-gone]", () => this.#takeOut());
  }

  /**
   * @param {string} selector
   * @param {() => unknown} act
   */
  #onClick(selector, act) {
    find(this.dialog, selector).addEventListener("click", act);
  }

  /**
   * Write a new finding; what was left half-written there is shown again.
   *
   * @param {string} on the subject of a check, or "" for the whole vessel
   * @param {string} [why] the sentence over what was left half-written
   */
  openNew(on, why = LEFT_OVER) {
    const [, system = "", unit = "", check = ""] = on.split("/");
    this.#open(
      {
        key: this.#draftKey(`new/${on}`),
        begunOn: on,
        existing: "",
        subject: freshSubject(),
        on: [system, unit].filter(Boolean).join("/"),
        check,
        shown: { title: "", text: "", action: "", urgency: "" },
      },
      why,
    );
  }

  /**
   * Change a finding that is there already.
   *
   * @param {string} subject
   * @param {string} [why] the sentence over what was left half-written
   */
  openExisting(subject, why = LEFT_OVER) {
    /** @param {string} field */
    const value = (field) => this.log.state.value(subject, field) ?? "";
    const [title, text, action] = Object.keys(TEXT_FIELDS).map(value);
    this.#open(
      {
        key: this.#draftKey(subject),
        begunOn: "",
        existing: subject,
        subject,
        on: value("on"),
        check: value("check"),
        shown: { title, text, action, urgency: value("urgency") },
      },
      why,
    );
  }

  /**
   * @param {Opened} opened
   * @param {string} why
   */
  #open(opened, why) {
    this.#opened = opened;
    const draft = this.#drafts.get(opened.key);
    this.#fill({ ...opened.shown, ...draft?.typed });
    const place = placeOf(this.plan, opened.on, opened.check);
    find(this.dialog, "[data-on]").textContent = place || "the whole vessel";
    find(this.dialog, "[data-finding-gone]").hidden = !opened.existing;
    find(this.dialog, "[data-finding-drop]").hidden = !draft;
    this.#showSentence(draft ? why : "");
    this.dialog.dataset.subject = opened.subject;
    paintDisputes(this.log, this.dialog);
    this.dialog.showModal();
  }

  /** @param {FindingTexts} texts */
  #fill(texts) {
    for (const [field, id] of Object.entries(TEXT_FIELDS)) textField(id).value = texts[field];
    for (const radio of this.#radios()) radio.checked = radio.value === texts.urgency;
  }

  /** @returns {FindingTexts} */
  #typed() {
    const fields = Object.entries(TEXT_FIELDS);
    const texts = Object.fromEntries(fields.map(([field, id]) => [field, textField(id).value]));
    const urgency = this.#radios().find((radio) => radio.checked)?.value ?? "";
    return { ...texts, urgency };
  }

  #radios() {
    return findAll(this.dialog, "[name=urgency]", HTMLInputElement);
  }

  /** @param {string} name */
  #draftKey(name) {
    return `finding-draft/${this.log.inspection}/${name}`;
  }

  /** @param {boolean} open */
  #keepDraft(open) {
    if (!this.#opened) return;
    const { key, begunOn: on, existing: subject, shown } = this.#opened;
    const changed = Object.entries(this.#typed()).filter(([field, text]) => text !== shown[field]);
    if (!changed.length) {
      this.#dropDraft();
      return;
    }
    const draft = { on, subject, typed: Object.fromEntries(changed), open };
    this.#drafts.set(key, draft);
    writeDraft(key, draft).catch(() => {});
  }

  #closed() {
    if (this.#drafts.has(this.#opened?.key ?? "")) this.#keepDraft(false);
  }

  #dropDraft() {
    if (!this.#opened) return;
    this.#drafts.delete(this.#opened.key);
    deleteDraft(this.#opened.key).catch(() => {});
  }

  /**
   * Read what earlier pages left half-written. A dialog that was open when its page was killed
   * opens again.
   */
  async openDraft() {
    for (const [key, draft] of await readDrafts(this.#draftKey(""))) {
      if (!this.#drafts.has(key)) this.#drafts.set(key, draft);
    }
    const left = [...this.#drafts.values()].find((draft) => draft.open);
    if (!left || this.dialog.open) return;
    if (left.subject) this.openExisting(left.subject, INTERRUPTED);
    else this.openNew(left.on, INTERRUPTED);
  }

  /** @param {string} sentence */
  #showSentence(sentence) {
    const box = find(this.dialog, ".alarm");
    box.textContent = sentence;
    box.hidden = !sentence;
  }

  async #keep() {
    if (!this.#opened) return;
    const { subject, on, check } = this.#opened;
    const { title, text, action, urgency } = trimmed(this.#typed());
    if (!title) return this.#showSentence("Say in a line what is wrong.");
    if (!urgency) return this.#showSentence("Choose how urgent it is.");
    /** @type {Change[]} */
    const changes = [
      [subject, "title", title],
      [subject, "text", text || null],
      [subject, "action", action || null],
      [subject, "urgency", urgency],
      [subject, "on", on],
      [subject, "check", check || null],
    ];
    await this.#record(this.log.unlessShown(changes), "finding");
  }

  #takeOut() {
    if (!this.#opened) return null;
    return this.#record([[this.#opened.subject, "gone", true]], "finding taken out");
  }

  /**
   * @param {Change[]} changes
   * @param {string} words
   */
  async #record(changes, words) {
    try {
      await this.log.record(changes, words);
      this.#dropDraft();
      this.dialog.close();
    } catch (error) {
      const why = sentenceOf(error);
      this.#showSentence(`Not kept on this device: ${why}. Leave this open and copy the text.`);
    }
  }
}

/**
 * The unit and the check that a finding is about, in words.
 *
 * @param {Plan} plan
 * @param {string} on
 * @param {string} check
 * @returns {string} "" for the whole vessel
 */
export function placeOf(plan, on, check) {
  const title = check && plan.item(`sheet/${on}/${check}`)?.title;
  return [plan.nameOf(on), title].filter(Boolean).join(" · ");
}

/**
 * @param {string} id
 * @returns {HTMLInputElement | HTMLTextAreaElement}
 */
function textField(id) {
  return /** @type {HTMLInputElement | HTMLTextAreaElement} */ (byId(id));
}

/**
 * @param {FindingTexts} texts
 * @returns {FindingTexts}
 */
function trimmed(texts) {
  return Object.fromEntries(Object.entries(texts).map(([field, text]) => [field, text.trim()]));
}

/** The subject of a new finding, from the browser's own random source. */
function freshSubject() {
  const bytes = crypto.getRandomValues(new Uint8Array(5));
  const digits = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0"));
  return `finding/f-${digits.join("")}`;
}
