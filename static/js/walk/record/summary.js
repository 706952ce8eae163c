// What the recorded state says of checks, findings and photos, in a word or a count.

import { isRating, vocabulary } from "../page/vocabulary.js";

/** @import { State } from "./fold.js" */
/** @import { Log } from "./log.js" */

/** @typedef {"seen" | "unseen" | "notFitted" | "open"} Answer */

/**
 * @typedef {object} Tally
 * @property {number} seen
 * @property {number} unseen checks that somebody said were not seen
 * @property {number} of checks that apply
 */

/**
 * What a check's sheet says. A proposed rating counts as seen.
 *
 * @param {Log} log
 * @param {string} subject
 * @returns {Answer}
 */
export function answerOf(log, subject) {
  const rating = log.state.value(subject, "rating");
  if (isRating(rating)) return "seen";
  if (rating === vocabulary.notFitted) return "notFitted";
  if (rating) return "unseen";
  return isRating(log.judgements[subject]?.rating) ? "seen" : "open";
}

/**
 * @param {Log} log
 * @param {string[]} subjects
 * @returns {Tally}
 */
export function tally(log, subjects) {
  const counted = { seen: 0, unseen: 0, notFitted: 0, open: 0 };
  for (const subject of subjects) counted[answerOf(log, subject)] += 1;
  const { seen, unseen, notFitted } = counted;
  return { seen, unseen, of: subjects.length - notFitted };
}

/**
 * The subjects of the checks that count: what is optional only where it was seen.
 *
 * @param {Log} log
 * @param {{ subject: string, optional: boolean }[]} items
 * @returns {string[]}
 */
export function counting(log, items) {
  const needed = items.filter(({ subject, optional }) => {
    return !optional || answerOf(log, subject) === "seen";
  });
  return needed.map((item) => item.subject);
}

/**
 * The findings that count: they have a title and were not taken out.
 *
 * @param {Log} log
 * @returns {string[]} their subjects
 */
export function findingsOf(log) {
  const { state } = log;
  return state.subjects("finding/").filter((subject) => {
    return state.value(subject, "title") && !state.value(subject, "gone");
  });
}

/** @type {WeakMap<State, { added: number, places: Map<string, string[]> }>} */
const photoPlaces = new WeakMap();

/**
 * The digests of the photos of a subject, or of those without a place with "".
 *
 * @param {Log} log
 * @param {string} on
 * @returns {string[]}
 */
export function photosOn({ state }, on) {
  let known = photoPlaces.get(state);
  // A stop asks for each of its rows, and there may be hundreds of photos.
  if (known?.added !== state.added) {
    known = { added: state.added, places: placesOf(state) };
    photoPlaces.set(state, known);
  }
  return known.places.get(on) ?? [];
}

/**
 * @param {State} state
 * @returns {Map<string, string[]>} place -> the digests of its photos
 */
function placesOf(state) {
  /** @type {Map<string, string[]>} */
  const places = new Map();
  for (const subject of state.subjects("photo/")) {
    const on = state.value(subject, "on");
    places.set(on, [...(places.get(on) ?? []), digestOf(subject)]);
  }
  return places;
}

/**
 * The digest of every photo known.
 *
 * @param {Log} log
 * @returns {string[]}
 */
export function allPhotos(log) {
  return log.state.subjects("photo/").map(digestOf);
}

/**
 * @param {string} subject `photo/<sha256>`
 * @returns {string}
 */
function digestOf(subject) {
  return subject.slice("photo/".length);
}

/**
 * Whether anything recorded of a subject has two answers.
 *
 * @param {Log} log
 * @param {string} subject
 * @returns {boolean}
 */
export function hasDispute(log, subject) {
  return log.state.fields(subject).some((field) => log.state.disputed(subject, field));
}

/**
 * A recorded value in words, as it was typed.
 *
 * @param {any} value
 * @returns {string}
 */
export function describe(value) {
  if (value === null || value === undefined || value === "") return "nothing";
  if (typeof value !== "object") return String(value);
  if ("value" in value) {
    // What was typed with its own marks, such as 12' 3", needs no unit behind it.
    const hasOwn = /[a-z'":′″]/i.test(value.value ?? "");
    return [value.value, hasOwn ? "" : value.unit].filter(Boolean).join(" ");
  }
  const answers = Object.entries(value).map(([key, answer]) => `${key} ${answer}`);
  return answers.join(", ");
}
