// Keeps the app itself on this device: registers the service worker, asks whether everything is
// kept, and reports when a newer edition waits. On plain http there is no service worker, and the
// page says that it must stay open.

const PATIENCE_MS = 15_000;
/** As long as 7 MB may take over a weak link. */
const PYTHON_PATIENCE_MS = 120_000;
const EDITION_PATIENCE_MS = 3_000;
const RELOAD_AFTER_MS = 3_000;
const TAKE_OVER_AGAIN_MS = 2_000;
const LOOK_AGAIN_MS = [500, 3_000, 10_000];

/** @typedef {"asking" | "none" | "incomplete" | "complete"} AppState */

/** Tells of `change` when its state has changed. */
export class AppOnDevice extends EventTarget {
  /** @type {AppState} */
  state = "asking";
  /** @type {string} the edition that the computer ships, or "" where it has not said it yet */
  #shipped = "";
  /** @type {string} the edition that waits on this device to take over, or "" */
  #waiting = "";
  /** @type {ServiceWorkerRegistration | undefined} */
  #registration = undefined;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #again = undefined;

  /**
   * @param {string} edition of the page that is open
   * @param {string} checklists address of those of this inspection: the texts of its checks, and
   *   what Python judges by
   */
  constructor(edition, checklists) {
    super();
    this.edition = edition;
    this.checklists = checklists;
  }

  /** Whether this page is of another edition than the newest one known. */
  get old() {
    const newest = this.#shipped || this.#waiting;
    return Boolean(newest) && newest !== this.edition;
  }

  /**
   * What the computer ships now: a page that was kept open across an update learns of it here.
   *
   * @param {string} edition
   */
  learnShipped(edition) {
    if (!edition || edition === this.#shipped) return;
    this.#shipped = edition;
    // The newer page is fetched now, to be there when somebody asks for it.
    if (this.old) this.#registration?.update().catch(() => {});
    this.dispatchEvent(new Event("change"));
  }

  get possible() {
    return "serviceWorker" in navigator;
  }

  /** Begin to keep the app. */
  async open() {
    if (!this.possible) {
      this.#setState("none");
      return;
    }
    try {
      await this.#register();
      await this.check();
    } catch {
      // The computer may be away just now; what an earlier visit kept still counts.
      await this.check().catch(() => this.#setState("none"));
    }
  }

  async #register() {
    const options = { updateViaCache: /** @type {const} */ ("none") };
    const registration = await navigator.serviceWorker.register("/worker.js", options);
    registration.addEventListener("updatefound", () => this.#watch(registration.installing));
    // The browser may have begun to install a newer worker before this page could listen.
    this.#watch(registration.installing);
    this.#registration = registration;
    await navigator.serviceWorker.ready;
  }

  /**
   * A small worker may be installed before its event arrives, so it is looked at again a little
   * later too.
   *
   * @param {ServiceWorker | null} worker
   */
  #watch(worker) {
    if (!worker) return;
    const look = () => this.check().catch(() => {});
    worker.addEventListener("statechange", look);
    for (const wait of LOOK_AGAIN_MS) setTimeout(look, wait);
  }

  /** Ask the worker in charge to keep this page, and whether everything is there. */
  async check() {
    this.#registration ??= await navigator.serviceWorker.getRegistration("/");
    const worker = this.#registration?.active;
    if (!worker) {
      this.#setState("none");
      return;
    }
    // A worker that is asked something while it hands over its place starts anew and keeps it.
    if (await this.#isHandingOver()) return;
    const complete = await this.#askToKeep(worker);
    this.#setState(complete ? "complete" : "incomplete");
  }

  /**
   * Let a waiting worker of this very edition take over: nothing changes under anybody's feet.
   *
   * @returns {Promise<boolean>} whether it is taking over now
   */
  async #isHandingOver() {
    const worker = this.#registration?.waiting;
    const edition = worker
      ? String((await ask(worker, { edition: true }, EDITION_PATIENCE_MS)) ?? "")
      : "";
    if (edition !== this.#waiting) {
      this.#waiting = edition;
      this.dispatchEvent(new Event("change"));
    }
    if (!worker || (edition && edition !== this.edition)) return false;
    // A page that is just being left still counts for a moment, and a busy worker answers late.
    this.#checkAgainLater();
    if (!edition) return false;
    return Boolean(await ask(worker, { takeOverIfAlone: true }, EDITION_PATIENCE_MS));
  }

  #checkAgainLater() {
    clearTimeout(this.#again);
    this.#again = setTimeout(() => this.check().catch(() => {}), TAKE_OVER_AGAIN_MS);
  }

  /**
   * @param {ServiceWorker} worker
   * @returns {Promise<boolean>} whether all of this page is kept
   */
  async #askToKeep(worker) {
    const wanted = { keep: location.pathname, checklists: this.checklists };
    return Boolean(await ask(worker, wanted, PATIENCE_MS));
  }

  /**
   * Ask the worker in charge to keep Python as well, some 7 MB, which is fetched once.
   *
   * @returns {Promise<boolean>} whether all of it is kept
   */
  async keepPython() {
    const worker = this.#registration?.active;
    if (!worker) return false;
    return Boolean(await ask(worker, { keepPython: this.checklists }, PYTHON_PATIENCE_MS));
  }

  /** Take the newer edition. Only a person does this, on this page; what is kept is not touched. */
  takeNewer() {
    const reload = () => location.reload();
    navigator.serviceWorker.addEventListener("controllerchange", reload, { once: true });
    this.#registration?.waiting?.postMessage({ takeOver: true });
    // Where no worker takes over, the page is loaded anew all the same.
    setTimeout(reload, RELOAD_AFTER_MS);
  }

  /** @param {AppState} state */
  #setState(state) {
    if (this.state === state) return;
    this.state = state;
    this.dispatchEvent(new Event("change"));
  }
}

/**
 * @param {ServiceWorker} worker
 * @param {object} question
 * @param {number} patience milliseconds
 * @returns {Promise<unknown>} its answer, or null where none comes
 */
function ask(worker, question, patience) {
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = (event) =>
      resolve(event.data?.answer ?? event.data?.complete ?? null);
    setTimeout(() => resolve(null), patience);
    worker.postMessage(question, [channel.port2]);
  });
}
