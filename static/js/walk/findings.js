// Findings: what is wrong, how urgent, and what should be done.

import { hasDispute, paintDisputes } from "./answers.js";
import { dropMeta, meta, setMeta } from "./database.js";

const ORDER = ["danger now", "before purchase", "in the yard", "keep watch"];

const freshId = () => "f-" + Array.from(crypto.getRandomValues(new Uint8Array(5)), (byte) => byte.toString(16).padStart(2, "0")).join("");

export function findings(log) {
  return log.state.subjects("finding/").filter((subject) => log.state.value(subject, "title") && !log.state.value(subject, "gone"));
}

export class Findings {
  constructor(log, plan) {
    this.log = log;
    this.plan = plan;
    this.dialog = document.getElementById("finding-dialog");
    this.fields = { title: "finding-title", text: "finding-text", action: "finding-action" };
    this.draft = `finding-draft/${log.inspection}`;
    this.dialog.addEventListener("input", () => this.#keepDraft());
    this.dialog.addEventListener("close", () => dropMeta(this.draft).catch(() => {}));
    this.dialog.querySelector("[data-finding-keep]").addEventListener("click", () => this.#keep());
    this.dialog.querySelector("[data-finding-gone]").addEventListener("click", () => this.#takeOut());
  }

  // A new finding on a sheet's subject, or one that is there already.
  open(on, subject = "") {
    this.subject = subject || `finding/${freshId()}`;
    const value = (field) => (subject ? this.log.state.value(subject, field) ?? "" : "");
    this.on = subject ? value("on") : on.split("/").slice(1, 3).join("/");
    for (const [field, id] of Object.entries(this.fields)) document.getElementById(id).value = value(field);
    for (const radio of this.#radios()) radio.checked = radio.value === value("urgency");
    this.dialog.querySelector("[data-on]").textContent = this.plan.nameOf(this.on) || "the whole vessel";
    this.dialog.querySelector("[data-finding-gone]").hidden = !subject;
    this.#say("");
    this.dialog.dataset.subject = this.subject;
    paintDisputes(this.log, this.dialog);
    this.dialog.showModal();
  }

  // A tab that is killed closes no dialog: what was being written is kept half-written, and shown again when the page opens.
  #keepDraft() {
    const typed = Object.fromEntries(Object.entries(this.fields).map(([field, id]) => [field, document.getElementById(id).value]));
    const urgency = this.#radios().find((radio) => radio.checked)?.value ?? "";
    setMeta(this.draft, { subject: this.subject, on: this.on, urgency, typed }).catch(() => {});
  }

  async openDraft() {
    const draft = await meta(this.draft);
    if (!draft) return;
    this.open("", draft.subject);
    this.on = draft.on;
    this.dialog.querySelector("[data-on]").textContent = this.plan.nameOf(this.on) || "the whole vessel";
    for (const [field, id] of Object.entries(this.fields)) document.getElementById(id).value = draft.typed[field];
    for (const radio of this.#radios()) radio.checked = radio.value === draft.urgency;
    this.#say("This was being written when the page closed. Keep it, or close it to drop it.");
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
    const values = [...typed, ["urgency", urgency], ["on", this.on]];
    const changes = values.map(([field, value]) => [this.subject, field, value || (field === "on" ? "" : null)]);
    await this.#record(this.log.unlessShown(changes), "finding");
  }

  #takeOut() {
    return this.#record([[this.subject, "gone", true]], "finding taken out");
  }

  async #record(changes, words) {
    try {
      await this.log.record(changes, words);
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
    const on = Object.assign(document.createElement("small"), { textContent: [this.plan.nameOf(value("on")), value("action")].filter(Boolean).join(" · ") });
    if (hasDispute(this.log, subject)) on.prepend("two answers · ");
    button.append(title, urgency, on);
    button.addEventListener("click", () => this.open("", subject));
    return button;
  }
}
