// What must be on this device before the link is lost, each line proved and not assumed.

import { allPhotos } from "../record/summary.js";
import { canBeShown } from "../photos/thumbnails.js";
import {
  askToPersist,
  deviceSpace,
  isEnough,
  isNearlyFull,
  writesAndReads,
} from "../storage/device_space.js";
import { allEntries } from "../storage/entry_store.js";

/** @import { Connection } from "../handover/connection.js" */
/** @import { Handover } from "../handover/handover.js" */
/** @import { Log } from "../record/log.js" */
/** @import { FollowedRound } from "../python/followed_round.js" */
/** @import { Python } from "../python/python.js" */
/** @import { CheckTexts } from "../rows/check_texts.js" */
/** @import { AppOnDevice } from "./app_on_device.js" */
/** @import { Plan } from "./plan.js" */

/**
 * @typedef {object} Parts
 * @property {Log} log
 * @property {Plan} plan
 * @property {Handover} handover
 * @property {Connection} connection
 * @property {AppOnDevice} app
 * @property {Python} python
 * @property {FollowedRound} followed
 * @property {CheckTexts} texts
 */

/**
 * What a line says: its state, what was found, and the next step where it is not simply ready.
 *
 * @typedef {[word: string, sentence: string, step?: string]} Proof
 */

export const READY = "ready";
/** Nothing is lost by it, but something will be missed below, or has to be minded. */
export const CAUTION = "ready with a caution";
export const NOT_READY = "not ready";

const CLOCK_TOLERANCE_S = 120;

/**
 * @param {Parts} parts
 * @returns {Promise<Proof>}
 */
async function proveSheets({ plan, texts }) {
  const count = plan.items.length;
  if (!count) {
    const step =
      "On the laptop, count what is on board under “prepare”; then load this page again.";
    return [NOT_READY, "No unit is counted yet.", step];
  }
  await texts.read();
  if (texts.here) return [READY, `${count} checks on ${plan.sheets.size} sheets are in this page.`];
  const words = "The checks are here, but not yet what to ask and where to look.";
  return [NOT_READY, words, "Stay near the laptop, then look again."];
}

/**
 * @param {Parts} parts
 * @returns {Promise<Proof>}
 */
async function proveEntries({ handover, log }) {
  const { host, lastContact } = handover;
  if (!lastContact) {
    const step = `Go near ${host}, tap “hand over now” below, and look again.`;
    return [NOT_READY, `This page has not spoken with ${host} since it was opened.`, step];
  }
  const { length } = await allEntries(log.inspection);
  const time = lastContact.toLocaleTimeString([], { hour12: false });
  return [
    READY,
    `All that is recorded so far (${length} entries) is here, last fetched from ${host} ` +
      `at ${time}.`,
  ];
}

/**
 * @param {Parts} parts
 * @returns {Promise<Proof>}
 */
async function provePhotos({ log }) {
  const digests = allPhotos(log);
  const shown = await Promise.all(digests.map((sha) => canBeShown(log.inspection, sha)));
  const missing = shown.filter((isShown) => !isShown).length;
  if (missing) {
    return [
      CAUTION,
      `${missing} of ${digests.length} photos cannot be looked at here.`,
      "The laptop or another device still has to hand them over; look again then.",
    ];
  }
  if (!digests.length) return [READY, "No photo was taken so far."];
  return [READY, `Every photo known so far (${digests.length}) can be looked at here.`];
}

/**
 * @param {Parts} parts
 * @returns {Promise<Proof>}
 */
async function proveApp({ app }) {
  if (!app.possible) {
    return [
      CAUTION,
      "The browser cannot keep the page itself at this address. What you record is kept even so.",
      "Keep this page open: leave it open until you are back. Or take the optional step " +
        "“works after closing too” on the first page of this walk.",
    ];
  }
  await app.check();
  if (app.state === "complete") {
    return [READY, "The page opens without the computer, also after it was closed."];
  }
  return [
    NOT_READY,
    "The page itself is not kept yet.",
    "Stay near the computer and look again; until then leave the page open.",
  ];
}

/** @returns {Promise<Proof>} */
async function provePersistence() {
  const answer = await askToPersist();
  const { persistent } = await deviceSpace();
  if (persistent) return [READY, "The browser has promised not to clear what is kept."];
  if (answer === null && persistent === null) {
    return [
      CAUTION,
      "This browser does not say whether it keeps what is stored.",
      "Use no private window, and hand over before the browser's data are cleared.",
    ];
  }
  if (answer === null) {
    const step = "Answer the browser's question with yes, then look again.";
    return [CAUTION, "The browser asks whether it may keep what this page stores.", step];
  }
  return [
    CAUTION,
    "The browser may clear what is kept when the device runs short of space.",
    `${remedy()} Until this line is ready: keep space free, and hand over before you close ` +
      "the page.",
  ];
}

/**
 * What can be done about it here, by the browser's own name for itself; every browser of an iPhone
 * or iPad keeps by the same rule.
 *
 * @returns {string}
 */
function remedy() {
  const { userAgent, maxTouchPoints } = navigator;
  // An iPad calls itself a Macintosh, which has no touch screen.
  const isIpad = /Macintosh/.test(userAgent) && maxTouchPoints > 1;
  if (isIpad || /iPhone|iPad|iPod/.test(userAgent)) {
    return (
      "Tap “Share”, then “Add to Home Screen”, and open the walk from there before you " +
      "record: what is kept there is its own, so it may ask to join once more."
    );
  }
  if (/Android|Chrome/.test(userAgent)) {
    return (
      "Open the browser's menu and choose “Install” or “Add to home screen”, or bookmark " +
      "this page; use it a few minutes more, then look again."
    );
  }
  return "This browser offers no way to ask for it.";
}

/** @returns {Promise<Proof>} */
async function proveSpace() {
  const { left } = await deviceSpace();
  if (left === null) {
    const step = "Look in the settings of the device: 500 MB should be free.";
    return [CAUTION, "This browser does not say how much space is left.", step];
  }
  const megabytes = Math.round(left / 1e6);
  if (isEnough(left)) return [READY, `${megabytes} MB are free for this page.`];
  return [
    isNearlyFull(left) ? NOT_READY : CAUTION,
    `${megabytes} MB are free, and a day of photos takes 500 MB.`,
    "Free some space on this device, then look again.",
  ];
}

/**
 * @param {Parts} parts
 * @returns {Promise<Proof>}
 */
async function proveClock({ connection }) {
  // A fresh look; where nobody answers, the last answer counts.
  await connection.openSession().catch(() => {});
  const { clockOffset } = connection;
  if (clockOffset === null) {
    return [CAUTION, "The computer has not given its time yet.", "Look again when it answers."];
  }
  const seconds = Math.round(Math.abs(clockOffset) / 1000);
  if (seconds <= CLOCK_TOLERANCE_S) {
    return [READY, `This device's clock and the computer's are ${seconds} s apart.`];
  }
  const minutes = Math.round(seconds / 60);
  const direction = clockOffset > 0 ? "ahead of" : "behind";
  return [
    CAUTION,
    `This device's clock is ${minutes} min ${direction} the computer's. No answer is ` +
      "lost by it, but times will read wrong.",
    "Set the clock that is wrong, then look again.",
  ];
}

/** @returns {Promise<Proof>} */
async function proveWriting() {
  if (await writesAndReads()) {
    return [READY, "A test record was written to the device and read back."];
  }
  return [
    NOT_READY,
    "A test record could not be read back: this device does not keep what you write.",
    "Use an ordinary window instead of a private one, else another device.",
  ];
}

/**
 * Whether the round of the visit is on this device, and can be composed again here.
 *
 * @param {Parts} parts
 * @returns {Proof}
 */
function proveRound({ followed, python }) {
  const count = looksOf(followed);
  if (!count) {
    return [
      CAUTION,
      "No round is on this device: “next” goes through every check.",
      "On the laptop, say under “prepare” how much time there is; then load this page again.",
    ];
  }
  const words = `The round is on this device: ${count} looks. ${followed.inWords()}`;
  if (python.state !== "impossible") return [READY, words];
  return [CAUTION, words, "Load this page again near the computer before you go below."];
}

/**
 * @param {FollowedRound} followed
 * @returns {number} of the round that is on this device; 0 where there is none
 */
export function looksOf(followed) {
  return (followed.data?.stops ?? []).reduce((count, stop) => count + stop.looks.length, 0);
}

/**
 * Whether readings are judged without the computer: by our own Python, kept here.
 *
 * @param {Parts} parts
 * @returns {Promise<Proof>}
 */
async function proveJudging({ app, python }) {
  const { state, why } = python;
  if (state === "impossible") {
    return [
      CAUTION,
      "Readings are kept, and wait until the computer has judged: this device cannot judge " +
        `(${why}).`,
      "Near the computer, look again; else go on without.",
    ];
  }
  if (state !== "ready") {
    return [
      NOT_READY,
      "Judging is being started, which takes up to a minute the first time.",
      "Stay near the computer; this line changes by itself.",
    ];
  }
  if (!app.possible) {
    return [READY, "This device judges readings itself for as long as this page is open."];
  }
  if (await app.keepPython()) {
    return [READY, "This device judges readings itself, by the computer's own rules."];
  }
  return [
    NOT_READY,
    "This device judges readings itself while this page is open, but what it needs for that is " +
      "not kept yet.",
    "Stay near the computer and look again.",
  ];
}

/** @type {[name: string, prove: (parts: Parts) => Proof | Promise<Proof>][]} */
export const PROOFS = [
  ["sheets and checks", proveSheets],
  ["what was recorded so far", proveEntries],
  ["photos", provePhotos],
  ["the app itself", proveApp],
  ["kept for good", provePersistence],
  ["free space", proveSpace],
  ["clock", proveClock],
  ["writing and reading", proveWriting],
  ["the round", proveRound],
  ["judging without the computer", proveJudging],
];
