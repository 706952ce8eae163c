// Ready to go below: what must be on this device before the link is gone, proved line by line and not assumed.

import { dropMeta, meta, setMeta } from "./database.js";
import { askToPersist, enough, storage } from "./device.js";
import { allEntries } from "./kept.js";
import { isHere } from "./thumbs.js";

const YES = "ready", NO = "not ready", UNKNOWN = "cannot be known here";

const make = (tag, text, more = {}) => Object.assign(document.createElement(tag), { textContent: text, ...more });

async function sheets({ plan }) {
  const count = plan.items.length, sheet = plan.sheets.size;
  return count ? [YES, `${count} checks on ${sheet} sheets are in this page.`] : [NO, "No unit is counted yet. Count what is on board under “prepare”, then load this page again."];
}

async function entries({ handover, log }) {
  if (!handover.lastContact) return [NO, `This page has not spoken with ${handover.host} since it was opened. Go near it, wait for the strip, and look again.`];
  const { length } = await allEntries(log.inspection);
  return [YES, `All that is recorded so far (${length} entries) is here, last fetched from ${handover.host} at ${handover.lastContact.toLocaleTimeString([], { hour12: false })}.`];
}

async function photos({ log }) {
  const shas = log.state.subjects("photo/").map((subject) => subject.slice(6));
  const here = await Promise.all(shas.map((sha) => isHere(log.inspection, sha)));
  const away = here.filter((one) => !one).length;
  if (away) return [NO, `${away} of ${shas.length} photos cannot be looked at here. The computer or another device still has to hand them over; look again then.`];
  return [YES, shas.length ? `Every photo known so far (${shas.length}) can be looked at here.` : "No photo was taken so far."];
}

async function app({ appHere }) {
  if (!appHere.possible) return [NO, "On this address the browser cannot keep the page itself: leave it open until you are back. What you record is kept even so."];
  await appHere.check();
  if (appHere.state === "complete") return [YES, "The page opens without the computer, also after it was closed."];
  return [NO, "The page itself is not kept yet. Stay near the computer and look again; until then leave the page open."];
}

// What can be done about it here, by what the browser calls itself; every browser of an iPhone or iPad keeps by the same rule.
function remedy() {
  const { userAgent, maxTouchPoints } = navigator;
  if (/iPhone|iPad|iPod/.test(userAgent) || (/Macintosh/.test(userAgent) && maxTouchPoints > 1)) {
    return "Tap “Share”, then “Add to Home Screen”, and open the walk from there before you record: what is kept there is its own, so it may ask to join once more.";
  }
  if (/Android|Chrome/.test(userAgent)) {
    return "Open the browser's menu and choose “Install” or “Add to home screen”, or bookmark this page; use it a few minutes more, then look again.";
  }
  return "This browser offers no way to ask for it.";
}

async function persistence() {
  const asked = await askToPersist();
  const { persistent } = await storage();
  if (asked === null && persistent === null) return [UNKNOWN, "This browser does not say. Do not use a private window, and hand over before the browser's data are cleared."];
  if (asked === null && !persistent) return [NO, "The browser asks whether it may keep what this page stores: answer yes, then look again."];
  if (persistent) return [YES, "The browser has promised not to clear what is kept."];
  return [NO, `The browser may clear what is kept when the device runs short of space. ${remedy()} Until this line is ready: keep space free, and hand over before you close the page.`];
}

async function space() {
  const { left } = await storage();
  if (left === null) return [UNKNOWN, "This browser does not say how much space is left. Look in the settings of the device: 500 MB should be free."];
  const megabytes = Math.round(left / 1e6);
  return enough(left) ? [YES, `${megabytes} MB are free for this page.`] : [NO, `${megabytes} MB are free, and a day of photos takes 500 MB. Free some space on this device.`];
}

async function clock({ talk }) {
  await talk.session().catch(() => {}); // a fresh look; where nobody answers, the last one counts
  if (talk.offset === null) return [UNKNOWN, "The computer has not told its time yet. Look again when it answers."];
  const seconds = Math.round(Math.abs(talk.offset) / 1000);
  if (seconds <= 120) return [YES, `This device's clock and the computer's are ${seconds} s apart.`];
  return [NO, `This device's clock is ${Math.round(seconds / 60)} min ${talk.offset > 0 ? "ahead of" : "behind"} the computer's. No answer is lost by it, but times will read wrong: set the clock.`];
}

async function record() {
  const mark = `${Date.now()}-${Math.random()}`, key = `test-record/${mark}`;
  await setMeta(key, mark);
  const back = await meta(key);
  await dropMeta(key);
  return back === mark ? [YES, "A test record was written to the device and read back."] : [NO, "A test record could not be read back: this device does not keep what you write. Use another one."];
}

const LINES = [["sheets and checks", sheets], ["what was recorded so far", entries], ["photos", photos], ["the app itself", app], ["kept for good", persistence],
  ["free space", space], ["clock", clock], ["writing and reading", record]];

async function line(name, prove, parts) {
  // A proof that fails is no proof: its reason is shown, and the line is not ready.
  const [word, sentence] = await prove(parts).catch((error) => [NO, `This could not be tested: ${error.message}.`]);
  const item = document.createElement("li");
  item.dataset.ready = word;
  item.append(make("b", name), make("span", word), make("small", sentence));
  return { item, word, name };
}

// The sentence over all lines names what is missing.
function verdict(lines) {
  const missing = lines.filter((one) => one.word === NO).map((one) => one.name);
  if (missing.length) return `Not ready yet: ${missing.join(", ")}.`;
  return lines.some((one) => one.word === UNKNOWN) ? "Ready as far as it can be known here." : "Ready to go below.";
}

export class Ready {
  where = "ready to go below";
  #looks = 0;

  constructor(parts) {
    this.parts = parts;
  }

  async paint(box) {
    const look = (this.#looks += 1);
    const again = make("button", "look again", { type: "button", className: "main" });
    again.addEventListener("click", () => this.paint(box));
    const head = make("h2", "Looking…");
    head.setAttribute("aria-live", "polite");
    if (!box.querySelector("ul")) box.replaceChildren(head);
    const lines = await Promise.all(LINES.map(([name, prove]) => line(name, prove, this.parts)));
    if (look !== this.#looks) return; // a later look has begun
    head.textContent = verdict(lines);
    const list = make("ul", "", { className: "ready" });
    list.append(...lines.map((one) => one.item));
    const newer = make("button", "take the newer page now", { type: "button" });
    newer.addEventListener("click", () => this.parts.appHere.takeNewer());
    box.replaceChildren(head, list, again, ...(this.parts.appHere.old ? [newer] : []));
  }
}
