// The strip that is always in sight: where the work is, in words, and what is wrong if something
// is. Never a bare "saved".

import { alarm } from "../page/alarm.js";
import { byId, find, findAll } from "../page/elements.js";
import { whyRefused } from "../page/vocabulary.js";
import { isNearlyFull } from "../storage/device_space.js";

/** @import { Connection } from "../handover/connection.js" */
/** @import { Handover } from "../handover/handover.js" */

/**
 * @typedef {object} DeviceState
 * @property {boolean} old whether this page is of an older edition
 * @property {boolean} otherTabs whether the inspection is open in another tab too
 * @property {number | null} spaceLeft bytes, null where the browser does not say
 */

// Below this a wait is too short to be worth a word.
const LONG_WAIT_S = 20;
// Clocks that are further apart make the times in the report read wrong.
const CLOCK_TOLERANCE_S = 120;

/**
 * @param {Handover} handover
 * @param {DeviceState} device
 */
export function paintStrip(handover, device) {
  const { host, refused } = handover;
  const strip = byId("strip");
  const faults = faultsOf(handover, device);
  const words = [whereTheWorkIs(handover), ...underWay(handover), ...faults].join(" · ");
  // A live region speaks when its text changes, so it is touched only then.
  if (strip.textContent !== words) strip.textContent = words;
  strip.classList.toggle("wrong", faults.length > 0);
  for (const button of findAll(document, "[data-go=refused]")) {
    button.hidden = !refused.length;
    find(button, "b").textContent = String(refused.length);
  }
  if (refused.length) {
    alarm(`Refused by ${host}, kept on this device: ${whyRefused(refused[0].why)}`);
  }
}

/**
 * "All handed over" only where the computer's own count has proved it.
 *
 * @param {Handover} handover
 * @returns {string}
 */
function whereTheWorkIs({ host, photos, proved, queued, answers, refused, since, trouble }) {
  if (queued || photos) return whatWaits(answers || queued, photos, since);
  if (proved) return `all handed over to ${host}`;
  if (trouble || refused.length) return "kept here, nothing else waits";
  return `handed over, ${host} has not confirmed it yet`;
}

/**
 * @param {number} queued entries
 * @param {number} photos
 * @param {string} since ISO time, or ""
 * @returns {string}
 */
function whatWaits(queued, photos, since) {
  const parts = [];
  if (queued) parts.push(String(queued));
  if (photos) parts.push(`${photos} ${photos === 1 ? "photo" : "photos"}`);
  const time = since ? ` since ${shortTime(new Date(since))}` : "";
  return `kept here · ${parts.join(" and ")} to hand over${time}`;
}

/**
 * That something is on its way: a slow link must look neither lost nor done.
 *
 * @param {Handover} handover
 * @returns {string[]}
 */
function underWay({ active, connection, trouble, waits }) {
  if (!active || !waits || trouble) return [];
  const { waitingSince } = connection;
  const seconds = waitingSince ? Math.round((Date.now() - waitingSince) / 1000) : 0;
  if (seconds < LONG_WAIT_S) return ["handing over now"];
  return [`handing over now, waiting for an answer since ${seconds} s`];
}

/**
 * @param {Date} time
 * @returns {string} the hour, with its day where that is not today
 */
function shortTime(time) {
  const clock = time.toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", hour12: false });
  if (time.toDateString() === new Date().toDateString()) return clock;
  return `${time.toLocaleDateString([], { day: "numeric", month: "short" })} ${clock}`;
}

/**
 * What is wrong, each in a few words; the strip does not mention what is right.
 *
 * @param {Handover} handover
 * @param {DeviceState} device
 * @returns {string[]}
 */
function faultsOf({ connection, refused, trouble }, { old, otherTabs, spaceLeft }) {
  const faults = [];
  if (trouble) faults.push(trouble);
  faults.push(...clockFault(connection));
  if (refused.length) faults.push(`refused entries: ${refused.length}`);
  if (spaceLeft !== null && isNearlyFull(spaceLeft)) {
    faults.push(`storage nearly full: ${Math.round(spaceLeft / 1e6)} MB left`);
  }
  if (old) faults.push("this tab is old: load it anew when convenient");
  if (otherTabs) faults.push("open in another tab too");
  return faults;
}

/**
 * Which of two clocks is wrong cannot be known here.
 *
 * @param {Connection} connection
 * @returns {string[]}
 */
function clockFault({ clockOffset, host }) {
  const seconds = Math.abs(clockOffset ?? 0) / 1000;
  if (seconds <= CLOCK_TOLERANCE_S) return [];
  const direction = (clockOffset ?? 0) > 0 ? "behind" : "ahead of";
  return [
    `the clock of ${host} is ${inWords(seconds)} ${direction} this device's: set the wrong one`,
  ];
}

/**
 * @param {number} seconds
 * @returns {string} in minutes, hours or days, whichever is read best
 */
function inWords(seconds) {
  const minutes = Math.round(seconds / 60);
  if (minutes < 120) return `${minutes} min`;
  const hours = Math.round(minutes / 60);
  return hours < 48 ? `${hours} h` : `${Math.round(hours / 24)} days`;
}
