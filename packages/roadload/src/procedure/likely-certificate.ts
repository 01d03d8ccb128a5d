import { type EnergyPerDistance, type Power, type Quantity, readOptions } from "@tarewatt/units";
import type { Cycle } from "../cycle/cycle.js";
import { hwfet } from "../cycle/hwfet.js";
import { udds } from "../cycle/udds.js";
import { typicalDrivetrain } from "../drivetrain/typical-drivetrain.js";
import { typicalDrivetrainFit } from "../drivetrain/typical-drivetrain-fit.js";
import { driveCycle } from "../energy/drive-cycle.js";
import type { DriveResult } from "../energy/drive-result.js";
import type { RoadLoad } from "../resistance/road-load.js";

/** Options of {@link likelyCertificate}. */
export interface LikelyCertificateOptions {
  /** Road load with its test mass: certified coefficients at the equivalent test weight, or an estimate. */
  readonly load: RoadLoad;
  /** Rated power of the motors, all of them together. */
  readonly ratedPower: Quantity<Power>;
  /** Model years since the maker's first battery-electric vehicle: 0 for the first. */
  readonly yearsOfExperience: number;
}

/** A consumption and the interval that holds it nine times of ten. */
export interface LikelyConsumption {
  /** Ends of the interval, and the middle: as likely above as below. */
  readonly low: Quantity<EnergyPerDistance>;
  readonly likely: Quantity<EnergyPerDistance>;
  readonly high: Quantity<EnergyPerDistance>;
  /** Probability that the interval holds it, for a maker that the fit has not seen. */
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
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
}

/**
 * Unadjusted US city and highway consumption at the wall, as it is likely to be certified, from the road load and little more.
 *
 * Half of what is left unknown belongs to the maker (base load, recovery, charging): a certificate of the same maker narrows it.
 * No label figure: labels adjust these.
 *
 * @param options - road load, rated power, the maker's experience
 * @returns consumptions with the interval that holds nine of ten
 * @throws what {@link typicalDrivetrain} and {@link driveCycle} throw
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
  const drivetrain = typicalDrivetrain({ ratedPower, yearsOfExperience });
  const { accessories, chargingEfficiency } = drivetrain;
  const { interval90 } = typicalDrivetrainFit;
  const on = (cycle: Cycle, factor: number): LikelyConsumption => {
    const drive = driveCycle({ cycle, load, drivetrain, accessories, chargingEfficiency });
    const likely = drive.consumption.atWall as Quantity<EnergyPerDistance>;
    return Object.freeze({
      ...{ low: likely.times(1 / factor), likely, high: likely.times(factor), probability: 0.9, drive },
    } as const);
  };
  const city = on(udds, interval90.city);
  return Object.freeze({
    procedure: "unadjusted, UDDS and HWFET, energy at the wall",
    city,
    highway: on(hwfet, interval90.highway),
    warnings: city.drive.warnings,
  } as const);
}
