import { InputError, type Mass, type Quantity, quantity, readNumber, readOptions, type Working } from "@tarewatt/units";
import type { LowLikelyHigh } from "../evidence/evidence.js";
import { type Adjustment, type AdjustmentRead, readAdjustment } from "./adjustment.js";
import { adjustedBaseMass, comparatorBaseMass } from "./relations.js";
import { studentT90 } from "./student.js";

/** A vehicle on sale whose masses are known. */
export interface Comparator {
  /** How it is called in the report. */
  readonly name: string;
  /** Curb mass: ready to drive, without driver and load. For an EU mass in running order take 75 kg off first. */
  readonly curbMass: Quantity<Mass>;
  /** Mass of its whole pack, housing included. */
  readonly packMass: Quantity<Mass>;
  /** What the vehicle to be estimated has more or less than this comparator. */
  readonly adjustments?: readonly Adjustment[];
  /** Where its masses are from. */
  readonly source?: string;
}

/** What {@link baseMass} needs. */
export interface BaseMassOptions {
  /** One or more comparators. */
  readonly comparators: readonly Comparator[];
  /** Differences from all comparators alike. */
  readonly adjustments?: readonly Adjustment[];
  /**
   * Half-width of the scatter from vehicle to vehicle, as a share of the base mass, 0 to 1: its 10th and 90th percentiles
   * are that far away. Needed for a single comparator, whose scatter cannot be seen; otherwise the comparators' own is used.
   */
  readonly scatter?: number;
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
  /** The steps, at likely values. */
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
 * @throws InputError `EMPTY`, `INCONSISTENT` when a pack is not lighter than its vehicle, `MISSING_OPTION` when a single comparator
 *   has no scatter, `NOT_VALID_HERE` when the spread would reach zero mass
 * @example
 * baseMass({
 *   comparators: [
 *     { name: "van A (invented)", curbMass: q("2480 kg"), packMass: q("560 kg") },
 *     { name: "van B (invented)", curbMass: q("2390 kg"), packMass: q("520 kg"), adjustments: [{ reason: "second motor", mass: q("70 kg") }] },
 *   ],
 * }).mass.likely; // 1930 kg
 */
export function baseMass(options: BaseMassOptions): BaseMass {
  readOptions("baseMass", options, {}, ["comparators", "adjustments?", "scatter?"]);
  const { comparators, adjustments = [] } = options;
  if (!Array.isArray(comparators) || comparators.length === 0) {
    throw new InputError("EMPTY", "baseMass needs at least one comparator", {});
  }
  const read = comparators.map((comparator) => readComparator(comparator, adjustments));
  const says = read.map(({ base, adjustments }) => base + sum(adjustments.map(({ likely }) => likely)));
  const mean = sum(says) / says.length;
  const effects = effectsByReason(read.map(({ adjustments }) => adjustments));
  const scatter = scatterOf(says, mean, options.scatter);
  const low = mean - Math.hypot(scatter, ...effects.map((effect) => effect.likely - effect.low));
  const high = mean + Math.hypot(scatter, ...effects.map((effect) => effect.high - effect.likely));
  if (!(low > 0)) {
    throw new InputError(
      "NOT_VALID_HERE",
      `the comparators and adjustments give a base mass of ${mean.toFixed(0)} kg with a low end of ${low.toFixed(0)} kg: check their signs and sizes`,
      { low, likely: mean, high },
    );
  }
  const kg = (value: number): Quantity<Mass> => quantity(value, "kg");
  return {
    basis: "curb mass less pack mass",
    mass: {
      low: kg(low),
      likely: kg(mean),
      high: kg(high),
      grade: "derived",
      source: `${comparators.length} comparator${comparators.length === 1 ? "" : "s"} and the stated adjustments`,
    },
    referencePackMass: kg(sum(read.map(({ pack }) => pack)) / read.length),
    comparators: read.map(({ given, curb, pack, base }, i) => ({
      name: given.name,
      curbMass: kg(curb),
      packMass: kg(pack),
      baseMass: kg(base),
      adjustment: kg((says[i] as number) - base),
      adjusted: kg(says[i] as number),
      source: given.source ?? "",
    })),
    adjustments: effects.map(({ reason, low, likely, high, source }) => ({
      reason,
      low: kg(low),
      likely: kg(likely),
      high: kg(high),
      source,
    })),
    scatter: kg(scatter),
    working: () => {
      const working: Working = [];
      read.forEach(({ curb, pack, base, adjustments }) => {
        comparatorBaseMass.of({ curbMass: curb, packMass: pack }, working);
        adjustedBaseMass.of({ baseMass: base, adjustment: sum(adjustments.map(({ likely }) => likely)) }, working);
      });
      return working;
    },
  };
}

interface ComparatorRead {
  readonly given: Comparator;
  readonly curb: number;
  readonly pack: number;
  readonly base: number;
  readonly adjustments: readonly AdjustmentRead[];
}

function readComparator(given: Comparator, shared: readonly Adjustment[]): ComparatorRead {
  readOptions("a comparator", given, {}, ["name", "curbMass", "packMass", "adjustments?", "source?"]);
  const curb = readNumber(`curbMass of ${given.name}`, given.curbMass, { unit: "kg", above: 0 });
  const pack = readNumber(`packMass of ${given.name}`, given.packMass, { unit: "kg", atLeast: 0 });
  if (pack >= curb) {
    throw new InputError(
      "INCONSISTENT",
      `${given.name}: the pack (${given.packMass}) must be lighter than the vehicle (${given.curbMass})`,
      { curbMass: curb, packMass: pack },
    );
  }
  const masses = { "base mass": curb - pack, "curb mass": curb, "pack mass": pack };
  const adjustments = [...(given.adjustments ?? []), ...shared].map((each) => readAdjustment(each, masses));
  return { given, curb, pack, base: curb - pack, adjustments };
}

/** The mean effect over all comparators of the adjustments that share a reason. */
function effectsByReason(
  perComparator: readonly (readonly AdjustmentRead[])[],
): { reason: string; low: number; likely: number; high: number; source: string }[] {
  const effects = new Map<string, { low: number; likely: number; high: number; source: string }>();
  for (const adjustment of perComparator.flat()) {
    const { reason, source, grade } = adjustment;
    const sofar = effects.get(reason) ?? {
      low: 0,
      likely: 0,
      high: 0,
      source: source === "" ? grade : `${source} (${grade})`,
    };
    const share = 1 / perComparator.length;
    effects.set(reason, {
      ...sofar,
      low: sofar.low + adjustment.low * share,
      likely: sofar.likely + adjustment.likely * share,
      high: sofar.high + adjustment.high * share,
    });
  }
  return [...effects].map(([reason, effect]) => ({ reason, ...effect }));
}

/** Half-width, from the mean to the 90th percentile, for one more vehicle of the same kind. */
function scatterOf(says: readonly number[], mean: number, given: number | undefined): number {
  if (given !== undefined) return readNumber("scatter", given, { unit: "1", atLeast: 0, atMost: 1 }) * mean;
  const n = says.length;
  if (n === 1) {
    throw new InputError(
      "MISSING_OPTION",
      "a single comparator shows no scatter between vehicles: state it, for example scatter: 0.05",
      { option: "scatter" },
    );
  }
  const deviation = Math.sqrt(sum(says.map((each) => (each - mean) ** 2)) / (n - 1));
  return studentT90(n - 1) * deviation * Math.sqrt(1 + 1 / n);
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, each) => total + each, 0);
}
