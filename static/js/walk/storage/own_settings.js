// Small things that a person set on this device and that no inspection records: read and written at
// once, so that a killed tab loses none.

/**
 * @template T
 * @param {string} key
 * @param {T} otherwise what holds where nothing is kept
 * @returns {T}
 */
export function readOwn(key, otherwise) {
  try {
    return JSON.parse(localStorage.getItem(key) ?? "null") ?? otherwise;
  } catch {
    return otherwise;
  }
}

/**
 * @param {string} key
 * @param {unknown} value
 */
export function writeOwn(key, value) {
  try {
    localStorage.setItem(key, JSON.stringify(value));
  } catch {
    // Storage may be forbidden; then it lasts as long as the page.
  }
}
