// Keeps the app itself on this device: registers the service worker, asks whether all is kept, and tells when a newer edition
// waits. On plain http there is no service worker, and the page says that it must stay open.

export class AppHere extends EventTarget {
  state = "asking";
  old = false;
  #registration = null;

  get possible() {
    return "serviceWorker" in navigator;
  }

  async open() {
    if (!this.possible) return this.#is("none");
    try {
      this.#registration = await navigator.serviceWorker.register("/worker.js", { updateViaCache: "none" });
      this.#registration.addEventListener("updatefound", () => this.#watch(this.#registration.installing));
      await navigator.serviceWorker.ready;
      await this.check();
    } catch {
      // The computer may be away just now; what an earlier visit kept still counts.
      await this.check().catch(() => this.#is("none"));
    }
  }

  // A small worker may be installed before its event is heard, so it is looked at again a little later too.
  #watch(worker) {
    const look = () => this.check().catch(() => {});
    worker?.addEventListener("statechange", look);
    for (const wait of [500, 3_000, 10_000]) setTimeout(look, wait);
  }

  // Ask the worker in charge to keep this page, and whether everything is there.
  async check() {
    this.#registration ??= await navigator.serviceWorker.getRegistration("/");
    const worker = this.#registration?.active;
    if (!worker) return this.#is("none");
    const waits = Boolean(this.#registration.waiting);
    if (waits !== this.old) queueMicrotask(() => this.dispatchEvent(new Event("change")));
    this.old = waits;
    const kept = await this.#ask(worker, { keep: location.pathname });
    return this.#is(kept ? "complete" : "incomplete");
  }

  #ask(worker, message) {
    return new Promise((resolve) => {
      const channel = new MessageChannel();
      channel.port1.onmessage = (event) => resolve(Boolean(event.data?.complete));
      setTimeout(() => resolve(false), 15_000);
      worker.postMessage(message, [channel.port2]);
    });
  }

  // Take the newer edition. Only a person does this, on this page; nothing that is kept is touched by it.
  takeNewer() {
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
    this.#registration?.waiting?.postMessage({ takeOver: true });
    setTimeout(() => location.reload(), 3_000);
  }

  #is(state) {
    if (this.state === state) return;
    this.state = state;
    this.dispatchEvent(new Event("change"));
  }
}
