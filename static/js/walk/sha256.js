// SHA-256 (FIPS 180-4) in plain JavaScript: crypto.subtle is absent on plain http.

const PRIMES = [];
for (let n = 2; PRIMES.length < 64; n += 1) if (PRIMES.every((prime) => n % prime)) PRIMES.push(n);
const fraction = (x) => Math.floor((x - Math.floor(x)) * 2 ** 32) | 0;
const K = Int32Array.from(PRIMES, (prime) => fraction(Math.cbrt(prime)));
const START = PRIMES.slice(0, 8).map((prime) => fraction(Math.sqrt(prime)));

function padded(bytes) {
  const blocks = new Uint8Array(((bytes.length + 8 >> 6) + 1) * 64);
  blocks.set(bytes);
  blocks[bytes.length] = 0x80;
  const view = new DataView(blocks.buffer);
  view.setUint32(blocks.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(blocks.length - 4, bytes.length << 3);
  return view;
}

function compress(hash, w) {
  for (let i = 16; i < 64; i += 1) {
    const x = w[i - 15], y = w[i - 2];
    const s0 = (x >>> 7 | x << 25) ^ (x >>> 18 | x << 14) ^ x >>> 3;
    const s1 = (y >>> 17 | y << 15) ^ (y >>> 19 | y << 13) ^ y >>> 10;
    w[i] = w[i - 16] + s0 + w[i - 7] + s1 | 0;
  }
  let [a, b, c, d, e, f, g, h] = hash;
  for (let i = 0; i < 64; i += 1) {
    const t1 = h + ((e >>> 6 | e << 26) ^ (e >>> 11 | e << 21) ^ (e >>> 25 | e << 7)) + (e & f ^ ~e & g) + K[i] + w[i] | 0;
    const t2 = ((a >>> 2 | a << 30) ^ (a >>> 13 | a << 19) ^ (a >>> 22 | a << 10)) + (a & b ^ a & c ^ b & c) | 0;
    h = g; g = f; f = e; e = d + t1 | 0; d = c; c = b; b = a; a = t1 + t2 | 0;
  }
  [a, b, c, d, e, f, g, h].forEach((word, i) => { hash[i] = hash[i] + word | 0; });
}

// The digest of an ArrayBuffer, in lower case hexadecimal.
export function sha256(buffer) {
  const view = padded(new Uint8Array(buffer));
  const hash = Int32Array.from(START), w = new Int32Array(64);
  for (let offset = 0; offset < view.byteLength; offset += 64) {
    for (let i = 0; i < 16; i += 1) w[i] = view.getInt32(offset + 4 * i);
    compress(hash, w);
  }
  return Array.from(hash, (word) => (word >>> 0).toString(16).padStart(8, "0")).join("");
}
