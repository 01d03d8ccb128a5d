import { describeGiven, InputError } from "@tarewatt/units";
import { sha256 } from "./sha256.js";

/** Nobody nests an estimate deeper, and a hostile file must not exhaust the stack. */
const DEEPEST = 32;

/**
 * @internal The one way to write a value as JSON, after RFC 8785 (JSON Canonicalization Scheme; from memory): names of objects in the order of their
 * UTF-16 code units, no white space, numbers and texts as ECMAScript's `JSON.stringify` writes them. Parts that are undefined are left out.
 */
export function canonicalJson(value: unknown, depth = 0): string {
  if (depth > DEEPEST) throw new InputError("TOO_LONG", `JSON nested deeper than ${DEEPEST} is not read`, {});
  if (typeof value === "string") return wellFormed(value);
  if (value === null || typeof value === "boolean") return String(value);
  if (typeof value === "number" && Number.isFinite(value)) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map((each) => canonicalJson(each, depth + 1)).join(",")}]`;
  if (typeof value !== "object") {
    throw new InputError("WRONG_CHOICE", `JSON cannot hold ${describeGiven(value)}`, {});
  }
  const parts = Object.entries(value)
    .filter(([, part]) => part !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, part]) => `${wellFormed(key)}:${canonicalJson(part, depth + 1)}`);
  return `{${parts.join(",")}}`;
}

/** Half of a surrogate pair has no UTF-8 form, and RFC 8785 refuses it. */
function wellFormed(text: string): string {
  if (/\p{Surrogate}/u.test(text)) {
    throw new InputError("WRONG_CHOICE", "a text holds half of a surrogate pair, which no file can keep", {});
  }
  return JSON.stringify(text);
}

/** @internal Names the algorithm with the digest. */
export function digestOf(value: unknown): string {
  return `sha256:${sha256(utf8(canonicalJson(value)))}`;
}

/** Well-formed text as UTF-8; `TextEncoder` is not a part of the language. */
function utf8(text: string): Uint8Array {
  const bytes: number[] = [];
  for (const character of text) {
    const code = character.codePointAt(0) as number;
    if (code < 0x80) bytes.push(code);
    else if (code < 0x800) bytes.push(0xc0 | (code >> 6), 0x80 | (code & 63));
    else if (code < 0x10000) bytes.push(0xe0 | (code >> 12), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63));
    else bytes.push(0xf0 | (code >> 18), 0x80 | ((code >> 12) & 63), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63));
  }
  return Uint8Array.from(bytes);
}
