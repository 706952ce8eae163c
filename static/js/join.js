// Joining: trades the one-time code for a pass of this device's own, keeps the pass, and goes on to
// the shared inspections. Works on plain http: no worker, no cookie is needed to join.

import { byId, find } from "./walk/page/elements.js";
import { keepPass, letRefusedWait, namesUsed, readPass } from "./walk/storage/pass.js";

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
function takeCode() {
  const code = location.hash.slice(1, 21);
  if (!code) return;
  codeField.value = code;
  history.replaceState(null, "", location.pathname);
  nameField.focus();
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

takeCode();
addEventListener("hashchange", takeCode);
form.addEventListener("submit", async (event) => {
  event.preventDefault();
  button.disabled = true;
  showFault("");
  try {
    await join();
    location.assign("/");
  } catch (error) {
    showFault(sentenceOf(error));
    button.disabled = false;
  }
});
