// A person's own phrases for notes, kept on this device by the person's name: a tap on "note", a
// tap on the phrase.

import { find, make } from "../page/elements.js";
import { readOwn, writeOwn } from "../storage/own_settings.js";

const LONGEST_PHRASE = 120;
const MOST_PHRASES = 12;

/** @param {string} who */
const keyOf = (who) => `phrases/${who}`;

/**
 * @param {string} who
 * @returns {string[]} the latest first
 */
export function phrasesOf(who) {
  return readOwn(keyOf(who), /** @type {string[]} */ ([]));
}

/**
 * Keep a text as a phrase, or forget it where it is one already.
 *
 * @param {string} who
 * @param {string} text
 */
export function togglePhrase(who, text) {
  const phrase = text.trim();
  if (!phrase || phrase.length > LONGEST_PHRASE) return;
  const others = phrasesOf(who).filter((kept) => kept !== phrase);
  const isKept = others.length < phrasesOf(who).length;
  writeOwn(keyOf(who), isKept ? others : [phrase, ...others].slice(0, MOST_PHRASES));
}

/**
 * @param {string} note
 * @param {string} phrase
 * @returns {string} the note with the phrase after it
 */
export function withPhrase(note, phrase) {
  const before = note.trim();
  if (!before) return phrase;
  return `${before}${/[.!?;]$/.test(before) ? "" : "."} ${phrase}`;
}

/**
 * @param {string} who
 * @param {HTMLElement} card
 */
export function paintPhrases(who, card) {
  const box = find(card, "[data-phrases]");
  const phrases = phrasesOf(who);
  box.hidden = !phrases.length;
  box.replaceChildren(
    ...phrases.map((phrase) => {
      const button = make("button", phrase, { type: "button" });
      button.dataset.phrase = phrase;
      return button;
    }),
  );
  const text = find(card, "[data-note]", HTMLTextAreaElement).value.trim();
  const keep = find(card, "[data-act=keep-phrase]");
  keep.hidden = !text || text.length > LONGEST_PHRASE;
  keep.textContent = phrases.includes(text) ? "forget this phrase" : "keep as my phrase";
}
