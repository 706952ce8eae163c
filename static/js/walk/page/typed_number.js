// A number, a length or a time as a surveyor types it, read by the rules and the tables of the
// computer, so that a field can say at once what was understood, and ask where nobody could be
// sure.

import { vocabulary } from "./vocabulary.js";

/**
 * @typedef {object} Measures the tables, as inspector/values/measures.py sends them
 * @property {Record<string, Record<string, string>>} marks quantity -> mark -> unit
 * @property {Record<string, [unit: string, count: number]>} following what may follow a unit
 * @property {Record<string, string>} fractions sign -> how it is spelled
 * @property {Record<string, string>} quantities unit -> quantity, of lengths and times
 * @property {string[]} byTheClock units in which 7:35 is hours and minutes
 */

/**
 * What a text means: a number with its unit, or two ways in which it can be read, or nothing.
 *
 * @typedef {object} Understood
 * @property {number} [value]
 * @property {string} [unit]
 * @property {string[]} [ways]
 */

/** @typedef {[above: bigint, below: bigint]} Exact */

const NUMBER = /^[+-]?(?:\d+|\d{1,3}(?: \d{3})+)?(?:[.,]\d+)?$/;
const SPACES = /[\u00a0\u2009\u202f]/g;
// "1,200" and "1.200" may be a thousand or decimals, so neither is read at all.
const AMBIGUOUS = /^([+-]?[1-9]\d{0,2})[.,](\d{3})$/;
const PLAIN = /^[+-]?[0-9., ]*$/;
const CLOCK = /^([+-]?)(\d+):([0-5]\d)(?::([0-5]\d))?$/;
const PART = /^(\d+[ -]\d+\/\d+|\d+\/\d+|\d+(?:[.,]\d+)?|[.,]\d+) ?([a-z]+|['"])?(?: ?- ?| )?/;
const MIXED = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/;
const NOTHING = {};
const { marks, following, fractions, quantities, byTheClock } = vocabulary.measures;

/**
 * @param {string} typed
 * @returns {number | null} or null where it cannot be read in one way only
 */
export function numberOf(typed) {
  return plainNumber(typed).value ?? null;
}

/**
 * @param {string} typed
 * @param {string} unit that holds where the text names none
 * @returns {Understood}
 */
export function understand(typed, unit) {
  const text = spelled(typed);
  const quantity = quantities[unit];
  if (!quantity || PLAIN.test(text)) {
    const { value, ways } = plainNumber(typed);
    return value === undefined ? { ways } : { value, unit };
  }
  const clock = quantity === "duration" && CLOCK.exec(text);
  return clock ? readClock(clock, unit) : readParts(text, quantity, unit);
}

/**
 * @param {string} typed
 * @returns {Understood}
 */
function plainNumber(typed) {
  const plain = typed.replace(SPACES, " ").trim().replace("−", "-");
  const [, whole, decimals] = AMBIGUOUS.exec(plain) ?? [];
  if (whole) return { ways: twoWays(whole, decimals) };
  if (!NUMBER.test(plain) || !/\d$/.test(plain)) return NOTHING;
  return { value: Number(plain.replaceAll(" ", "").replace(",", ".")) };
}

/**
 * @param {string} whole
 * @param {string} decimals
 * @returns {string[]} the thousand and the decimals, each written in one way only
 */
function twoWays(whole, decimals) {
  const short = decimals.replace(/0+$/, "");
  // "1.025" needs a fourth decimal to say that its three are decimals.
  const decimal = short === decimals ? `${whole}.${decimals}0` : `${whole}.${short}`;
  return [whole + decimals, decimal.replace(/\.$/, "")];
}

/**
 * @param {string} typed
 * @returns {string} with one spelling of quotes, fractions, spaces and the minus sign
 */
function spelled(typed) {
  let text = typed.replaceAll("−", "-").toLowerCase();
  for (const [sign, words] of Object.entries(fractions)) text = text.replaceAll(sign, ` ${words}`);
  text = text
    .replace(/[′’‘´]/g, "'")
    .replace(/[″”“]/g, '"')
    .replaceAll("''", '"');
  return text.replace(/[\u00a0\u2009\u202f\s]+/g, " ").trim();
}

/**
 * @param {RegExpExecArray} clock
 * @param {string} unit
 * @returns {Understood}
 */
function readClock([, sign, hours, minutes, seconds], unit) {
  if (!byTheClock.includes(unit) && seconds === undefined) {
    const m = Number(minutes);
    return { ways: [`${hours} h ${m} min`, `${hours} min ${m} s`] };
  }
  /** @type {Exact} */
  const total = [BigInt(hours) * 3600n + BigInt(minutes) * 60n + BigInt(seconds ?? 0), 3600n];
  return { value: signed(sign, nearest(total)), unit: "h" };
}

/**
 * @param {string} text
 * @param {string} quantity
 * @param {string} unit
 * @returns {Understood}
 */
function readParts(text, quantity, unit) {
  const sign = /^[+-]/.test(text) ? text[0] : "";
  const parts = partsOf(sign ? text.slice(1).trim() : text);
  // Only the last part may be broken: nobody writes 12.5' 3".
  if (!parts.length || parts.slice(0, -1).some(([number]) => !/^\d+$/.test(number))) return NOTHING;
  /** @type {Exact} */
  let total = [0n, 1n];
  let before = "";
  let first = "";
  let worth = 1n;
  for (const [number, mark] of parts) {
    const unmarked = before ? following[before]?.[0] : unit;
    const own = mark ? marks[quantity][mark] : unmarked;
    const value = valueOf(number);
    if (!own || !value) return NOTHING;
    if ("ways" in value) return value;
    if (before) {
      const [follower, count] = following[before] ?? ["", 1];
      const isLess = value[0] < BigInt(count) * value[1];
      if (own !== follower || !isLess) return NOTHING;
      worth *= BigInt(count);
    }
    total = [total[0] * value[1] * worth + value[0] * total[1], total[1] * value[1] * worth];
    first ||= own;
    before = own;
  }
  return { value: signed(sign, nearest(total)), unit: first };
}

/**
 * @param {string} text
 * @returns {[number: string, mark: string | undefined][]} none where a part cannot be read
 */
function partsOf(text) {
  /** @type {[string, string | undefined][]} */
  const parts = [];
  for (let rest = text; rest;) {
    const found = PART.exec(rest);
    if (!found) return [];
    parts.push([found[1], found[2]]);
    rest = rest.slice(found[0].length);
  }
  return parts;
}

/**
 * @param {string} number
 * @returns {Exact | { ways: string[] } | null}
 */
function valueOf(number) {
  const mixed = MIXED.exec(number);
  if (!mixed) {
    const { value, ways } = plainNumber(number);
    if (value === undefined) return ways ? { ways } : null;
    const [whole, decimals = ""] = number.replace(",", ".").split(".");
    return [BigInt(whole + decimals), 10n ** BigInt(decimals.length)];
  }
  const [, whole, above, below] = mixed;
  const [top, bottom] = [BigInt(above), BigInt(below)];
  if (!bottom || (whole && top >= bottom)) return null;
  // 31/2 is what a thumb makes of 3 1/2.
  if (top >= bottom && above.length > 1) {
    const decimal = String(Number((Number(top) / Number(bottom)).toPrecision(10)));
    const once = AMBIGUOUS.test(decimal) ? `${decimal}0` : decimal;
    return { ways: [`${above.slice(0, -1)} ${above.at(-1)}/${below}`, once] };
  }
  return [BigInt(whole ?? 0) * bottom + top, bottom];
}

/**
 * @param {Exact} exact
 * @returns {number} the nearest that a computer can represent
 */
function nearest([above, below]) {
  let [a, b] = [above, below];
  while (b) [a, b] = [b, a % b];
  const divisor = a || 1n;
  return Number(above / divisor) / Number(below / divisor);
}

/**
 * @param {string} sign
 * @param {number} value
 */
function signed(sign, value) {
  return sign === "-" ? -value : value;
}
