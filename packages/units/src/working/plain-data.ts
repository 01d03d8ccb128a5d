import { describeGiven } from "../check/describe-given.js";
import { InputError } from "../check/errors.js";
import { isRecord } from "../check/shapes.js";
import { isQuantity } from "../quantity/brand.js";

/** Data that JSON and the structured clone of browsers and workers can carry. */
export type PlainData =
  | null
  | boolean
  | number
  | string
  | readonly PlainData[]
  | { readonly [name: string]: PlainData };

/** Deeper than any result: what nests so far is no data. */
const DEEPEST = 64;

/**
 * A result as plain data, to store, to send to a worker, or to compare with another run: every number is kept with its unit, and the
 * steps of its working with it.
 *
 * Quantities become `{ value, unit, kind }`, see {@link quantityFromJSON}; lists of numbers become arrays; what is undefined is left
 * out. A function `working` that takes nothing is asked for its steps, which stand in its place; other functions are left out, because no data says what they do:
 * make the object again from what it was made of.
 *
 * @param result - any result of this library, or anything made of such
 * @returns frozen plain data
 * @throws InputError `NOT_A_NUMBER` for a number that is not finite, which JSON would turn into null, `WRONG_CHOICE` for what is no data,
 *   `INCONSISTENT` for what holds itself, `TOO_LONG` for what nests deeper than 64 times; each says where
 * @example
 * const stored = JSON.stringify(plainData({ mass: q("2.61 t"), warnings: [], at: () => 0 }));
 * stored; // '{"mass":{"value":2.61,"unit":"t","kind":""},"warnings":[]}'
 * quantityFromJSON(JSON.parse(stored).mass, "kg").in("kg"); // 2610
 */
export function plainData(result: unknown): PlainData {
  return plain(result, "", []);
}

function plain(given: unknown, path: string, inside: readonly unknown[]): PlainData {
  const at = path === "" ? "the result" : path;
  if (given === null || typeof given === "boolean" || typeof given === "string") return given;
  if (typeof given === "number") {
    if (Number.isFinite(given)) return given;
    throw new InputError("NOT_A_NUMBER", `${at} must be finite to be plain data: got ${given}`, { path });
  }
  if (isQuantity(given)) return Object.freeze({ ...given.toJSON() });
  if (inside.length >= DEEPEST) {
    throw new InputError("TOO_LONG", `plain data nests at most ${DEEPEST} times: ${at} lies deeper`, { path });
  }
  if (inside.includes(given)) {
    throw new InputError("INCONSISTENT", `${at} holds itself: plain data cannot`, { path });
  }
  const deeper = [...inside, given];
  const items = listOf(given);
  if (items !== undefined) return Object.freeze(items.map((each, i) => plain(each, `${path}[${i}]`, deeper)));
  const entries = entriesOf(given);
  if (entries === undefined) {
    throw new InputError("WRONG_CHOICE", `${at} must be plain data: got ${describeGiven(given)}`, { path });
  }
  return Object.freeze(
    Object.fromEntries(
      entries.flatMap(([name, value]) => {
        const told =
          name === "working" && typeof value === "function" && value.length === 0 ? value.call(given) : value;
        if (told === undefined || typeof told === "function") return [];
        return [[name, plain(told, path === "" ? name : `${path}.${name}`, deeper)] as const];
      }),
    ),
  );
}

/** The items of an array, or of a list of numbers. */
function listOf(given: unknown): readonly unknown[] | undefined {
  try {
    if (Array.isArray(given)) return given;
    if (ArrayBuffer.isView(given) && !(given instanceof DataView))
      return Array.from(given as unknown as ArrayLike<number>);
  } catch {
    // A revoked proxy is nothing that can be read
  }
  return undefined;
}

/** Names and values of a plain object; a date or a map is none. */
function entriesOf(given: unknown): readonly (readonly [string, unknown])[] | undefined {
  if (!isRecord(given)) return undefined;
  try {
    return Object.prototype.toString.call(given) === "[object Object]" ? Object.entries(given) : undefined;
  } catch {
    return undefined;
  }
}
