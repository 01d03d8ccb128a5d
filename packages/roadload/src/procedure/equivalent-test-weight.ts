import { InputError, type Mass, type Quantity, quantity, readOptions, type Source } from "@tarewatt/units";
import { doubtsOfRules, type Rule, rules } from "./rule.js";

/** Load that the test weight basis adds to the curb mass, in lb: 86.129-94, as quoted. */
const LOAD = 300;
/** Above this the classes go on in even steps, all in lb; from memory. */
const EVEN = { from: 5751, first: 6000, step: 500, halfWidth: 250, upTo: 14_250 } as const;

/**
 * Classes of 40 CFR 1066.805, table 1, in lb: largest test weight basis, equivalent test weight, inertia weight class. The
 * class begins 1 lb above the end of the one before.
 */
// biome-ignore format: as a table
const CLASSES: readonly (readonly [upTo: number, testWeight: number, inertiaClass: number])[] = [
  [1062, 1000, 1000], [1187, 1125, 1000], [1312, 1250, 1250], [1437, 1375, 1250], [1562, 1500, 1500],
  [1687, 1625, 1500], [1812, 1750, 1750], [1937, 1875, 1750], [2062, 2000, 2000], [2187, 2125, 2000],
  [2312, 2250, 2250], [2437, 2375, 2250], [2562, 2500, 2500], [2687, 2625, 2500], [2812, 2750, 2750],
  [2937, 2875, 2750], [3062, 3000, 3000], [3187, 3125, 3000], [3312, 3250, 3000], [3437, 3375, 3500],
  [3562, 3500, 3500], [3687, 3625, 3500], [3812, 3750, 3500], [3937, 3875, 4000], [4125, 4000, 4000],
  [4375, 4250, 4000], [4625, 4500, 4500], [4875, 4750, 4500], [5125, 5000, 5000], [5375, 5250, 5000],
  [5750, 5500, 5500],
];
/** Largest test weight basis that was read in the table; beyond, and for the inertia class of 4626 to 4875 lb, memory. */
const SEEN_UP_TO = 4625;

/** Options of {@link equivalentTestWeight}. */
export interface EquivalentTestWeightOptions {
  /** Curb mass: ready to drive, with the usual equipment, without driver. */
  readonly curbMass: Quantity<Mass>;
}

/** A class of the US table of test weights. */
export interface TestWeightClass {
  /** Mass that the test is run with. */
  readonly equivalentTestWeight: Quantity<Mass>;
  /** Inertia weight class, under which some US tables list it. */
  readonly inertiaWeightClass: Quantity<Mass>;
  /** Curb masses that fall into the class. */
  readonly curbMass: {
    /** Lightest. */
    readonly low: Quantity<Mass>;
    /** Heaviest. */
    readonly high: Quantity<Mass>;
  };
  /** Where the class is from. */
  readonly source: Source;
  /** The rules behind it. */
  readonly rules: readonly Rule[];
  /** What a reader should doubt. */
  readonly warnings: readonly string[];
}

/**
 * Mass that a US test is run with: the curb mass and 300 lb, put into a class of 125 to 500 lb.
 *
 * @param options - curb mass
 * @returns the class
 * @throws InputError `OUT_OF_RANGE` beyond 14 000 lb, and what `readOptions` throws
 * @example
 * equivalentTestWeight({ curbMass: q("4,180 lb") }).equivalentTestWeight; // 4500 lb
 */
export function equivalentTestWeight(options: EquivalentTestWeightOptions): TestWeightClass {
  const { curbMass } = readOptions("equivalentTestWeight", options, {
    curbMass: { unit: "lb", above: 0, atMost: EVEN.upTo - LOAD },
  });
  // The table is in whole pounds.
  return classOf(Math.round(curbMass + LOAD));
}

/** Options of {@link curbMassOfTestWeight}. */
export interface CurbMassOfTestWeightOptions {
  /** Equivalent test weight, as US test car lists print it. */
  readonly equivalentTestWeight: Quantity<Mass>;
}

/**
 * What an equivalent test weight says of the curb mass: the class that it stands for, less 300 lb.
 *
 * @param options - equivalent test weight
 * @returns the class, with the curb masses that fall into it
 * @throws InputError `WRONG_CHOICE` when the table has no such weight, and what `readOptions` throws
 * @example
 * curbMassOfTestWeight({ equivalentTestWeight: q("5,500 lb") }).curbMass.low; // 5076 lb
 */
export function curbMassOfTestWeight(options: CurbMassOfTestWeightOptions): TestWeightClass {
  const { equivalentTestWeight: given } = readOptions("curbMassOfTestWeight", options, {
    equivalentTestWeight: { unit: "lb", above: 0, atMost: EVEN.upTo },
  });
  const weight = Math.round(given);
  const found = weight < EVEN.first ? CLASSES.find((row) => row[1] === weight)?.[0] : weight;
  const whole = Math.abs(given - weight) < 0.5 && (weight < EVEN.first || (weight - EVEN.first) % EVEN.step === 0);
  if (found === undefined || !whole) {
    throw new InputError(
      "WRONG_CHOICE",
      `the table of 40 CFR 1066.805 has no equivalent test weight of ${given} lb; its neighbours are ${neighbours(given)} lb`,
      { given },
    );
  }
  return classOf(found);
}

function allWeights(): number[] {
  return [...CLASSES.map((row) => row[1]), ...Array.from({ length: 17 }, (_, i) => EVEN.first + i * EVEN.step)];
}

/** Whether a mass in lb is an equivalent test weight, to half a percent: weights are often given in whole kilograms. @internal */
export function isTestWeight(given: number): boolean {
  return allWeights().some((weight) => Math.abs(given / weight - 1) < 0.005);
}

/** The equivalent test weights beside a mass in lb, in words. @internal */
export function neighbours(given: number): string {
  const all = allWeights();
  const above = all.findIndex((weight) => weight > given);
  return above <= 0 ? String(all[0]) : `${all[above - 1]} and ${all[above]}`;
}

function classOf(basis: number): TestWeightClass {
  const index = CLASSES.findIndex(([upTo]) => basis <= upTo);
  const row = CLASSES[index];
  const even = EVEN.first + EVEN.step * Math.ceil((basis - EVEN.first - EVEN.halfWidth) / EVEN.step);
  const [upTo, testWeight, inertiaClass] = row ?? [even + EVEN.halfWidth, even, even];
  const low = row === undefined ? even - EVEN.halfWidth + 1 : (CLASSES[index - 1]?.[0] ?? LOAD) + 1;
  const seen = upTo <= SEEN_UP_TO;
  const source: Source = {
    document: "40 CFR 1066.805",
    section: seen ? "table 1" : "table 1; this row from memory",
    status: seen ? "seen" : "memory",
  };
  const list = rules(
    { rule: `the class of ${testWeight} lb`, source },
    { rule: "test weight basis is curb mass and 300 lb", source: { document: "40 CFR 86.129-94", status: "quoted" } },
  );
  const pounds = (value: number) => quantity(value, "lb");
  return Object.freeze({
    equivalentTestWeight: pounds(testWeight),
    inertiaWeightClass: pounds(inertiaClass),
    curbMass: Object.freeze({ low: pounds(low - LOAD), high: pounds(upTo - LOAD) }),
    source: Object.freeze(source),
    rules: list,
    warnings: Object.freeze(doubtsOfRules(list)),
  });
}
