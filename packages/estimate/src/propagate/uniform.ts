/**
 * Random numbers addressed by seed, name and index, without a state, so that any range of indices can be computed anywhere: what
 * the even draws are scrambled by, and what they are measured against.
 *
 * The 64 bits of seed and name and the index go through the finaliser of a 32-bit hash (the public-domain MurmurHash3
 * finaliser, with its published constants) four times; whole-number arithmetic, so all engines agree to the last bit.
 */

function mix(hash: number): number {
  let h = hash;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/** @internal FNV-1a over UTF-16 code units. */
export function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

/** @internal A function of the index that gives numbers in (0, 1), 52 random bits each. */
export function uniforms(seed: number, name: string): (index: number) => number {
  const stream = hashOf(name);
  const high = mix((stream ^ Math.imul(seed, 0x9e3779b9)) >>> 0);
  const low = mix((high + 0x7f4a7c15 + seed) >>> 0);
  return (index) => {
    const a = mix((mix((index + high) >>> 0) ^ low) >>> 0);
    const b = mix((mix((a + low) >>> 0) ^ (index + 0x165667b1)) >>> 0);
    // 26 bits from each word, centred in its cell so that neither 0 nor 1 occurs
    return ((a >>> 6) * 0x4000000 + (b >>> 6) + 0.5) / 0x10000000000000;
  };
}

/** @internal A function of a number that gives 32 random bits, by seed and name. */
export function words(seed: number, name: string): (position: number) => number {
  const uniform = uniforms(seed, name);
  return (position) => Math.floor(uniform(position) * 0x1_0000_0000);
}
