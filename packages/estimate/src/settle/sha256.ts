/** Round constants: the first 32 bits of the fractions of the cube roots of the first 64 primes (FIPS 180-4, 4.2.2; from memory). */
const K = /* @__PURE__ */ (() => new Uint32Array(firstPrimes(64).map((prime) => fractionBits(Math.cbrt(prime)))))();

/** Initial hash: the same of the square roots of the first 8 primes (5.3.3). */
const START = /* @__PURE__ */ (() => firstPrimes(8).map((prime) => fractionBits(Math.sqrt(prime))))();

/**
 * @internal SHA-256 (FIPS 180-4) of bytes, in hexadecimal. Web Crypto has it too, but not in every place where a plain script runs, and only
 * as a promise.
 */
export function sha256(bytes: Uint8Array): string {
  const padded = new Uint8Array((((bytes.length + 8) >> 6) + 1) << 6);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, bytes.length << 3);
  const hash = new Uint32Array(START);
  const w = new Uint32Array(64);
  for (let block = 0; block < padded.length; block += 64) {
    for (let t = 0; t < 16; t++) w[t] = view.getUint32(block + 4 * t);
    for (let t = 16; t < 64; t++) {
      w[t] = small1(at(w, t - 2)) + at(w, t - 7) + small0(at(w, t - 15)) + at(w, t - 16);
    }
    compress(hash, w);
  }
  return Array.from(hash, (word) => word.toString(16).padStart(8, "0")).join("");
}

/** One block (6.2.2, steps 2 to 4). */
function compress(hash: Uint32Array, w: Uint32Array): void {
  let [a, b, c, d, e, f, g, h] = hash as unknown as [number, number, number, number, number, number, number, number];
  for (let t = 0; t < 64; t++) {
    const choice = (e & f) ^ (~e & g);
    const majority = (a & b) ^ (a & c) ^ (b & c);
    const one = (h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + choice + at(K, t) + at(w, t)) | 0;
    const two = ((turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + majority) | 0;
    [a, b, c, d, e, f, g, h] = [(one + two) | 0, a, b, c, (d + one) | 0, e, f, g];
  }
  // The array takes each sum modulo 2³².
  [a, b, c, d, e, f, g, h].forEach((word, i) => {
    hash[i] = at(hash, i) + word;
  });
}

const at = (words: Uint32Array, i: number): number => words[i] as number;
const turned = (x: number, by: number): number => (x >>> by) | (x << (32 - by));
const small0 = (x: number): number => turned(x, 7) ^ turned(x, 18) ^ (x >>> 3);
const small1 = (x: number): number => turned(x, 17) ^ turned(x, 19) ^ (x >>> 10);

function firstPrimes(count: number): number[] {
  const primes: number[] = [];
  for (let n = 2; primes.length < count; n++) if (primes.every((prime) => n % prime !== 0)) primes.push(n);
  return primes;
}

/** The first 32 bits behind the point: of roots below 2^3 with 52 bits at least 49 are there. */
function fractionBits(root: number): number {
  return Math.floor((root - Math.floor(root)) * 2 ** 32);
}
