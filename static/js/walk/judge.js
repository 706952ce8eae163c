// A reading judged on this device, by the bands that the page carries for its check. Numbers are compared as they are
// written: exact fractions, rounded once at the end as the computer does it, so that both say the same at every boundary.

const NUMBER = /^[+-]?(?:\d+|\d{1,3}(?: \d{3})+)?(?:[.,]\d+)?$/, TWO_WAYS = /^[+-]?[1-9]\d{0,2},\d{3}$/;

// A number as a surveyor types it, as a fraction [numerator, denominator] of BigInts; null where it cannot be read in one way only.
function readNumber(typed) {
  const plain = typed.replace(/[\u00a0\u2009\u202f]/g, " ").trim().replace("−", "-");
  if (!plain || !NUMBER.test(plain) || !/\d$/.test(plain) || TWO_WAYS.test(plain)) return null;
  const [whole, decimals = ""] = plain.replaceAll(" ", "").replace("+", "").replace(",", ".").split(".");
  const sign = whole.startsWith("-") ? -1n : 1n;
  return [sign * BigInt(whole.replace("-", "") + decimals || "0"), 10n ** BigInt(decimals.length)];
}

const fraction = (text) => text.split("/").map(BigInt);

// The fraction as the nearest number that a computer holds.
function rounded([above, below]) {
  const sign = above < 0n ? "-" : "";
  const size = above < 0n ? -above : above;
  const digits = 30n;
  return Number(`${sign}${(size * 10n ** digits) / below}e-${digits}`);
}

// A number as typed, or null where it cannot be read in one way only.
export function numberOf(typed) {
  const read = readNumber(typed);
  return read && rounded(read);
}

// value x factor + offset, both "n/d"; a unit without a factor is not one of this quantity.
function converted([above, below], [factor, offset]) {
  const [fa, fb] = fraction(factor), [oa, ob] = fraction(offset);
  return rounded([above * fa * ob + oa * below * fb, below * fb * ob]);
}

// The band of a typed reading, or null: {rating, band, meaning, value}.
export function bandOf(ladder, typed, unit) {
  const number = readNumber(typed);
  const factors = ladder.factors[unit || ladder.unit];
  if (!number || !factors) return null;
  const value = converted(number, factors);
  if ((ladder.low ?? null) !== null && value < ladder.low) return null;
  if ((ladder.high ?? null) !== null && value > ladder.high) return null;
  const step = ladder.steps.find(([upto, closed]) => upto === null || value < upto || (closed && value === upto));
  const [, , band, rating, meaning] = step;
  return { value, band, rating, meaning };
}

const shown = (value) => String(Number(value.toPrecision(4))).replace("-", "−");

// What this device says of a card's reading until the computer has judged; null where the page carries no bands for it.
export function judgeHere(log, card) {
  if (!card.dataset.ladder) return null;
  const ladder = JSON.parse(card.dataset.ladder);
  const reading = log.state.value(card.dataset.subject, `reading/${ladder.input}`);
  const found = reading?.value && bandOf(ladder, reading.value, reading.unit);
  if (!found) return null;
  const { rating, band, meaning, value } = found;
  return { rating, band, sentence: `${shown(value)} ${ladder.unit} is ${meaning}.`, source: ladder.source, notes: [], here: true };
}
