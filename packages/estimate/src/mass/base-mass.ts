import { InputError, type Mass, type Quantity, quantity, readNumber, readOptions, type Working } from "@tarewatt/units";
import type { LowLikelyHigh } from "../evidence/evidence.js";
import { type Adjustment, type AdjustmentRead, readAdjustment } from "./adjustment.js";
import { adjustedBaseMass, comparatorBaseMass } from "./relations.js";
import { spreadOf } from "./spread-of-base.js";

/** A vehicle on sale whose masses are known. */
export interface Comparator {
  /** How it is called in the report; no two comparators share a name. */
  readonly name: string;
  /** Curb mass: ready to drive, without driver and load. For an EU mass in running order take 75 kg off first. */
  readonly curbMass: Quantity<Mass>;
  /** Mass of its whole pack, housing included. */
  readonly packMass: Quantity<Mass>;
  /** What the vehicle to be estimated has more or less than this comparator. */
  readonly adjustments?: readonly Adjustment[] | undefined;
  /** Where its masses are from. */
  readonly source?: string | undefined;
}

/** What {@link baseMass} needs. */
export interface BaseMassOptions {
  /** One or more comparators. */
  readonly comparators: readonly Comparator[];
  /** Differences from all comparators alike. */
  readonly adjustments?: readonly Adjustment[] | undefined;
  /**
   * Half-width of the scatter from vehicle to vehicle, as a share of the base mass, 0 to 1: its 10th and 90th percentiles
   * are that far away. Needed for a single comparator, whose scatter cannot be seen; otherwise the comparators' own is used.
   */
  readonly scatter?: number | undefined;
}

/** What one adjustment does to the base mass. */
export interface AdjustmentEffect {
  /** Its reason. */
  readonly reason: string;
  /** Mean over the comparators, 10th percentile. */
  readonly low: Quantity<Mass>;
  /** Mean over the comparators, likely. */
  readonly likely: Quantity<Mass>;
  /** Mean over the comparators, 90th percentile. */
  readonly high: Quantity<Mass>;
  /** Source and grade as given, in words. */
  readonly source: string;
}

/** What one comparator says. */
export interface ComparatorBaseMass {
  /** Its name. */
  readonly name: string;
  /** Its curb mass. */
  readonly curbMass: Quantity<Mass>;
  /** Its pack mass. */
  readonly packMass: Quantity<Mass>;
  /** Curb mass less pack mass. */
  readonly baseMass: Quantity<Mass>;
  /** Sum of all adjustments, at their likely values. */
  readonly adjustment: Quantity<Mass>;
  /** What it says of the base mass of the vehicle to be estimated. */
  readonly adjusted: Quantity<Mass>;
  /** Source as given. */
  readonly source: string;
}

/** The mass of a vehicle without its pack, as its comparators say. */
export interface BaseMass {
  /** Basis of the mass: curb mass less the whole pack. */
  readonly basis: "curb mass less pack mass";
  /** Base mass as evidence for a vehicle. */
  readonly mass: LowLikelyHigh<Quantity<Mass>>;
  /** Mean pack mass of the comparators: the pack that their structure was built to carry. */
  readonly referencePackMass: Quantity<Mass>;
  /** Each comparator's say. */
  readonly comparators: readonly ComparatorBaseMass[];
  /** What each adjustment does. */
  readonly adjustments: readonly AdjustmentEffect[];
  /** Half-width from likely to the 90th percentile that comes from the scatter between vehicles alone. */
  readonly scatter: Quantity<Mass>;
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
  /** The steps, at likely values, from each comparator to the mean and its spread. */
  working(): Working;
}

/**
 * Base mass of a vehicle, its curb mass without the pack, from one or more comparators.
 *
 * Each comparator gives curb mass less pack mass, plus the stated adjustments. The likely value is their mean. The
 * spread joins the scatter between vehicles, as a prediction interval for one more of them
 * (t₉₀ · s · √(1 + 1/n), n − 1 degrees of freedom), with the spread of the adjustments, as the root of the sum of squares, each side
 * on its own (JCGM 100:2008, 5.1.2, from memory). Adjustments with one reason are one unknown and add up before that.
 *
 * @param options - comparators, adjustments and, for a single comparator, its scatter
 * @returns base mass with its spread, what each comparator says and what each adjustment does
 * @throws InputError `EMPTY`, `INCONSISTENT` when a pack is not lighter than its vehicle or a name comes twice, `MISSING_OPTION`
 *   when a single comparator has no scatter, `NOT_VALID_HERE` when the spread would reach zero mass
 * @example
 * baseMass({
 *   comparators: [
 *     { name: "van A (invented)", curbMass: q("2480 kg"), packMass: q("560 kg") },
 *     { name: "van B (invented)", curbMass: q("2390 kg"), packMass: q("520 kg"), adjustments: [{ reason: "second motor", mass: q("70 kg") }] },
 *   ],
 * }).mass.likely.in("kg"); // 1930
 */
export function baseMass(options: BaseMassOptions): BaseMass {
  readOptions("baseMass", options, {}, ["comparators", "adjustments?", "scatter?"]);
  const shared = readList("adjustments", options.adjustments);
  const read = readList("comparators", options.comparators).map((each) => readComparator(each as Comparator, shared));
  if (read.length === 0) throw new InputError("EMPTY", "baseMass needs at least one comparator", {});
  refuseRepeated(read.map(({ name }) => name));
  const says = read.map(({ base, adjustment }) => base + adjustment);
  const effects = effectsByReason(read.map(({ adjustments }) => adjustments));
  const given = options.scatter === undefined ? undefined : readNumber("scatter", options.scatter, SHARE);
  const spread = spreadOf(says, effects, given);
  const { low, mean, high, scatter } = spread;
  if (!(low > 0)) {
    throw new InputError(
      "NOT_VALID_HERE",
      `the comparators and adjustments give a base mass of ${mean.toFixed(0)} kg with a low end of ${low.toFixed(0)} kg: check their signs and sizes`,
      { low, likely: mean, high },
    );
  }
  return Object.freeze({
    basis: "curb mass less pack mass",
    mass: Object.freeze({
      low: kg(low),
      likely: kg(mean),
      high: kg(high),
      grade: "derived",
      source: `${read.length} comparator${read.length === 1 ? "" : "s"} and the stated adjustments`,
    }),
    referencePackMass: kg(sum(read.map(({ pack }) => pack)) / read.length),
    comparators: Object.freeze(
      read.map(({ name, curb, pack, base, adjustment, source }) =>
        Object.freeze({
          name,
          curbMass: kg(curb),
          packMass: kg(pack),
          baseMass: kg(base),
          adjustment: kg(adjustment),
          adjusted: kg(base + adjustment),
          source,
        }),
      ),
    ),
    adjustments: Object.freeze(
      effects.map(({ reason, low, likely, high, source }) =>
        Object.freeze({ reason, low: kg(low), likely: kg(likely), high: kg(high), source }),
      ),
    ),
    scatter: kg(scatter),
    warnings: Object.freeze(given === undefined ? fewComparators(says.length, scatter / mean) : []),
    working: () => {
      const working: Working = [];
      for (const { curb, pack, base, adjustment } of read) {
        comparatorBaseMass.of({ curbMass: curb, packMass: pack }, working);
        adjustedBaseMass.of({ baseMass: base, adjustment }, working);
      }
      spreadOf(says, effects, given, working);
      return working;
    },
  } as const);
}

const SHARE = { unit: "1", atLeast: 0, atMost: 1 } as const;

interface ComparatorRead {
  readonly name: string;
  readonly source: string;
  readonly curb: number;
  readonly pack: number;
  readonly base: number;
  readonly adjustments: readonly AdjustmentRead[];
  /** Sum of the adjustments at their likely values. */
  readonly adjustment: number;
}

function readComparator(given: Comparator, shared: readonly unknown[]): ComparatorRead {
  readOptions("a comparator", given, {}, ["name", "curbMass", "packMass", "adjustments?", "source?"]);
  const { name, source = "" } = given;
  if (typeof name !== "string" || typeof source !== "string") {
    throw new InputError("WRONG_CHOICE", "name and source of a comparator must be texts", {});
  }
  const curb = readNumber(`curbMass of ${name}`, given.curbMass, { unit: "kg", above: 0 });
  const pack = readNumber(`packMass of ${name}`, given.packMass, { unit: "kg", atLeast: 0 });
  if (pack >= curb) {
    throw new InputError(
      "INCONSISTENT",
      `${name}: the pack (${given.packMass}) must be lighter than the vehicle (${given.curbMass})`,
      { curbMass: curb, packMass: pack },
    );
  }
  const masses = { "base mass": curb - pack, "curb mass": curb, "pack mass": pack };
  const own = readList(`adjustments of ${name}`, given.adjustments);
  const adjustments = [...own, ...shared].map((each) => readAdjustment(each as Adjustment, masses));
  const adjustment = sum(adjustments.map(({ likely }) => likely));
  return { name, source, curb, pack, base: curb - pack, adjustments, adjustment };
}

function readList(name: string, given: unknown): readonly unknown[] {
  if (given === undefined) return [];
  if (Array.isArray(given)) return given;
  throw new InputError("NOT_AN_OBJECT", `${name} must be a list, such as [{ ... }, { ... }]`, { name });
}

function refuseRepeated(names: readonly string[]): void {
  const repeated = names.find((name, i) => names.indexOf(name) < i);
  if (repeated === undefined) return;
  throw new InputError("INCONSISTENT", `the comparator '${repeated}' is listed twice: it would count as two vehicles`, {
    name: repeated,
  });
}

/** Few vehicles can agree by chance. */
function fewComparators(count: number, share: number): string[] {
  const percent = Number((100 * share).toPrecision(2));
  if (count === 2)
    return [
      `two comparators show little of the scatter between vehicles (± ${percent} % here): add one, or state scatter`,
    ];
  if (share < 0.02)
    return [
      `the ${count} comparators agree to ± ${percent} %, which so few may do by chance: consider stating scatter`,
    ];
  return [];
}

/** The mean effect over all comparators of the adjustments that share a reason. */
function effectsByReason(
  perComparator: readonly (readonly AdjustmentRead[])[],
): { reason: string; low: number; likely: number; high: number; source: string }[] {
  const effects = new Map<string, { low: number; likely: number; high: number; source: string }>();
  for (const { reason, source, grade, low, likely, high } of perComparator.flat()) {
    const stated = source === "" ? grade : `${source} (${grade})`;
    const sofar = effects.get(reason) ?? { low: 0, likely: 0, high: 0, source: stated };
    const share = 1 / perComparator.length;
    effects.set(reason, {
      ...sofar,
      low: sofar.low + low * share,
      likely: sofar.likely + likely * share,
      high: sofar.high + high * share,
    });
  }
  return [...effects].map(([reason, effect]) => ({ reason, ...effect }));
}

function kg(value: number): Quantity<Mass> {
  return quantity(value, "kg");
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, each) => total + each, 0);
}
