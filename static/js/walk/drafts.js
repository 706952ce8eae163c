// What is being typed, kept half-typed: a tab that is killed tells nobody. A draft is recorded as it stands when the page
// opens again, and the history and "undo" hold what was there before.

import { dropMeta, metaWith, setMeta } from "./database.js";

const PAUSE = 400;
const timers = new Map();

const keyOf = (inspection, subject, field) => `draft/${inspection}/${subject}|${field}`;

// What a field of a card would be recorded as: [field, value], or null for anything else.
function draftOf(card, target) {
  if ("note" in target.dataset) return ["note", target.value.trim() || null];
  const id = target.dataset.reading;
  if (!id) return null;
  const unit = card.querySelector(`[data-unit-of="${id}"]`);
  return [`reading/${id}`, target.value.trim() ? { value: target.value.trim(), ...(unit ? { unit: unit.value } : {}) } : null];
}

export function keepDrafts(log, root) {
  root.addEventListener("input", (event) => {
    const card = event.target.closest("article.check");
    const draft = card && draftOf(card, event.target);
    if (!draft) return;
    const key = keyOf(log.inspection, card.dataset.subject, draft[0]);
    clearTimeout(timers.get(key));
    timers.set(key, setTimeout(() => setMeta(key, draft[1]).catch(() => {}), PAUSE));
  });
  log.addEventListener("recorded", (event) => {
    for (const { subject, field } of event.detail) drop(keyOf(log.inspection, subject, field));
  });
}

function drop(key) {
  clearTimeout(timers.get(key));
  timers.delete(key);
  dropMeta(key).catch(() => {});
}

// Record what an earlier tab left half-typed.
export async function recordDrafts(log) {
  const prefix = `draft/${log.inspection}/`;
  for (const [key, value] of await metaWith(prefix)) {
    const [subject, field] = key.slice(prefix.length).split("|");
    await log.record(log.unlessShown([[subject, field, value]]), "what was being typed when the page closed");
    await dropMeta(key);
  }
}
