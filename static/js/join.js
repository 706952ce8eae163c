// Joining: trades the one-time code for a pass of this device's own, keeps the pass, and goes on to the shared inspections.
// Works on plain http: no worker, no cookie is needed to join.

import { keepPass, readPass } from "/static/js/walk/pass.js";

const form = document.getElementById("join");
const fault = form.querySelector(".fault");

// The code comes in the address after the #, which no server and no log ever sees; it is taken out of the history at once.
// A second code may be scanned while this page is still open, which changes only that part of the address.
function takeCode() {
  const brought = location.hash.slice(1, 21);
  if (!brought) return;
  form.elements.code.value = brought;
  history.replaceState(null, "", location.pathname);
  form.elements.name.focus();
}

takeCode();
addEventListener("hashchange", takeCode);

function tell(sentence) {
  fault.textContent = sentence;
  fault.hidden = !sentence;
}

async function join() {
  const earlier = await readPass().catch(() => null);
  const body = { code: form.elements.code.value, name: form.elements.name.value };
  // With its earlier pass it stays the same device, so that what still waits in it can be handed over.
  if (earlier?.token) body.before = { device: earlier.device, token: earlier.token };
  const response = await fetch("/join", {
    method: "POST", body: JSON.stringify(body), headers: { "Content-Type": "application/json" }, credentials: "same-origin", cache: "no-store",
  });
  const answer = await response.json().catch(() => ({}));
  if (!response.ok || !answer.token) throw new Error(answer.error ?? `The laptop answered ${response.status}.`);
  await keepPass({ token: answer.token, device: answer.device, name: answer.name });
  const kept = await readPass();
  if (kept?.token !== answer.token) throw new Error("This browser does not keep what it is given (a private window?). Use an ordinary window.");
}

form.addEventListener("submit", async (event) => {
  event.preventDefault();
  const button = form.querySelector("button");
  button.disabled = true;
  tell("");
  try {
    await join();
    location.assign("/");
  } catch (error) {
    tell(error instanceof TypeError ? "The laptop does not answer. Is this device on its network?" : error.message);
    button.disabled = false;
  }
});
