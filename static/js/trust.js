// The way to trust: says whether this device trusts the laptop or not yet, by asking it for one
// picture over https, and goes on there once it does and nothing waits here.

import { byId, find, findAll } from "./walk/page/elements.js";
import { readPass } from "./walk/storage/pass.js";
import { countWaiting } from "./walk/storage/waiting.js";

const PATIENCE_MS = 8_000;

const secure = find(document, ".trust").dataset.secure ?? "";

/** @returns {Promise<boolean>} whether the picture came, which takes a trusted certificate */
function isTrusted() {
  return new Promise((resolve) => {
    const image = new Image();
    image.onload = () => resolve(true);
    image.onerror = () => resolve(false);
    setTimeout(() => resolve(false), PATIENCE_MS);
    image.src = `${secure}/here.svg?${Date.now()}`;
  });
}

/**
 * @param {string} verdict
 * @param {string} words
 * @param {boolean} goesOn
 */
function say(verdict, words, goesOn) {
  byId("verdict").textContent = verdict;
  byId("verdict-words").textContent = words;
  byId("go-on").hidden = !goesOn;
}

async function check() {
  showFault("");
  if (!(await isTrusted())) {
    say("Not trusted yet.", "Go through the steps below, then check again.", false);
    byId("steps").hidden = false;
    return;
  }
  byId("steps").hidden = true;
  const waiting = await countWaiting().catch(() => 0);
  if (waiting) {
    const words =
      `First hand over: ${waiting} ${waiting === 1 ? "entry waits" : "entries wait"} in this ` +
      "page's own store, which is another one from then on. Go back to the walk, tap " +
      "“hand over now”, then come here again.";
    say("Trusted.", words, false);
    return;
  }
  say("Trusted.", "From the next tap on the walk has another address: keep to that one.", true);
}

/** @param {string} sentence "" where there is no fault */
function showFault(sentence) {
  const fault = byId("trust-fault");
  fault.textContent = sentence;
  fault.hidden = !sentence;
}

/** @returns {Promise<string>} where to go on */
async function addressToGoOn() {
  const pass = await readPass().catch(() => null);
  // Who has not joined yet joins over there.
  if (!pass) return `${secure}/join`;
  const response = await fetch("/join/move", {
    method: "POST",
    headers: { Authorization: `Bearer ${pass.token}` },
    cache: "no-store",
  });
  const answer = await response.json().catch(() => ({}));
  if (!response.ok) throw new Error(answer.error ?? `The laptop answered ${response.status}.`);
  return answer.address;
}

async function goOn() {
  try {
    location.assign(await addressToGoOn());
  } catch (error) {
    const isAway = error instanceof TypeError;
    const message = error instanceof Error ? error.message : String(error);
    showFault(isAway ? "The laptop does not answer. Is this device on its network?" : message);
  }
}

/** Unfold the steps of this device's family, by its own name for itself. */
function unfoldOwnFamily() {
  const { userAgent, maxTouchPoints } = navigator;
  // An iPad calls itself a Macintosh, which has no touch screen.
  const isApple =
    /iPhone|iPad|iPod/.test(userAgent) || (/Macintosh/.test(userAgent) && maxTouchPoints > 1);
  for (const family of findAll(document, ".family", HTMLDetailsElement)) {
    family.open = family.dataset.family === (isApple ? "apple" : "android");
  }
}

if (secure) {
  unfoldOwnFamily();
  byId("check-again").addEventListener("click", check);
  byId("go-on").addEventListener("click", goOn);
  // Back from the settings, the answer may be another one.
  addEventListener("focus", check);
  check();
}
