import { InputError, type Mass, type Quantity, quantity, readOptions, sourceLine } from "@tarewatt/units";
import { readEvidence } from "../evidence/evidence.js";
import type { Evidence, LowLikelyHigh } from "../evidence/forms.js";
import type { Adjustment } from "../mass/adjustment.js";
import { type AdjustmentRules, type UsualRange, usualAdjustments } from "./adjustment-rules.js";
import { recordNumbersOf, type VehicleRecord } from "./vehicle-record.js";

/** What is known of the vehicle to be estimated, besides its mass. */
export type VehicleTraits = Partial<Omit<VehicleRecord, "curbMass" | "packMass">>;

/** What {@link adjustmentsBetween} needs. */
export interface AdjustmentsBetweenOptions {
  /** The vehicle whose masses are known. */
  readonly comparator: VehicleRecord;
  /** The vehicle to be estimated. */
  readonly vehicle: VehicleTraits;
  /** What differences weigh; {@link usualAdjustments} where left out. */
  readonly rules?: AdjustmentRules | undefined;
}

/** The differences between two vehicles as adjustments of mass. */
export interface AdjustmentsBetween {
  /** Adjustments for `baseMass`: each says in its source what it rests on. */
  readonly adjustments: readonly Adjustment[];
  /** Differences that could not be told, or that no rule weighs. */
  readonly warnings: readonly string[];
}

/**
 * What the vehicle to be estimated weighs more than a comparator, from their size, motors, construction and equipment.
 *
 * @param options - the two vehicles, and what differences weigh
 * @returns adjustments, positive where the vehicle to be estimated is heavier, and what could not be compared
 * @throws InputError as {@link vehicleRecord} does, and for wrong rules
 * @example
 * const comparator = { name: "crossover (invented)", curbMass: q("2310 kg"), packMass: q("545 kg"), motors: 1 };
 * const { adjustments } = adjustmentsBetween({ comparator, vehicle: { motors: 2, equipment: ["tow bar"] } });
 * adjustments.map(({ reason }) => reason); // ["motors", "tow bar"]
 */
export function adjustmentsBetween(options: AdjustmentsBetweenOptions): AdjustmentsBetween {
  readOptions("adjustmentsBetween", options, {}, ["comparator", "vehicle", "rules?"]);
  const { comparator, vehicle } = options;
  const rules = options.rules ?? {};
  readOptions("the rules", rules, {}, ["motor?", "size?", "equipment?", "construction?"]);
  const theirs = recordNumbersOf(comparator);
  if (typeof vehicle !== "object" || vehicle === null || "curbMass" in vehicle || "packMass" in vehicle) {
    throw new InputError(
      "WRONG_CHOICE",
      "vehicle takes what is known of it besides its masses, such as { motors: 2 }",
      {},
    );
  }
  const ours = recordNumbersOf({ name: "the vehicle", ...vehicle, curbMass: quantity(10_000, "kg") });
  const adjustments: Adjustment[] = [];
  const warnings: string[] = [];
  const missing = (what: string): void => {
    warnings.push(`${comparator.name}: ${what} of one of the two is not known: not adjusted for`);
  };

  if (ours.motors === undefined || theirs.motors === undefined) missing("the number of motors");
  else if (ours.motors !== theirs.motors) {
    const difference = ours.motors - theirs.motors;
    const motor = rules.motor ?? inKilograms(usualAdjustments.motor);
    adjustments.push({ reason: "motors", mass: scaledMass("rules.motor", motor, difference) });
  }

  const area = (size: typeof ours): number | undefined =>
    size.length === undefined || size.width === undefined ? undefined : size.length * size.width;
  const [ourArea, theirArea] = [area(ours), area(theirs)];
  if (ourArea === undefined || theirArea === undefined) missing("length or width");
  else if (ourArea !== theirArea) {
    const size = rules.size ?? withSource(usualAdjustments.size);
    adjustments.push({ reason: "size", share: sizeShare(size, ourArea / theirArea), of: "base mass" });
  }

  const [has, had] = [new Set(vehicle.equipment), new Set(comparator.equipment)];
  for (const item of new Set([...has, ...had])) {
    if (has.has(item) === had.has(item)) continue;
    const mass = equipmentMass(item, rules);
    if (mass === undefined) warnings.push(`${comparator.name}: nothing says what '${item}' weighs: not adjusted for`);
    else adjustments.push({ reason: item, mass: scaledMass(`rules.equipment.${item}`, mass, has.has(item) ? 1 : -1) });
  }

  if (vehicle.construction !== comparator.construction) {
    for (const [construction, sign] of [
      [vehicle.construction, 1],
      [comparator.construction, -1],
    ] as const) {
      if (construction === undefined) continue;
      const rule = entryOf(rules.construction, construction);
      if (rule === undefined) {
        warnings.push(
          `${comparator.name}: nothing says what the construction '${construction}' weighs: not adjusted for`,
        );
      } else {
        const share = scaledShare(`rules.construction.${construction}`, rule.share, sign);
        adjustments.push({ reason: construction, share, of: rule.of });
      }
    }
  }
  return Object.freeze({ adjustments: Object.freeze(adjustments), warnings: Object.freeze(warnings) });
}

function equipmentMass(item: string, rules: AdjustmentRules): Evidence<Quantity<Mass>> | undefined {
  const own = entryOf(rules.equipment, item);
  if (own !== undefined) return own;
  const usual = entryOf<UsualRange>(usualAdjustments.equipment, item);
  return usual === undefined ? undefined : inKilograms(usual);
}

function entryOf<T>(table: Readonly<Record<string, T>> | undefined, name: string): T | undefined {
  return table !== undefined && table !== null && Object.hasOwn(table, name) ? table[name] : undefined;
}

function withSource({ low, likely, high, source }: UsualRange): LowLikelyHigh<number> {
  return { low, likely, high, grade: "assumed", source: sourceLine(source) };
}

function inKilograms(range: UsualRange): LowLikelyHigh<Quantity<Mass>> {
  const { low, likely, high, ...provenance } = withSource(range);
  return { low: quantity(low, "kg"), likely: quantity(likely, "kg"), high: quantity(high, "kg"), ...provenance };
}

function scaledMass(name: string, evidence: Evidence<Quantity<Mass>>, factor: number): LowLikelyHigh<Quantity<Mass>> {
  const { low, likely, high, grade, source } = readEvidence(name, evidence, { unit: "kg" });
  const [a, b] = factor < 0 ? [high, low] : [low, high];
  const kg = (value: number): Quantity<Mass> => quantity(value * factor, "kg");
  return { low: kg(a), likely: kg(likely), high: kg(b), grade, source };
}

function scaledShare(name: string, evidence: Evidence<number>, sign: 1 | -1): LowLikelyHigh<number> {
  const { low, likely, high, grade, source } = readEvidence(name, evidence, { unit: "1", atLeast: -1, atMost: 1 });
  return sign === 1 ? { low, likely, high, grade, source } : { low: -high, likely: -likely, high: -low, grade, source };
}

/** A power law: the mass goes with the area to the power of the effect. */
function sizeShare(effect: Evidence<number>, ratio: number): LowLikelyHigh<number> {
  const { low, likely, high, grade, source } = readEvidence("rules.size", effect, {
    unit: "1",
    atLeast: -1,
    atMost: 3,
  });
  const shares = [low, likely, high].map((power) => ratio ** power - 1);
  const [a, b, c] = (ratio < 1 ? shares.reverse() : shares) as [number, number, number];
  return { low: a, likely: b, high: c, grade, source };
}
