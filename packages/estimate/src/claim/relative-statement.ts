import { describeGiven, InputError, readNumber, readOptions } from "@tarewatt/units";

/** The parts of a vehicle that a statement can be about. */
export type StatementPart = "cell" | "pack" | "body" | "vehicle";

/** What a statement can say of a part. */
export type StatementQuantity = "mass" | "specific energy" | "energy density" | "energy" | "consumption" | "range";

/** What {@link relativeStatement} needs. */
export interface RelativeStatementOptions {
  /** The change as a share, above -1: -0.1 for 10 % lighter, 0.2 for 20 % denser. */
  readonly change: number;
  /** Of what: "denser" is more specific energy (per mass) or more energy density (per volume). */
  readonly of: StatementQuantity;
  /** Of which part: a cell 20 % denser is not a pack 20 % denser. */
  readonly part: StatementPart;
  /** With what it is compared, in words. */
  readonly than: string;
  /** Who said it and where. */
  readonly source?: string | undefined;
}

/** "x % lighter, denser, further", with its base named. */
export interface RelativeStatement extends RelativeStatementOptions {
  /** The statement in words. */
  readonly words: string;
}

const parts: readonly StatementPart[] = ["cell", "pack", "body", "vehicle"];

/** What a statement of one quantity can be a cause of: it drives itself and these. */
const drives: Readonly<Record<StatementQuantity, readonly StatementQuantity[]>> = {
  mass: ["mass", "specific energy", "consumption", "range"],
  "specific energy": ["specific energy", "mass", "energy", "consumption", "range"],
  "energy density": ["energy density", "energy", "range"],
  energy: ["energy", "mass", "consumption", "range"],
  consumption: ["consumption", "energy", "mass", "range"],
  range: ["range"],
};

/** What holds a part, the part itself included. */
const holders: Readonly<Record<StatementPart, readonly StatementPart[]>> = {
  cell: ["cell", "pack", "vehicle"],
  pack: ["pack", "vehicle"],
  body: ["body", "vehicle"],
  vehicle: ["vehicle"],
};

/** Where each quantity makes sense. */
const partsOf: Readonly<Record<StatementQuantity, readonly StatementPart[]>> = {
  mass: parts,
  "specific energy": ["cell", "pack"],
  "energy density": ["cell", "pack"],
  energy: ["cell", "pack"],
  consumption: ["vehicle"],
  range: ["vehicle"],
};

/**
 * A statement such as "20 % denser", with its base: of which part, of which quantity, than what.
 *
 * @param options - change, quantity, part and comparison
 * @returns the statement, frozen, in words
 * @throws InputError `WRONG_CHOICE` for a part or quantity that there is not or that do not go together, `OUT_OF_RANGE`, `UNKNOWN_OPTION`
 * @example
 * relativeStatement({ change: 0.2, of: "specific energy", part: "cell", than: "the maker's last cell" }).words; // "specific energy of the cell 20 % more than the maker's last cell"
 */
export function relativeStatement(options: RelativeStatementOptions): RelativeStatement {
  readOptions("relativeStatement", options, {}, ["change", "of", "part", "than", "source?"]);
  const { of, part, than, source } = options;
  const change = readNumber("change", options.change, { unit: "1", above: -1, atMost: 10 });
  const wrong = (what: string, got: unknown, known: readonly string[]): never => {
    throw new InputError("WRONG_CHOICE", `${what} must be one of ${known.join(", ")}: got ${describeGiven(got)}`, {
      known,
    });
  };
  if (typeof of !== "string" || !Object.hasOwn(drives, of)) wrong("'of'", of, Object.keys(drives));
  if (!parts.includes(part)) wrong("part", part, parts);
  if (!partsOf[of].includes(part)) wrong(`the part whose ${of} is meant`, part, partsOf[of]);
  for (const [name, text] of [
    ["than", than],
    ...(source === undefined ? [] : [["source", source] as const]),
  ] as const) {
    if (typeof text !== "string" || text.trim() === "") {
      throw new InputError("WRONG_CHOICE", `${name} must say it in words: got ${describeGiven(text)}`, { name });
    }
  }
  const percent = Number((100 * Math.abs(change)).toPrecision(3));
  return Object.freeze({
    ...{ change, of, part, than },
    ...(source === undefined ? {} : { source }),
    words: `${of} of the ${part} ${percent} % ${change < 0 ? "less" : "more"} than ${than}`,
  });
}

/** Two statements that may count one thing twice. */
export interface StatementOverlap {
  /** The narrower one: the cause. */
  readonly cause: RelativeStatement;
  /** The wider one, which may hold the effect of the cause. */
  readonly effect: RelativeStatement;
  /** Whether both compare with the same thing, as far as their words tell. */
  readonly sameBase: boolean;
  /** What overlaps, in words, and what to do about it. */
  readonly words: string;
}

/**
 * Finds statements that may count one thing twice: "cells 20 % denser" and "a pack 15 % lighter" are not two gains, when the pack is
 * lighter because its cells are denser.
 *
 * @param statements - statements, as {@link relativeStatement} gives or takes them
 * @returns every pair of which one can be the cause of the other; see {@link changeLeft} for what is left of the wider one
 * @throws InputError as {@link relativeStatement} does, and `WRONG_CHOICE` for no list
 * @example
 * const found = overlapsOf([
 *   { change: 0.2, of: "specific energy", part: "cell", than: "the last model" },
 *   { change: -0.15, of: "mass", part: "pack", than: "the last model" },
 *   { change: -0.1, of: "mass", part: "body", than: "the last model" },
 * ]);
 * found.map(({ cause, effect }) => [cause.part, effect.part]); // [["cell", "pack"]]
 */
export function overlapsOf(statements: readonly RelativeStatementOptions[]): readonly StatementOverlap[] {
  if (!Array.isArray(statements)) {
    throw new InputError("WRONG_CHOICE", `statements must be a list: got ${describeGiven(statements)}`, {});
  }
  const read = Array.from(statements as readonly RelativeStatementOptions[], again);
  const overlaps = read.flatMap((one, i) =>
    read.slice(i + 1).flatMap((other): StatementOverlap[] => {
      if (canCause(one, other)) return [overlap(one, other)];
      return canCause(other, one) ? [overlap(other, one)] : [];
    }),
  );
  return Object.freeze(overlaps);
}

function again(given: RelativeStatementOptions): RelativeStatement {
  if (typeof given !== "object" || given === null) return relativeStatement(given);
  const { words: _, ...options } = given as RelativeStatement;
  return relativeStatement(options);
}

function canCause(cause: RelativeStatement, effect: RelativeStatement): boolean {
  return holders[cause.part].includes(effect.part) && drives[cause.of].includes(effect.of);
}

function overlap(cause: RelativeStatement, effect: RelativeStatement): StatementOverlap {
  const sameBase = cause.than === effect.than;
  const base = sameBase ? "" : `; they compare with different things, '${cause.than}' and '${effect.than}'`;
  return Object.freeze({
    cause,
    effect,
    sameBase,
    words: `'${effect.words}' may hold the effect of '${cause.words}': count one of them, or the first and what it leaves of the other${base}`,
  });
}
