// The cautions of a stop as one strip at its head: signal words with the dangers by name. It is
// open in full until somebody of this inspection confirms that all of them were read.

import { byId, find, findIfAny, make } from "../page/elements.js";

/** @import { Log } from "../record/log.js" */

/** The signal word of what hurts no person. */
export const NOTICE = "notice";
// By ISO 3864-2, the more serious first.
export const SIGNALS = ["danger", "warning", "caution", NOTICE];

/**
 * A caution in full, of which the page holds one copy.
 *
 * @param {string} id
 * @returns {HTMLElement}
 */
function cautionBox(id) {
  const { content } = byId(`part-caution-${id}`, HTMLTemplateElement);
  return /** @type {HTMLElement} */ (find(content, ".caution").cloneNode(true));
}

/**
 * @param {string} id of a caution
 * @returns {string} its signal word
 */
export function signalOf(id) {
  const { content } = byId(`part-caution-${id}`, HTMLTemplateElement);
  return find(content, ".caution").dataset.signal ?? "";
}

/** The strip of one stop. */
export class Dangers {
  /** @type {HTMLDetailsElement | null} null where nothing is to be feared there */
  box = null;
  #wasRead = false;
  #isConfirming = false;

  /**
   * @param {Log} log
   * @param {string[]} ids of the cautions of the stop
   * @param {string} stop its id
   */
  constructor(log, ids, stop) {
    this.log = log;
    this.field = `cautions_read/${stop}`;
    this.ids = [...ids].sort();
    if (!ids.length) return;
    const cautions = ids.map(cautionBox);
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
    this.#isConfirming = true;
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
    if (this.#isConfirming && wasRead) {
      // Closed it is short, and the rows below would have gone past.
      this.box.scrollIntoView({ block: "start" });
      this.#isConfirming = false;
    }
    const more = findIfAny(this.box, "summary u");
    if (more) more.hidden = !wasRead;
  }
}

/** @param {HTMLElement} caution */
function rank(caution) {
  return SIGNALS.indexOf(caution.dataset.signal ?? "");
}
