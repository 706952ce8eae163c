// What is still worth the minutes left on board: asked of the computer after each answer; without it, the critical and heavy checks by where one stands.

import { answerOf } from "./status.js";
import { Refusal } from "./talk.js";

const make = (tag, text, more = {}) => Object.assign(document.createElement(tag), { textContent: text, ...more });
const USUAL = 45, LONGEST = 24 * 60;
const AWAY = "The computer does not answer, so this is the plain order: critical checks first, then the heaviest, as many as fit.";

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
      const number = Number(input.value);
      if (number > 0 && number <= LONGEST) sessionStorage.setItem("minutes", input.value);
      this.#fill(box.querySelector(".advice"));
    });
    label.append(input);
    return label;
  }

  async #fill(list) {
    const number = ++this.#asked;
    const { value } = list.parentElement.querySelector("input");
    const { rows, words } = Number(value) > 0 ? await this.#asking(value) : { rows: [], words: `Write the minutes left as a number from 1 to ${LONGEST}.` };
    if (number !== this.#asked) return;
    list.replaceChildren(make("p", words, { className: "empty" }), ...rows.map((row) => this.#row(row)));
  }

  // The computer's advice; what it says against the number is shown as it says it.
  async #asking(minutes) {
    try {
      const answer = await this.talk.ask(`/exchange/${this.log.inspection}/next?minutes=${encodeURIComponent(minutes)}`, {}, 6_000);
      return { rows: answer.looks, words: answer.why || `${answer.minutes} of ${minutes} minutes, walks between spaces included. ${answer.joint}` };
    } catch (error) {
      if (error instanceof Refusal && error.status === 400) return { rows: [], words: error.message };
      return { rows: this.#alone(Number(minutes)), words: error instanceof Refusal ? error.message : AWAY };
    }
  }

  // The unit in bold; the sentence begins with the check's own title.
  #row({ subject, label, sentence }) {
    const unit = this.plan.sheets.get(this.plan.item(subject)?.sheet)?.name;
    const row = make("button", "", { type: "button", className: "sheet-row advised" });
    row.append(make("b", unit ?? label), make("span", sentence));
    row.addEventListener("click", () => this.open(subject));
    return row;
  }

  // Without the computer: what has no answer, critical before heavy, while it fits.
  #alone(minutes) {
    const waiting = this.plan.items.filter((item) => answerOf(this.log, item.subject) === "open" || this.log.state.value(item.subject, "rating") === "not seen: no time");
    const rank = (item) => (item.source.dataset.critical ? 100 : 0) + Number(item.source.dataset.weight);
    waiting.sort((one, other) => rank(other) - rank(one));
    let left = minutes;
    const chosen = waiting.filter((item) => {
      const fits = Number(item.source.dataset.minutes) <= left;
      if (fits) left -= Number(item.source.dataset.minutes);
      return fits;
    });
    return chosen.map((item) => ({ subject: item.subject, label: item.title,
      sentence: `${item.title}: ${this.plan.spaces.get(item.space)}, ${item.source.dataset.minutes} min${item.source.dataset.critical ? ", critical" : ""}` }));
  }
}
