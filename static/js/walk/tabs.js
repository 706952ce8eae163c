// Other tabs of this browser on the same inspection: they hear what is recorded here at once, and the strip says that they are there.

export class Tabs extends EventTarget {
  others = false;
  #channel = null;
  #heard = 0;

  constructor(log) {
    super();
    this.log = log;
  }

  open() {
    if (typeof BroadcastChannel !== "function") return;
    this.#channel = new BroadcastChannel(`walk/${this.log.inspection}`);
    this.#channel.onmessage = (event) => this.#hear(event.data);
    this.log.addEventListener("recorded", (event) => this.#channel.postMessage({ entries: event.detail }));
    this.#channel.postMessage({ here: true });
    setInterval(() => this.#look(), 10_000);
    addEventListener("pagehide", () => this.#channel.postMessage({ gone: true }));
  }

  #look() {
    if (this.others && Date.now() - this.#heard > 25_000) this.#set(false);
    this.#channel.postMessage({ here: true, echo: true });
  }

  #hear({ entries, here, echo, gone }) {
    this.#heard = Date.now();
    if (entries) this.log.hear(entries);
    if (here && !echo) this.#channel.postMessage({ here: true, echo: true });
    this.#set(!gone);
  }

  #set(others) {
    if (this.others === others) return;
    this.others = others;
    this.dispatchEvent(new Event("change"));
  }
}
