// Our own Python on this device, in a worker beside the page. It starts once the page can be used,
// and a device that cannot run it says so; nothing waits for it.

/**
 * @typedef {object} Addresses
 * @property {string} runtime folder of Python for the browser
 * @property {string} modules our own modules, as a zip
 * @property {string} checklists of this inspection, as JSON
 */

/** @typedef {"not started" | "starting" | "ready" | "impossible"} PythonState */

/**
 * @typedef {object} Owed an answer that the worker still owes
 * @property {(answer: any) => void} resolve
 * @property {(error: Error) => void} reject
 */

/**
 * What the worker says: once that it is ready or why not, then an answer to each question.
 *
 * @typedef {object} Said
 * @property {boolean} [ready]
 * @property {string} [failed]
 * @property {number} [number] of the question
 * @property {string} [found] the answer as JSON
 * @property {string} [problem] why there is none
 */

/** Tells of `change` when its state has changed. */
export class Python extends EventTarget {
  /** @type {PythonState} */
  state = "not started";
  /** Why this device cannot run it, or "". */
  why = "";
  /** @type {number | null} how long it took to start [ms] */
  startedIn = null;
  /** @type {Worker | null} */
  #worker = null;
  #lastNumber = 0;
  /** @type {Map<number, Owed>} */
  #owed = new Map();

  /** @param {Addresses} addresses of what it needs */
  constructor(addresses) {
    super();
    this.addresses = addresses;
  }

  /** Try once more where it could not be started. */
  startAgain() {
    if (this.state === "impossible") this.start();
  }

  /** Start it. */
  start() {
    if (this.state === "starting" || this.state === "ready") return;
    if (typeof WebAssembly === "undefined" || typeof Worker === "undefined") {
      this.#end("the browser cannot run it");
      return;
    }
    this.#set("starting");
    const begun = performance.now();
    const address = new URL("./python_worker.js", import.meta.url);
    const worker = new Worker(address, { type: "module" });
    worker.onmessage = ({ data }) => {
      if (data.ready) this.startedIn = performance.now() - begun;
      this.#hear(data);
    };
    // A browser without module workers, or one that ran out of memory, ends here.
    worker.onerror = (event) => this.#end(event.message || "its worker could not be started");
    worker.postMessage({ start: this.addresses });
    this.#worker = worker;
  }

  /**
   * Ask it something; it answers in the order in which it is asked.
   *
   * @param {string} question one of QUESTIONS in inspector/in_browser/door.py
   * @param {any} given as it becomes JSON
   * @returns {Promise<any>}
   */
  ask(question, given) {
    const worker = this.#worker;
    if (!worker) return Promise.reject(new Error("Python is not running on this device."));
    this.#lastNumber += 1;
    const number = this.#lastNumber;
    return new Promise((resolve, reject) => {
      this.#owed.set(number, { resolve, reject });
      worker.postMessage({ asked: { number, question, given: JSON.stringify(given) } });
    });
  }

  /** @param {Said} said */
  #hear({ ready, failed, number, found, problem }) {
    if (ready) this.#set("ready");
    if (failed) this.#end(failed);
    const owed = number === undefined ? undefined : this.#owed.get(number);
    if (!owed || number === undefined) return;
    this.#owed.delete(number);
    const said = found ? JSON.parse(found) : { problem };
    if ("answer" in said) owed.resolve(said.answer);
    else owed.reject(new Error(said.problem));
  }

  /** @param {string} why it cannot run here */
  #end(why) {
    this.#worker?.terminate();
    this.#worker = null;
    this.why = why;
    for (const { reject } of this.#owed.values()) reject(new Error(why));
    this.#owed.clear();
    this.#set("impossible");
  }

  /** @param {PythonState} state */
  #set(state) {
    if (state === this.state) return;
    this.state = state;
    if (state !== "impossible") this.why = "";
    this.dispatchEvent(new Event("change"));
  }
}
