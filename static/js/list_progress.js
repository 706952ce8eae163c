// While inspections are read for the list: how many are done, and the list again when they are.

import { byId, find } from "./walk/page/elements.js";

const EVERY = 2000; // milliseconds

/** @param {HTMLElement} place */
async function follow(place) {
  const answer = await fetch("/list/progress");
  if (!answer.ok) return;
  const { done, total, running } = await answer.json();
  find(place, "output").textContent = `: ${done} of ${total} done`;
  if (running) {
    setTimeout(() => follow(place).catch(() => {}), EVERY);
    return;
  }
  // Not while somebody types a name or has ticked candidates: the link beside shows the list.
  if (document.activeElement === document.body) location.reload();
}

const place = byId("reading");
if (place.dataset.running === "yes") follow(place).catch(() => {});
