// Elements of the page, found and made with their kind known. What the page must have and lacks is
// an error at once, with the name of what is missing, rather than a "null" somewhere later.

/**
 * @template {Element} E
 * @typedef {{ new (): E, prototype: E }} Kind
 */

/**
 * The element with this id.
 *
 * @template {HTMLElement} [E=HTMLElement]
 * @param {string} id
 * @param {Kind<E>} [kind] what it must be; any element of HTML where it is left out
 * @returns {E}
 */
export function byId(id, kind) {
  return checked(document.getElementById(id), `#${id}`, kind);
}

/**
 * The first element within `root` that the selector matches.
 *
 * @template {HTMLElement} [E=HTMLElement]
 * @param {ParentNode} root
 * @param {string} selector
 * @param {Kind<E>} [kind]
 * @returns {E}
 */
export function find(root, selector, kind) {
  return checked(root.querySelector(selector), selector, kind);
}

/**
 * The first element within `root` that the selector matches, or null.
 *
 * @template {HTMLElement} [E=HTMLElement]
 * @param {ParentNode} root
 * @param {string} selector
 * @param {Kind<E>} [kind]
 * @returns {E | null}
 */
export function findIfAny(root, selector, kind) {
  const element = root.querySelector(selector);
  return element && checked(element, selector, kind);
}

/**
 * Every element within `root` that the selector matches.
 *
 * @template {HTMLElement} [E=HTMLElement]
 * @param {ParentNode} root
 * @param {string} selector
 * @param {Kind<E>} [kind]
 * @returns {E[]}
 */
export function findAll(root, selector, kind) {
  const elements = [...root.querySelectorAll(selector)];
  return elements.map((element) => checked(element, selector, kind));
}

/**
 * The element around `target` that the selector matches, or null; any event may be asked.
 *
 * @template {HTMLElement} [E=HTMLElement]
 * @param {EventTarget | null} target
 * @param {string} selector
 * @param {Kind<E>} [kind]
 * @returns {E | null}
 */
export function around(target, selector, kind) {
  const element = target instanceof Element ? target.closest(selector) : null;
  return element && checked(element, selector, kind);
}

/**
 * A new element with its text and any other properties.
 *
 * @template {keyof HTMLElementTagNameMap} T
 * @param {T} tag
 * @param {string} [text]
 * @param {Partial<HTMLElementTagNameMap[T]>} [properties]
 * @returns {HTMLElementTagNameMap[T]}
 */
export function make(tag, text = "", properties = {}) {
  return Object.assign(document.createElement(tag), { textContent: text }, properties);
}

/**
 * An element as the kind expected of it.
 *
 * @template {HTMLElement} [E=HTMLElement]
 * @param {Element | null} element
 * @param {string} selector
 * @param {Kind<E>} [kind]
 * @returns {E}
 */
function checked(element, selector, kind) {
  // What was cloned from a template is of the same classes, so that this holds for cards too.
  if (element instanceof (kind ?? HTMLElement)) return /** @type {E} */ (element);
  throw new Error(`This page has no ${selector} of the kind expected.`);
}
