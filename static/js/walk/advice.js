// What is still worth the minutes left on board: asked of the computer after each answer; without it, the critical and heavy checks by where one stands.

import { answerOf } from "./status.js";

const make = (tag, text, more = {}) => Object.assign(document.createElement(tag), { textContent: text, ...more });
const USUAL = 45;

export class Advice {
  where = "the minutes left";
  #asked = 0;

  // `open` goes to a check by its subject.
  constructor({ log, plan, talk, open }) {
    Object.assign(this, { log, plan, talk, open });
  }

  get minutes() {
    const kept = Number(sessionStorage.getItem("minutes"));
    return kept > 0 ? kept : USUAL;
  }

  paint(box) {
    if (!box.querySelector("input")) box.replaceChildren(this.#question(box), make("div", "", { className: "advice" }));
    this.#fill(box.querySelector(".advice"));
  }

  #question(box) {
    const label = make("label", "minutes left on board ");
    const input = make("input", "", { type: "number", min: 1, max: 1440, value: this.minutes, inputMode: "numeric" });
    input.addEventListener("change", () => {
      sessionStorage.setItem("minutes", input.value);
      this.#fill(box.querySelector(".advice"));
    });
    label.append(input);
    return label;
  }

  async #fill(list) {
    const number = ++this.#asked;
    let rows, words;
    try {
      const answer = await this.talk.ask(`/exchange/${this.log.inspection}/next?minutes=${this.minutes}`, {}, 6_000);
      rows = answer.looks;
      words = answer.why || `${answer.minutes} of ${this.minutes} minutes, walks between spaces included. ${answer.joint}`;
    } catch {
      rows = this.#alone();
      words = "The computer does not answer, so this is the plain order: critical checks first, then the heaviest, as many as fit.";
    }
    if (number !== this.#asked) return;
    list.replaceChildren(make("p", words, { className: "empty" }), ...rows.map((row) => this.#row(row)));
  }

  #row({ subject, label, sentence }) {
    const row = make("button", "", { type: "button", className: "sheet-row look" });
    row.append(make("b", label), make("span", sentence));
    row.addEventListener("click", () => this.open(subject));
    return row;
  }

  // Without the computer: what has no answer, critical before heavy, while it fits.
  #alone() {
    const waiting = this.plan.items.filter((item) => answerOf(this.log, item.subject) === "open");
    const rank = (item) => (item.source.dataset.critical ? 100 : 0) + Number(item.source.dataset.weight);
    waiting.sort((one, other) => rank(other) - rank(one));
    let left = this.minutes;
    const chosen = waiting.filter((item) => {
      const fits = Number(item.source.dataset.minutes) <= left;
      if (fits) left -= Number(item.source.dataset.minutes);
      return fits;
    });
    return chosen.map((item) => ({ subject: item.subject, label: `${this.plan.sheets.get(item.sheet).name}: ${item.title}`,
      sentence: `${this.plan.spaces.get(item.space)}, ${item.source.dataset.minutes} min${item.source.dataset.critical ? ", critical" : ""}` }));
  }
}
