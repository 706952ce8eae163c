// Other tabs of this browser on the same inspection: they receive what is recorded here at once,
// and the strip says that they are open.

/** @import { Entry } from "../storage/entry_store.js" */
/** @import { Log } from "./log.js" */

/**
 * What tabs send one another.
 *
 * @typedef {object} TabMessage
 * @property {Entry[]} [entries] recorded there just now
 * @property {boolean} [here] the tab is open
 * @property {boolean} [echo] an answer, which needs none itself
 * @property {boolean} [gone] the tab is being closed
 */

const LOOK_EVERY_MS = 10_000;
const CLOSED_AFTER_MS = 25_000;

/** Tells of `change` when another tab was opened or closed. */
export class OtherTabs extends EventTarget {
  open = false;
  /** @type {BroadcastChannel | null} */
  #channel = null;
  #lastMessage = 0;

  /** @param {Log} log */
  constructor(log) {
    super();
    this.log = log;
  }

  /** Begin to exchange what is recorded. */
  connect() {
    if (typeof BroadcastChannel !== "function") return;
    this.#channel = new BroadcastChannel(`walk/${this.log.inspection}`);
    this.#channel.onmessage = (event) => this.#received(event.data);
    this.log.addEventListener("recorded", (event) => {
      this.#send({ entries: /** @type {CustomEvent<Entry[]>} */ (event).detail });
    });
    this.#send({ here: true });
    setInterval(() => this.#look(), LOOK_EVERY_MS);
    addEventListener("pagehide", () => this.#send({ gone: true }));
  }

  /** @param {TabMessage} message */
  #send(message) {
    this.#channel?.postMessage(message);
  }

  // A tab that is killed sends nothing, so a long silence counts as closed.
  #look() {
    const silent = Date.now() - this.#lastMessage > CLOSED_AFTER_MS;
    if (this.open && silent) this.#set(false);
    this.#send({ here: true, echo: true });
  }

  /** @param {TabMessage} message */
  #received({ entries, here, echo, gone }) {
    this.#lastMessage = Date.now();
    if (entries) this.log.addFromOtherTab(entries);
    if (here && !echo) this.#send({ here: true, echo: true });
    this.#set(!gone);
  }

  /** @param {boolean} open */
  #set(open) {
    if (this.open === open) return;
    this.open = open;
    this.dispatchEvent(new Event("change"));
  }
}
