import { describeGiven, InputError, readOptions } from "@tarewatt/units";
import type { Adjustment } from "../mass/adjustment.js";
import { type BaseMass, baseMass } from "../mass/base-mass.js";
import type { AdjustmentRules } from "./adjustment-rules.js";
import { adjustmentsBetween, type VehicleTraits } from "./adjustments-between.js";
import { type VehicleRecord, vehicleRecord } from "./vehicle-record.js";

/** What {@link baseMassOfRecords} needs. */
export interface BaseMassOfRecordsOptions {
  /** The comparators; each with its pack mass. */
  readonly records: readonly VehicleRecord[];
  /** The vehicle to be estimated: its size, motors, construction and equipment. */
  readonly vehicle: VehicleTraits;
  /** What differences weigh; `usualAdjustments` where left out. */
  readonly rules?: AdjustmentRules | undefined;
  /** More differences, from all comparators alike. */
  readonly adjustments?: readonly Adjustment[] | undefined;
  /** As in `baseMass`: needed for a single comparator. */
  readonly scatter?: number | undefined;
}

/**
 * The mass of a vehicle without its pack from documented vehicles, each adjusted for what it differs in.
 *
 * @param options - the comparators, the vehicle, and what differences weigh
 * @returns base mass with its spread, as `baseMass` gives it; each adjustment says what it rests on, and warnings what was not compared
 * @throws InputError `MISSING_OPTION` for a comparator without pack mass, and as `baseMass` and `adjustmentsBetween` do
 * @example
 * const car = { name: "crossover (invented)", curbMass: q("2310 kg"), packMass: q("545 kg"), motors: 1, length: q("4.7 m"), width: q("1.9 m") };
 * const vehicle = { motors: 2, length: q("4.7 m"), width: q("1.9 m") };
 * baseMassOfRecords({ records: [car], vehicle, scatter: 0.05 }).mass.likely; // 1840 kg
 */
export function baseMassOfRecords(options: BaseMassOfRecordsOptions): BaseMass {
  readOptions("baseMassOfRecords", options, {}, ["records", "vehicle", "rules?", "adjustments?", "scatter?"]);
  const { vehicle, rules, adjustments, scatter } = options;
  const given: unknown = options.records;
  if (!Array.isArray(given)) {
    throw new InputError("WRONG_CHOICE", `records must be a list of vehicles: got ${describeGiven(given)}`, {});
  }
  const records = Array.from(given as readonly VehicleRecord[], vehicleRecord);
  const compared = records.map((comparator) => adjustmentsBetween({ comparator, vehicle, rules }));
  const result = baseMass({
    comparators: records.map(({ name, curbMass, packMass, source }, i) => {
      if (packMass === undefined) {
        throw new InputError("MISSING_OPTION", `${name} has no pack mass: it says nothing of a vehicle without pack`, {
          name,
        });
      }
      return { name, curbMass, packMass, source, adjustments: compared[i]?.adjustments };
    }),
    adjustments,
    scatter,
  });
  const warnings = [...result.warnings, ...compared.flatMap((each) => each.warnings)];
  return Object.freeze({ ...result, warnings: Object.freeze(warnings) });
}
