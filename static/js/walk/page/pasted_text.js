// A browser cuts a pasted text at the field's maxlength without a word: a text that does not fit is
// refused here, with a sentence, and nothing of it is pasted.

import { alarm } from "./alarm.js";

/** @param {Document | HTMLElement} root */
export function refuseCutPastes(root) {
  root.addEventListener("paste", (event) => {
    const field = event.target;
    const isText = field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement;
    if (!isText || field.maxLength < 0) return;
    const pasted = /** @type {ClipboardEvent} */ (event).clipboardData?.getData("text") ?? "";
    const length = lengthWith(field, pasted);
    if (length <= field.maxLength) return;
    event.preventDefault();
    alarm(
      `The text would have ${length} characters; at most ${field.maxLength} can be kept here. ` +
        "Nothing was pasted.",
    );
  });
}

/**
 * @param {HTMLInputElement | HTMLTextAreaElement} field
 * @param {string} pasted
 * @returns {number} the length of the field's text once it is pasted
 */
function lengthWith(field, pasted) {
  // A field counts a line end as one character.
  const added = pasted.replace(/\r\n?/g, "\n").length;
  const replaced = (field.selectionEnd ?? 0) - (field.selectionStart ?? 0);
  return field.value.length - replaced + added;
}
