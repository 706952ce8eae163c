// The cautions of a stop as one strip at its head: signal words with the dangers by name. It is
// open in full until somebody of this inspection confirms that all of them were read.

import { findIfAny, make } from "../page/elements.js";

/** @import { Log } from "../record/log.js" */

// By ISO 3864-2, the more serious first.
const SIGNALS = ["danger", "warning", "caution", "notice"];

/** The strip of one stop. */
export class Dangers {
  /** @type {HTMLDetailsElement | null} null where nothing is to be feared there */
  box = null;
  #wasRead = false;

  /**
   * @param {Log} log
   * @param {HTMLElement[]} cautions of the stop, in full
   * @param {string} stop its id
   */
  constructor(log, cautions, stop) {
    this.log = log;
    this.field = `cautions_read/${stop}`;
    this.ids = cautions.map((caution) => caution.dataset.caution ?? "").sort();
    if (!cautions.length) return;
    this.box = make("details", "", { className: "dangers", open: true });
    const summary = make("summary");
    summary.append(make("i", "⚠"), ...this.#names(cautions), make("u", "what to do instead"));
    this.button = make("button", "read and understood", { type: "button", className: "main" });
    this.button.addEventListener("click", () => this.#confirm());
    const bySignal = [...cautions].sort((a, b) => rank(a) - rank(b));
    this.box.append(summary, ...bySignal, this.button);
  }

  /**
   * @param {HTMLElement[]} cautions
   * @returns {HTMLElement[]} each signal word with the names of its dangers
   */
  #names(cautions) {
    const words = SIGNALS.map((signal) => {
      const names = cautions
        .filter((caution) => caution.dataset.signal === signal)
        .map((caution) => (caution.dataset.caution ?? "").replaceAll("-", " "));
      if (!names.length) return null;
      const span = make("span");
      span.append(make("b", signal.toUpperCase()), ` ${names.join(", ")} `);
      return span;
    });
    return words.filter((span) => span !== null);
  }

  #confirm() {
    const changes = /** @type {import("../record/log.js").Change[]} */ ([
      ["inspection", this.field, this.ids.join(" ")],
    ]);
    const act = this.log.record(changes, "recorded: cautions read");
    act.catch(() => {}); // the log itself reports what could not be kept
  }

  /** Close once what is shown was confirmed as read; what was added later opens it again. */
  paint() {
    if (!this.box || !this.button) return;
    const read = String(this.log.state.value("inspection", this.field) ?? "").split(" ");
    const wasRead = this.ids.every((id) => read.includes(id));
    // Opened by hand afterwards it stays so.
    if (wasRead !== this.#wasRead) this.box.open = !wasRead;
    this.#wasRead = wasRead;
    this.button.hidden = wasRead;
    const more = findIfAny(this.box, "summary u");
    if (more) more.hidden = !wasRead;
  }
}

/** @param {HTMLElement} caution */
function rank(caution) {
  return SIGNALS.indexOf(caution.dataset.signal ?? "");
}
