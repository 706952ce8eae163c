// SHA-256 (FIPS 180-4, sections 4 to 6) in plain JavaScript, because crypto.subtle is absent on
// plain http. The names of variables and functions are those of the standard.

const ROUNDS = 64;
const BLOCK_BYTES = 64;
const PRIMES = firstPrimes(ROUNDS);
/** The first 32 bits of the fractional parts of the cube roots of the first 64 primes. */
const K = Int32Array.from(PRIMES, (prime) => fractionBits(Math.cbrt(prime)));
/** The same of the square roots of the first eight primes. */
const START = PRIMES.slice(0, 8).map((prime) => fractionBits(Math.sqrt(prime)));

/**
 * @param {number} count
 * @returns {number[]}
 */
function firstPrimes(count) {
  /** @type {number[]} */
  const primes = [];
  for (let number = 2; primes.length < count; number += 1) {
    if (primes.every((prime) => number % prime)) primes.push(number);
  }
  return primes;
}

/** @param {number} x */
function fractionBits(x) {
  return Math.floor((x - Math.floor(x)) * 2 ** 32) | 0;
}

/**
 * @param {number} x
 * @param {number} bits
 */
function rotateRight(x, bits) {
  return (x >>> bits) | (x << (32 - bits));
}

/**
 * The message with its padding: a 1 bit, zeros, and the length in bits as 64-bit integer.
 *
 * @param {Uint8Array} bytes
 * @returns {DataView}
 */
function padded(bytes) {
  const blockCount = ((bytes.length + 8) >> 6) + 1;
  const blocks = new Uint8Array(blockCount * BLOCK_BYTES);
  blocks.set(bytes);
  blocks[bytes.length] = 0x80;
  const view = new DataView(blocks.buffer);
  view.setUint32(blocks.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(blocks.length - 4, bytes.length << 3);
  return view;
}

/**
 * Fill the message schedule from its first sixteen words.
 *
 * @param {Int32Array} w
 */
function extend(w) {
  for (let i = 16; i < ROUNDS; i += 1) {
    const x = w[i - 15];
    const y = w[i - 2];
    const s0 = rotateRight(x, 7) ^ rotateRight(x, 18) ^ (x >>> 3);
    const s1 = rotateRight(y, 17) ^ rotateRight(y, 19) ^ (y >>> 10);
    w[i] = (w[i - 16] + s0 + w[i - 7] + s1) | 0;
  }
}

/**
 * Work one block into the hash.
 *
 * @param {Int32Array} hash
 * @param {Int32Array} w the message schedule
 */
function compress(hash, w) {
  let [a, b, c, d, e, f, g, h] = hash;
  for (let i = 0; i < ROUNDS; i += 1) {
    const s1 = rotateRight(e, 6) ^ rotateRight(e, 11) ^ rotateRight(e, 25);
    const choice = (e & f) ^ (~e & g);
    const t1 = (h + s1 + choice + K[i] + w[i]) | 0;
    const s0 = rotateRight(a, 2) ^ rotateRight(a, 13) ^ rotateRight(a, 22);
    const majority = (a & b) ^ (a & c) ^ (b & c);
    const t2 = (s0 + majority) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + t1) | 0;
    d = c;
    c = b;
    b = a;
    a = (t1 + t2) | 0;
  }
  [a, b, c, d, e, f, g, h].forEach((word, i) => {
    hash[i] = (hash[i] + word) | 0;
  });
}

/**
 * @param {ArrayBuffer} buffer
 * @returns {string} in lower case hexadecimal
 */
export function sha256(buffer) {
  const view = padded(new Uint8Array(buffer));
  const hash = Int32Array.from(START);
  const w = new Int32Array(ROUNDS);
  for (let offset = 0; offset < view.byteLength; offset += BLOCK_BYTES) {
    for (let i = 0; i < 16; i += 1) w[i] = view.getInt32(offset + 4 * i);
    extend(w);
    compress(hash, w);
  }
  return Array.from(hash, (word) => (word >>> 0).toString(16).padStart(8, "0")).join("");
}
