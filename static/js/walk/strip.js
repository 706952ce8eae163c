// The strip that is always in sight: where the work is, in words, and what is wrong if something is. Never a bare "saved".

import { alarm } from "./status.js";

const counted = (number, one, many) => `${number} ${number === 1 ? one : many}`;
const clock = (iso) => new Date(iso).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", hour12: false });
const day = (iso) => (new Date(iso).toDateString() === new Date().toDateString() ? "" : `${new Date(iso).toLocaleDateString([], { day: "numeric", month: "short" })} `);

function whatWaits({ queued, photos, since }) {
  const waits = [queued && String(queued), photos && counted(photos, "photo", "photos")].filter(Boolean).join(" and ");
  return waits && `kept here · ${waits} to hand over${since ? ` since ${day(since)}${clock(since)}` : ""}`;
}

// What is wrong, each in a few words; the strip stays quiet about what is right.
function whatIsWrong({ refused, trouble }, { old, others, spaceLeft }) {
  const wrong = [];
  if (trouble) wrong.push(trouble);
  if (refused.length) wrong.push(`refused entries: ${refused.length}`);
  if (spaceLeft !== null && spaceLeft < 200e6) wrong.push(`storage nearly full: ${Math.round(spaceLeft / 1e6)} MB left`);
  if (old) wrong.push("this tab is old: load it anew when convenient");
  if (others) wrong.push("open in another tab too");
  return wrong;
}

// The whole sentence. "All handed over" only where the computer's own count has proved it.
function whereItIs(handover, device) {
  const proved = handover.proved ? `all handed over to ${handover.host}` : "";
  const settled = handover.trouble || handover.refused.length ? "kept here, nothing else waits" : `handed over, ${handover.host} has not confirmed it yet`;
  return [whatWaits(handover) || proved || settled, ...whatIsWrong(handover, device)].join(" · ");
}

export function paintStripWords(handover, device) {
  const strip = document.getElementById("strip");
  const words = whereItIs(handover, device);
  // A live region speaks when its text changes, so it is touched only then.
  if (strip.textContent !== words) strip.textContent = words;
  strip.classList.toggle("wrong", whatIsWrong(handover, device).length > 0);
  for (const button of document.querySelectorAll("[data-go=refused]")) {
    button.hidden = !handover.refused.length;
    button.querySelector("b").textContent = handover.refused.length;
  }
  if (handover.refused.length) alarm(`Refused by ${handover.host}, kept on this device: ${handover.refused[0].why.replace(/^refused: /, "")}`);
}
