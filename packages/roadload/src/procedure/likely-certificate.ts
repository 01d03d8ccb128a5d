import {
  type EnergyPerDistance,
  type Power,
  type Quantity,
  quantity,
  type Relation,
  readOptions,
  relation,
  type Step,
  type Working,
} from "@tarewatt/units";
import type { Cycle } from "../cycle/cycle.js";
import { hwfet } from "../cycle/hwfet.js";
import { udds } from "../cycle/udds.js";
import { typicalDrivetrain } from "../drivetrain/typical-drivetrain.js";
import { typicalDrivetrainFit } from "../drivetrain/typical-drivetrain-fit.js";
import { driveCycle } from "../energy/drive-cycle.js";
import type { DriveResult } from "../energy/drive-result.js";
import { assertRoadLoad } from "../resistance/assert-road-load.js";
import type { RoadLoad } from "../resistance/road-load.js";
import { conditionsOf, doubtsOfConditions, type ProcedureConditions, references } from "./reference-conditions.js";
import { doubtsOfRules, type Rule, rules } from "./rule.js";

/** Options of {@link likelyCertificate}. */
export interface LikelyCertificateOptions {
  /**
   * Road load with its test mass: certified coefficients at the equivalent test weight, in US reference air, which is what the
   * fit knows. With a physical load, which has no bearings and no driveline spin, the figures are too low, and say so.
   */
  readonly load: RoadLoad;
  /** Rated power of the motors, all of them together. */
  readonly ratedPower: Quantity<Power>;
  /** Model years since the maker's first battery-electric vehicle: 0 for the first. */
  readonly yearsOfExperience: number;
}

/** A consumption and the interval that holds it nine times of ten. */
export interface LikelyConsumption {
  /** Lower end of the interval. */
  readonly low: Quantity<EnergyPerDistance>;
  /**
   * The middle of the interval, for a maker like the others. Of certified rows whose maker was left out of the fit, 65 % (city) and
   * 61 % (highway) lay below it: the largest maker is one that takes less.
   */
  readonly likely: Quantity<EnergyPerDistance>;
  /** Upper end. */
  readonly high: Quantity<EnergyPerDistance>;
  /**
   * Probability that the interval holds it, counted over certified rows whose maker was left out of the fit: 0.90 (city) and 0.92
   * (highway). The rows of a maker stand or fall together: with every maker counted once it was 0.87 and 0.78.
   */
  readonly probability: 0.9;
  /** The drive behind the middle, with its ledger. */
  readonly drive: DriveResult;
}

/** What the certificate will say. Made by {@link likelyCertificate}. */
export interface LikelyCertificate {
  /** What is predicted, in words. */
  readonly procedure: "unadjusted, UDDS and HWFET, energy at the wall";
  /** On UDDS. */
  readonly city: LikelyConsumption;
  /** On HWFET. */
  readonly highway: LikelyConsumption;
  /** What the road load refers to. */
  readonly conditions: ProcedureConditions;
  /** The rules and the data behind it. */
  readonly rules: readonly Rule[];
  /** What a reader should doubt. */
  readonly warnings: readonly string[];
  /** How the figures came about: both drives, and the ends of their intervals. */
  working(): Step[];
}

interface IntervalEndInputs {
  readonly likely: Quantity<EnergyPerDistance>;
  readonly factor: number;
}

/** End of an interval of consumption: its middle times a factor, which for the lower end is below 1. */
const intervalEnd: Relation<IntervalEndInputs, Quantity<EnergyPerDistance>> = /* @__PURE__ */ (() =>
  relation<IntervalEndInputs, Quantity<EnergyPerDistance>>({
    name: "end of the interval that holds nine of ten",
    inputs: {
      likely: { symbol: "e", unit: "Wh/mi", meaning: "middle of the interval, at the wall", atLeast: 0 },
      factor: { symbol: "x", unit: "1", meaning: "end per middle", above: 0 },
    },
    result: { symbol: "e_x", unit: "Wh/mi" },
    expression: "x·e",
    source: typicalDrivetrainFit.source,
    evaluate: ({ likely, factor }) => factor * likely,
  }))();

/** Losses that certified coefficients hold beside those of a physical load. */
const CERTIFIED = ["wheel bearings", "driveline spin"] as const;

function doubtsOfForm({ form, holds }: RoadLoad): string[] {
  const missing = CERTIFIED.filter((loss) => !holds.includes(loss));
  return [
    ...(form === "certified" ? [] : ["the load is an estimate: the fit knows certified coefficients only"]),
    ...(missing.length === 0
      ? []
      : [`the load holds no ${missing.join(" and no ")}, which certified ones do: the consumptions are too low`]),
  ];
}

/**
 * Unadjusted US city and highway consumption at the wall, as it is likely to be certified, from the road load and little more.
 *
 * Half of what is left unknown belongs to the maker (base load, recovery, charging): a certificate of the same maker narrows it.
 * No label figure: labels adjust these.
 *
 * @param options - road load, rated power, the maker's experience
 * @returns consumptions with the interval that holds nine of ten
 * @throws InputError `NOT_VALID_HERE` when the load is far from US reference air, and what {@link typicalDrivetrain} and {@link driveCycle} throw
 * @example
 * const load = certifiedRoadLoad({
 *   ...{ constant: q("35 lbf"), linear: q("0.2 lbf/mph"), quadratic: q("0.018 lbf/mph²") },
 *   conditions: { testMass: q("4500 lb"), airDensity: referenceAir.us.density },
 * });
 * const { city } = likelyCertificate({ load, ratedPower: q("200 kW"), yearsOfExperience: 6 });
 * city.likely.in("Wh/mi"); // 217.3...
 */
export function likelyCertificate(options: LikelyCertificateOptions): LikelyCertificate {
  const numbers = { ratedPower: { unit: "W", above: 0 }, yearsOfExperience: { unit: "1" } } as const;
  readOptions("likelyCertificate", options, numbers, ["load"]);
  const { load, ratedPower, yearsOfExperience } = options;
  assertRoadLoad(load);
  const drivetrain = typicalDrivetrain({ ratedPower, yearsOfExperience });
  const { accessories, chargingEfficiency } = drivetrain;
  const { interval90 } = typicalDrivetrainFit;
  const misfits = doubtsOfConditions(references.us, load, accessories.in("W"), undefined);
  const list = rules(
    {
      rule: "the drivetrain, its base load and charging are those of certified vehicles, and the intervals hold nine of ten of them",
      source: typicalDrivetrainFit.source,
    },
    { rule: "city is UDDS and highway HWFET, each driven once as tabled", source: udds.source },
  );
  const on = (cycle: Cycle, factor: number, working?: Working): LikelyConsumption => {
    const drive = driveCycle({ cycle, load, drivetrain, accessories, chargingEfficiency });
    const likely = drive.consumption.atWall as Quantity<EnergyPerDistance>;
    working?.push(...drive.working());
    const end = (times: number): Quantity<EnergyPerDistance> =>
      quantity(intervalEnd.of({ likely: likely.in("Wh/mi"), factor: times }, working), "Wh/mi").to(likely.unit);
    return Object.freeze({ low: end(1 / factor), likely, high: end(factor), probability: 0.9, drive } as const);
  };
  const [city, highway] = [on(udds, interval90.city), on(hwfet, interval90.highway)];
  const ofDrives = new Set([...city.drive.warnings, ...highway.drive.warnings]);
  return Object.freeze({
    procedure: "unadjusted, UDDS and HWFET, energy at the wall",
    ...{ city, highway },
    conditions: conditionsOf(load, accessories),
    rules: list,
    warnings: Object.freeze([...misfits, ...doubtsOfForm(load), ...ofDrives, ...doubtsOfRules(list)]),
    working: () => {
      const working: Working = [];
      on(udds, interval90.city, working);
      on(hwfet, interval90.highway, working);
      return working as Step[];
    },
  } as const);
}
