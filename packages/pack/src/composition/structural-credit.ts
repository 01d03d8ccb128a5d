import {
  describeGiven,
  InputError,
  type Mass,
  type NumberRule,
  nearest,
  type Quantity,
  quantity,
  type Ratio,
  readNumber,
  readOptions,
} from "@tarewatt/units";
import { isArray } from "../check/is-array.js";
import { readText } from "../check/read-text.js";

/** A part of the body that a structural pack replaces. */
export interface ReplacedBodyPart {
  /** What it is called: `"floor panel"`, `"cross members"`. */
  readonly name: string;
  /** Its mass. Not negative. */
  readonly mass: Quantity<Mass>;
}

/** Options of {@link structuralCredit}: parts one by one, or a claimed share of the vehicle's mass, never both. */
export interface StructuralCreditOptions {
  /** Parts of the body that the pack replaces. */
  readonly replaced?: readonly ReplacedBodyPart[] | undefined;
  /**
   * Names of parts that the base mass leaves out already: they save nothing again. A name that nearly is one of `replaced` is refused;
   * one that is none of them is warned about.
   */
  readonly leftOutOfBase?: readonly string[] | undefined;
  /** Claimed saving over the mass of the vehicle: 0 to 0.3. See `structuralPackClaim`. */
  readonly claimedShare?: number | Quantity<Ratio> | undefined;
  /** Mass of the vehicle that the claim was made for. Greater than zero. */
  readonly claimedFor?: Quantity<Mass> | undefined;
  /** What the pack is heavier by because it carries loads. Not negative; zero when left out. */
  readonly packHeavierBy?: Quantity<Mass> | undefined;
}

/** What a structural pack takes off the body. */
export interface StructuralCredit {
  /** Mass to take off the base mass, before what the pack is heavier by. */
  readonly offBody: Quantity<Mass>;
  /** Mass that the vehicle saves: off the body, less what the pack is heavier by. Negative when it saves nothing. */
  readonly saved: Quantity<Mass>;
  /** What it rests on, in words. */
  readonly basis: string;
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
}

const MASS = { unit: "kg", above: 0, optional: true } as const satisfies NumberRule;

const rules = {
  claimedShare: { unit: "1", atLeast: 0, atMost: 0.3, optional: true },
  claimedFor: MASS,
  packHeavierBy: { unit: "kg", atLeast: 0, optional: true },
} as const satisfies Readonly<Record<string, NumberRule>>;

/** More than a list that somebody wrote. */
const MOST_PARTS = 1000;

/**
 * What a structural pack takes off the body, counted once: from the parts that it replaces, or from a claim.
 *
 * A claim holds its parts, so both together are refused; a part that the base mass leaves out already is refused as well, and a
 * part that is named twice. A claim need not scale to a larger vehicle: the result says so.
 *
 * @param options - parts, or claimed share and what it was claimed for; what the pack is heavier by
 * @returns the mass off the body, and what is saved
 * @throws InputError `COUNTED_TWICE`, `MISSING_OPTION`, `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `WRONG_CHOICE`,
 *   `NOT_AN_OBJECT`, `UNKNOWN_OPTION`
 * @example
 * const replaced = [{ name: "floor panel", mass: q("22 kg") }, { name: "cross members", mass: q("18 kg") }];
 * structuralCredit({ replaced, packHeavierBy: q("15 kg") }).saved; // 25 kg
 */
export function structuralCredit(options: StructuralCreditOptions): StructuralCredit {
  const numbers = readOptions("structuralCredit", options, rules, ["replaced?", "leftOutOfBase?"]);
  const { claimedShare, claimedFor, packHeavierBy = 0 } = numbers;
  const replaced = readReplaced(options.replaced);
  const gone = readNames(options.leftOutOfBase);
  if (replaced !== undefined && claimedShare !== undefined) {
    twice("a claimed share holds the parts that are replaced: give claimedShare or replaced, not both");
  }
  if (replaced === undefined && claimedShare === undefined) {
    throw new InputError("MISSING_OPTION", "structuralCredit needs replaced, or claimedShare with claimedFor", {});
  }
  const seen = new Set<string>();
  for (const { name } of replaced ?? []) {
    if (gone.some((left) => plain(left) === plain(name)))
      twice(`'${name}' is left out of the base mass already: it cannot be taken off again`);
    if ([...seen].some((other) => plain(other) === plain(name)))
      twice(`'${name}' stands twice among the replaced parts`);
    seen.add(name);
  }
  assertNoneNear(gone, [...seen]);
  if (claimedShare !== undefined && claimedFor === undefined) {
    throw new InputError(
      "MISSING_OPTION",
      "claimedShare needs claimedFor, the mass of the vehicle it was claimed for",
      {},
    );
  }
  const offBody =
    replaced === undefined
      ? (claimedShare ?? 0) * (claimedFor ?? 0)
      : replaced.reduce((sum, { mass }) => sum + mass.in("kg"), 0);
  const saved = offBody - packHeavierBy;
  return Object.freeze({
    offBody: quantity(offBody, "kg"),
    saved: quantity(saved, "kg"),
    basis: replaced === undefined ? "a claim, no measurement" : `parts replaced: ${[...seen].join(", ")}`,
    warnings: Object.freeze([
      ...(replaced === undefined ? ["the saving is a claim for one vehicle, and need not scale to another"] : []),
      ...idleDoubts(gone, replaced === undefined),
      ...(saved < 0 ? [`the pack is heavier by more than it takes off the body: ${quantity(saved, "kg")}`] : []),
    ]),
  });
}

/** A name that nearly is that of a replaced part is a slip that would count the part twice. */
function assertNoneNear(gone: readonly string[], replaced: readonly string[]): void {
  for (const name of gone) {
    const [near] = nearest(plain(name), replaced.map(plain));
    if (near === undefined) continue;
    throw new InputError(
      "COUNTED_TWICE",
      `leftOutOfBase names '${name}', and no replaced part is called so: did you mean '${near}'? It cannot be left out and taken ` +
        "off again; where they are two parts, give them names further apart",
      { name, near },
    );
  }
}

function idleDoubts(idle: readonly string[], claim: boolean): string[] {
  if (idle.length === 0) return [];
  const names = idle.map((name) => `'${name}'`).join(", ");
  return [
    claim
      ? `a claim does not say which parts it holds: whether ${names}, left out of the base mass, is counted twice is not known`
      : `${names}, left out of the base mass, is none of the replaced parts: it changes nothing`,
  ];
}

/** A capital letter or a space makes no other part. */
function plain(name: string): string {
  return name.trim().replace(/\s+/g, " ").toLowerCase();
}

function readReplaced(given: unknown): readonly ReplacedBodyPart[] | undefined {
  if (given === undefined) return undefined;
  return readList("replaced", given).map((part, i) => {
    readOptions(`replaced[${i}]`, part as object, { mass: { unit: "kg", atLeast: 0 } }, ["name"]);
    const { name, mass } = part as ReplacedBodyPart;
    return { name: readText(`replaced[${i}].name`, name) as string, mass };
  });
}

function readNames(given: unknown): readonly string[] {
  if (given === undefined) return [];
  return readList("leftOutOfBase", given).map((name, i) => {
    const text = readText(`leftOutOfBase[${i}]`, name);
    if (text !== undefined) return text;
    throw new InputError("WRONG_CHOICE", `leftOutOfBase[${i}] must be a text: got undefined`, {});
  });
}

function readList(name: string, given: unknown): readonly unknown[] {
  if (!isArray(given)) {
    throw new InputError("WRONG_CHOICE", `${name} must be an array: got ${describeGiven(given)}`, { name });
  }
  readNumber(`the number of ${name}`, given.length, { unit: "1", atMost: MOST_PARTS });
  return Array.from(given);
}

function twice(message: string): never {
  throw new InputError("COUNTED_TWICE", message, {});
}
