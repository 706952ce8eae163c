// What is asked before anyone goes into an enclosed space. It cannot be passed by rating at once: first it is said how the
// space was looked at, and "entered" needs permit, attendant, instrument and the four readings in their order.
// It records what people say. It gives no permission, and it never says that an entry is safe.

import { numberOf } from "./judge.js";

const ASKED = ["permit", "attendant", "instrument"];
const HOW = ["not entered", "from outside", "entered"];

// The gate's answer as it is shown; earlier records said "yes" or "no" to entered.
function how(gate) {
  if (gate.entered === "yes") return "entered";
  if (gate.entered === "no") return "from outside";
  return HOW.includes(gate.entered) ? gate.entered : "";
}

export function paintGate(log, card) {
  const box = card.querySelector(".gate");
  if (!box) return;
  const gate = log.state.value(card.dataset.subject, "gate") ?? {};
  for (const button of box.querySelectorAll("[data-gate]")) {
    const { gate: key, is } = button.dataset;
    button.setAttribute("aria-pressed", String((key === "entered" ? how(gate) : gate[key]) === is));
  }
  for (const input of box.querySelectorAll("[data-air]")) {
    if (document.activeElement !== input) input.value = gate[input.dataset.air] ?? "";
  }
  const chosen = how(gate);
  card.querySelector(".answers").hidden = !chosen || chosen === "not entered";
  say(box, chosen === "entered" || !chosen ? outside(box, gate) : "");
}

function say(box, sentence) {
  const odd = box.querySelector("[data-gate-odd]");
  odd.hidden = !sentence;
  odd.textContent = sentence;
}

// What lies outside the recommended figures, or cannot be read, as one sentence; "" where nothing does.
function outside(box, gate) {
  const wrong = [];
  for (const { dataset } of box.querySelectorAll("[data-air]")) {
    const typed = (gate[dataset.air] ?? "").trim(), value = numberOf(typed);
    if (typed && value === null) wrong.push(`${dataset.label} must be a number such as 20.9`);
    else if (value !== null && dataset.least && value < Number(dataset.least)) wrong.push(`${dataset.label} of ${typed} % is below ${dataset.least} %`);
    else if (value !== null && value >= Number(dataset.below)) wrong.push(`${dataset.label} of ${typed} % is not below ${dataset.below} %`);
  }
  return wrong.length ? `Outside the recommended figures: ${wrong.join("; ")}. Nobody goes in on these readings; look from outside.` : "";
}

// What keeps "entered" from being recorded, as one sentence; "" where nothing does.
function hindrance(box, gate) {
  if (!ASKED.every((key) => gate[key] === "yes")) return "Without permit, attendant and a calibrated instrument nobody goes in. Answer the three with yes, or look from outside.";
  const missing = [...box.querySelectorAll("[data-air]")].filter((input) => !(gate[input.dataset.air] ?? "").trim());
  if (missing.length) return `Not determined, for want of ${missing.map((input) => input.dataset.label).join(", ")}. Copy the readings in their order, or look from outside.`;
  return outside(box, gate);
}

// A tap or a typed figure within the gate -> the changes to record. A gate that no longer holds takes its "entered" away.
export function answerGate(log, card, target) {
  const { subject } = card.dataset;
  const box = card.querySelector(".gate");
  const gate = { ...log.state.value(subject, "gate") };
  const key = target.dataset.air ?? target.dataset.gate;
  const is = target.dataset.air ? target.value.trim() : target.dataset.is;
  if ((gate[key] ?? "") === is) return [];
  const wanted = { ...gate, [key]: is };
  if (target.dataset.air && !is) delete wanted[key];
  const stops = how(wanted) === "entered" ? hindrance(box, wanted) : "";
  if (stops && key === "entered") {
    say(box, stops);
    return [];
  }
  if (stops) delete wanted.entered;
  const unseen = key === "entered" && is === "not entered" && !log.state.value(subject, "rating");
  return [["gate", wanted], ...(unseen ? [["rating", "not seen: no access"]] : [])];
}
