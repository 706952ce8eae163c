// Findings: what is wrong, how urgent, and what should be done.

import { hasDispute, paintDisputes } from "./answers.js";
import { dropMeta, metaWith, setMeta } from "./database.js";
import { findings } from "./found.js";

const ORDER = ["danger now", "before purchase", "in the yard", "keep watch"];

const freshId = () => "f-" + Array.from(crypto.getRandomValues(new Uint8Array(5)), (byte) => byte.toString(16).padStart(2, "0")).join("");

// The dialog in which a finding is written, and the list of all findings.
export class Findings {
  constructor(log, plan) {
    this.log = log;
    this.plan = plan;
    this.dialog = document.getElementById("finding-dialog");
    this.fields = { title: "finding-title", text: "finding-text", action: "finding-action" };
    this.drafts = new Map();
    this.dialog.addEventListener("input", () => this.#keepDraft(true));
    this.dialog.addEventListener("close", () => this.drafts.has(this.key) && this.#keepDraft(false));
    this.dialog.querySelector("[data-finding-drop]").addEventListener("click", () => { this.#dropDraft(); this.dialog.close(); });
    this.dialog.querySelector("[data-finding-keep]").addEventListener("click", () => this.#keep());
    this.dialog.querySelector("[data-finding-gone]").addEventListener("click", () => this.#takeOut());
  }

  // A new finding on a sheet's subject, or one that is there already; what was left half-written there is shown again.
  open(on, subject = "", why = "This was left half-written. Keep it, or drop what was typed.") {
    this.key = `finding-draft/${this.log.inspection}/${subject || `new/${on}`}`;
    this.from = on;
    this.was = subject;
    this.subject = subject || `finding/${freshId()}`;
    const value = (field) => (subject ? this.log.state.value(subject, field) ?? "" : "");
    const [, system = "", unit = "", check = ""] = on.split("/");
    this.on = subject ? value("on") : [system, unit].filter(Boolean).join("/");
    this.check = subject ? value("check") : check;
    this.shown = { ...Object.fromEntries(Object.keys(this.fields).map((field) => [field, value(field)])), urgency: value("urgency") };
    const draft = this.drafts.get(this.key);
    this.#fill({ ...this.shown, ...draft?.typed });
    this.dialog.querySelector("[data-on]").textContent = this.#place(this.on, this.check) || "the whole vessel";
    this.dialog.querySelector("[data-finding-gone]").hidden = !subject;
    this.dialog.querySelector("[data-finding-drop]").hidden = !draft;
    this.#say(draft ? why : "");
    this.dialog.dataset.subject = this.subject;
    paintDisputes(this.log, this.dialog);
    this.dialog.showModal();
  }

  #fill(values) {
    for (const [field, id] of Object.entries(this.fields)) document.getElementById(id).value = values[field];
    for (const radio of this.#radios()) radio.checked = radio.value === values.urgency;
  }

  #typed() {
    const texts = Object.entries(this.fields).map(([field, id]) => [field, document.getElementById(id).value]);
    return [...texts, ["urgency", this.#radios().find((radio) => radio.checked)?.value ?? ""]];
  }

  // The unit and the check that a finding is about.
  #place(on, check) {
    return [this.plan.nameOf(on), check && (this.plan.item(`sheet/${on}/${check}`)?.title ?? "")].filter(Boolean).join(" · ");
  }

  // What was typed and not kept stays half-written, whether the dialog was closed or the tab was killed (which closes nothing).
  #keepDraft(open) {
    const typed = Object.fromEntries(this.#typed().filter(([field, text]) => text !== this.shown[field]));
    if (!Object.keys(typed).length) return this.#dropDraft();
    this.drafts.set(this.key, { on: this.from, subject: this.was, typed, open });
    setMeta(this.key, this.drafts.get(this.key)).catch(() => {});
  }

  #dropDraft() {
    this.drafts.delete(this.key);
    dropMeta(this.key).catch(() => {});
  }

  // What earlier pages left half-written; what was open when its page was killed opens again.
  async openDraft() {
    for (const [key, draft] of await metaWith(`finding-draft/${this.log.inspection}/`)) if (!this.drafts.has(key)) this.drafts.set(key, draft);
    const left = [...this.drafts.values()].find((draft) => draft.open);
    if (left && !this.dialog.open) this.open(left.on, left.subject, "This was being written when the page closed. Keep it, or drop what was typed.");
  }

  // A tap settled two answers: what stands now is shown, in this dialog too where it is open.
  settled() {
    for (const dialog of document.querySelectorAll("dialog[open]")) dialog.close();
  }

  #radios() {
    return [...this.dialog.querySelectorAll("[name=urgency]")];
  }

  #say(sentence) {
    const alarm = this.dialog.querySelector(".alarm");
    alarm.textContent = sentence;
    alarm.hidden = !sentence;
  }

  async #keep() {
    const typed = Object.entries(this.fields).map(([field, id]) => [field, document.getElementById(id).value.trim()]);
    const urgency = this.#radios().find((radio) => radio.checked)?.value;
    if (!typed[0][1]) return this.#say("Say in a line what is wrong.");
    if (!urgency) return this.#say("Choose how urgent it is.");
    const values = [...typed, ["urgency", urgency], ["on", this.on], ["check", this.check]];
    const changes = values.map(([field, value]) => [this.subject, field, value || (field === "on" ? "" : null)]);
    await this.#record(this.log.unlessShown(changes), "finding");
  }

  #takeOut() {
    return this.#record([[this.subject, "gone", true]], "finding taken out");
  }

  async #record(changes, words) {
    try {
      await this.log.record(changes, words);
      this.#dropDraft();
      this.dialog.close();
    } catch (error) {
      this.#say(`Not kept on this device: ${error.message}. Leave this open and copy the text.`);
    }
  }

  paint(box) {
    const rank = (subject) => ORDER.indexOf(this.log.state.value(subject, "urgency"));
    const rows = findings(this.log).sort((a, b) => rank(a) - rank(b)).map((subject) => this.#row(subject));
    const add = Object.assign(document.createElement("button"), { type: "button", className: "main", textContent: "new finding on the whole vessel" });
    add.addEventListener("click", () => this.open(""));
    const none = Object.assign(document.createElement("p"), { className: "empty", textContent: "No finding yet. Write one from a check, with “finding”." });
    box.replaceChildren(...(rows.length ? rows : [none]), add);
  }

  #row(subject) {
    const value = (field) => this.log.state.value(subject, field) ?? "";
    const button = Object.assign(document.createElement("button"), { type: "button", className: "sheet-row finding" });
    const title = Object.assign(document.createElement("b"), { textContent: value("title") });
    const urgency = Object.assign(document.createElement("span"), { textContent: value("urgency") });
    const on = Object.assign(document.createElement("small"), { textContent: [this.#place(value("on"), value("check")), value("action")].filter(Boolean).join(" · ") });
    if (hasDispute(this.log, subject)) on.prepend("two answers · ");
    button.append(title, urgency, on);
    button.addEventListener("click", () => this.open("", subject));
    return button;
  }
}
