// What is asked before anyone goes into an enclosed space. It cannot be passed by rating at once: first it is said how the
// space was looked at, and "entered" needs permit, attendant, instrument and the four readings in their order.
// It records what people say. It gives no permission, and it never says that an entry is safe.

import { numberOf } from "./judge.js";

const ASKED = ["permit", "attendant", "instrument"];
const HOW = ["not entered", "from outside", "entered"];
const RATINGS = ["good", "fair", "poor", "failed"];
// Figures typed and not yet recorded, by subject: painting must not put the older figure over them.
const waiting = new Map();

// The gate's answer as it is shown; earlier records said "yes" or "no" to entered.
function how(gate) {
  if (gate.entered === "yes") return "entered";
  if (gate.entered === "no") return "from outside";
  return HOW.includes(gate.entered) ? gate.entered : "";
}

export function paintGate(log, card) {
  const box = card.querySelector(".gate");
  if (!box) return;
  const gate = { ...log.state.value(card.dataset.subject, "gate"), ...waiting.get(card.dataset.subject) };
  for (const button of box.querySelectorAll("[data-gate]")) {
    const { gate: key, is } = button.dataset;
    button.setAttribute("aria-pressed", String((key === "entered" ? how(gate) : gate[key]) === is));
  }
  for (const input of box.querySelectorAll("[data-air]")) {
    if (document.activeElement !== input) input.value = gate[input.dataset.air] ?? "";
  }
  const chosen = how(gate);
  const shut = !chosen || chosen === "not entered";
  const stands = shut ? whatStands(log, card, chosen) : "";
  card.querySelector(".answers").hidden = shut && !stands;
  for (const button of card.querySelectorAll("[data-rate]")) button.disabled = shut && button.dataset.rate !== standing(log, card);
  say(box, [stands, chosen === "entered" || !chosen ? outside(box, gate) : ""].filter(Boolean).join(" "));
}

// The rating that stands on a card, or "".
function standing(log, card) {
  const rating = log.state.value(card.dataset.subject, "rating");
  return RATINGS.includes(rating) ? rating : "";
}

// A rating that was given before the gate was shut stands and counts as seen: that is said, and nothing more can be rated.
function whatStands(log, card, chosen) {
  const rating = standing(log, card);
  if (!rating) return "";
  const why = chosen ? "though the space was not entered" : "and counts as seen";
  return `The rating given stands (${rating}) ${why}; say again how it was looked at, or tap the rating to take it away.`;
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

// A tap or a typed figure within the gate, as it is now: {key, is, air}.
function answered({ dataset, value }) {
  return dataset.air ? { key: dataset.air, is: value.trim(), air: true } : { key: dataset.gate, is: dataset.is, air: false };
}

// Record an answer. It is merged into the gate when its turn comes, so that answers given quickly do not lose one another.
export async function recordGate(log, card, target) {
  const answer = answered(target), { subject } = card.dataset;
  if (answer.air) waiting.set(subject, { ...waiting.get(subject), [answer.key]: answer.is });
  await log.record(() => changesOf(log, card, answer), "recorded: what was asked before going in");
  const waits = waiting.get(subject);
  if (answer.air && waits?.[answer.key] === answer.is) delete waits[answer.key];
}

// An answer -> the changes to record. A gate that no longer holds takes its "entered" away.
function changesOf(log, card, { key, is, air }) {
  const { subject } = card.dataset;
  const box = card.querySelector(".gate");
  const gate = { ...log.state.value(subject, "gate") };
  if ((gate[key] ?? "") === is) return [];
  const wanted = { ...gate, [key]: is };
  if (air && !is) delete wanted[key];
  const stops = how(wanted) === "entered" ? hindrance(box, wanted) : "";
  if (stops && key === "entered") {
    say(box, stops);
    return [];
  }
  if (stops) delete wanted.entered;
  const unseen = key === "entered" && is === "not entered" && !log.state.value(subject, "rating");
  return [[subject, "gate", wanted], ...(unseen ? [[subject, "rating", "not seen: no access"]] : [])];
}
