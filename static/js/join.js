// Joining: trades the one-time code for a pass of this device's own, keeps the pass, and goes on to
// what is shared. Works on plain http: no worker, no cookie is needed to join.

import { byId, find } from "./walk/page/elements.js";
import { keepPass, letRefusedWait, namesUsed, readPass } from "./walk/storage/pass.js";

/** What the address carries where a device that is let in goes on over https. */
const MOVE = "move";
// The shorter side of a screen that is held in one hand, in CSS pixels (common practice).
const PHONE_BELOW = 600;

const form = byId("join", HTMLFormElement);
const fault = find(form, ".fault");
const button = find(form, "button", HTMLButtonElement);
const codeField = find(form, "[name=code]", HTMLInputElement);
const nameField = find(form, "[name=name]", HTMLInputElement);

/**
 * The code comes in the address after the #, which no server and no log ever sees; it is taken out
 * of the history at once. A second code may be scanned while this page is still open, which changes
 * only that part of the address.
 */
async function takeCode() {
  const [given = "", number = ""] = location.hash.slice(1, 40).split("&");
  const moves = given.startsWith(MOVE) && given.length > 12;
  if (given) {
    codeField.value = moves ? given.slice(MOVE.length) : given;
    history.replaceState(null, "", location.pathname);
  }
  await proposeName(number);
  // Whoever moves has said so on the page before, and keeps his name.
  if (moves) form.requestSubmit();
}

/**
 * A name that may stay: the one of before, else what the device is, with the laptop's next number.
 *
 * @param {string} number "" where the code was typed
 */
async function proposeName(number) {
  if (nameField.value) return;
  const earlier = await readPass().catch(() => null);
  const side = Math.min(screen.width, screen.height);
  const hasTouch = navigator.maxTouchPoints > 0;
  const handheld = side < PHONE_BELOW ? "phone" : "tablet";
  const kind = hasTouch ? handheld : "computer";
  const isNumber = /^[0-9]{1,3}$/.test(number);
  // Somebody may have typed one meanwhile.
  nameField.value ||= earlier?.name || (isNumber ? `${kind} ${number}` : kind);
}

/** @param {string} sentence "" where there is no fault */
function showFault(sentence) {
  fault.textContent = sentence;
  fault.hidden = !sentence;
}

/**
 * What is sent to join. With its earlier pass a device stays the same; and with all names under
 * which it recorded, what still waits under one of them can be handed over.
 */
async function request() {
  const code = codeField.value;
  const name = nameField.value;
  const earlier = await readPass().catch(() => null);
  const used = await namesUsed().catch(() => []);
  if (!earlier?.token) return { code, name, used };
  return { code, name, used, before: { device: earlier.device, token: earlier.token } };
}

/** @returns {Promise<string>} the page to go on to */
async function join() {
  const response = await fetch("/join", {
    method: "POST",
    body: JSON.stringify(await request()),
    headers: { "Content-Type": "application/json" },
    credentials: "same-origin",
    cache: "no-store",
  });
  const answer = await response.json().catch(() => ({}));
  if (!response.ok || !answer.token) {
    throw new Error(answer.error ?? `The laptop answered ${response.status}.`);
  }
  await keepPass({ token: answer.token, device: answer.device, name: answer.name });
  await letRefusedWait();
  const kept = await readPass();
  if (kept?.token !== answer.token) {
    throw new Error(
      "This browser does not keep what it is given (a private window?). Use an ordinary window.",
    );
  }
  return String(answer.open || "/");
}

/**
 * @param {unknown} error
 * @returns {string}
 */
function sentenceOf(error) {
  // What fetch throws where there is no network at all.
  if (error instanceof TypeError) {
    return "The laptop does not answer. Is this device on its network?";
  }
  return error instanceof Error ? error.message : String(error);
}

form.addEventListener("submit", async (event) => {
  event.preventDefault();
  button.disabled = true;
  showFault("");
  try {
    location.assign(await join());
  } catch (error) {
    showFault(sentenceOf(error));
    button.disabled = false;
  }
});
takeCode();
addEventListener("hashchange", takeCode);
