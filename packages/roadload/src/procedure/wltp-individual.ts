import {
  type Energy,
  type EnergyPerDistance,
  InputError,
  type Length,
  type Quantity,
  quantity,
  type Relation,
  readOptions,
  relation,
  type Step,
  type Working,
} from "@tarewatt/units";
import { doubtsOfRules, type Rule, rules } from "./rule.js";

const source = { document: "UN GTR No. 15", section: "annex 8, 4.5", status: "memory" } as const;

/** Inputs of {@link interpolationCoefficient}. */
export interface InterpolationCoefficientInputs {
  /** Cycle energy of the individual vehicle. */
  readonly individual: Quantity<Energy>;
  /** Cycle energy of vehicle L, the one that takes least. */
  readonly low: Quantity<Energy>;
  /** What vehicle H, the one that takes most, takes more than vehicle L. */
  readonly difference: Quantity<Energy>;
}

/**
 * Where an individual vehicle stands between the two that were tested, by the energy at the wheels that its road load takes.
 *
 * @throws InputError `OUT_OF_RANGE` when L and H take the same; otherwise as every relation
 * @example
 * interpolationCoefficient({ individual: q("11.5 MJ"), low: q("11 MJ"), difference: q("2 MJ") }); // 0.25
 */
export const interpolationCoefficient: Relation<InterpolationCoefficientInputs, number> = /* @__PURE__ */ relation({
  name: "interpolation coefficient",
  inputs: {
    individual: { symbol: "E_ind", unit: "MJ", meaning: "cycle energy of the individual vehicle", above: 0 },
    low: { symbol: "E_L", unit: "MJ", meaning: "cycle energy of vehicle L", above: 0 },
    difference: { symbol: "ΔE", unit: "MJ", meaning: "what vehicle H takes more than vehicle L", above: 0 },
  },
  result: { symbol: "K", unit: "1" },
  expression: "(E_ind − E_L)/ΔE",
  source,
  evaluate: ({ individual, low, difference }) => (individual - low) / difference,
});

/** Figures of one of the two vehicles that were tested. */
export interface TestedVehicle {
  /** Positive cycle energy at the wheels, such as `energy.atWheel.driving` of `driveCycle`. */
  readonly cycleEnergy: Quantity<Energy>;
  /** Consumption. */
  readonly consumption: Quantity<EnergyPerDistance>;
  /** Pure electric range. */
  readonly range: Quantity<Length>;
}

/** Options of {@link wltpIndividual}. */
export interface WltpIndividualOptions {
  /** Vehicle L: the one of the family that takes least. */
  readonly low: TestedVehicle;
  /** Vehicle H: the one that takes most. */
  readonly high: TestedVehicle;
  /** Positive cycle energy of the individual vehicle. */
  readonly cycleEnergy: Quantity<Energy>;
}

/** Figures of an individual vehicle. Made by {@link wltpIndividual}. */
export interface WltpIndividualResult {
  /** Where it stands between L (0) and H (1). */
  readonly coefficient: number;
  /** Consumption. */
  readonly consumption: Quantity<EnergyPerDistance>;
  /** Pure electric range. */
  readonly range: Quantity<Length>;
  /** The rules behind it. */
  readonly rules: readonly Rule[];
  /** What a reader should doubt, such as a vehicle outside of its family. */
  readonly warnings: readonly string[];
  /** How the coefficient came about. */
  working(): Step[];
}

const interpolated: readonly Rule[] = /* @__PURE__ */ rules({
  rule: "consumption and range of an individual vehicle lie on the straight line between L and H, by cycle energy",
  source,
});

/**
 * Consumption and range of an individual vehicle between the two of its family that were tested.
 *
 * @param options - vehicles L and H, and the cycle energy of the individual one
 * @returns its figures
 * @throws InputError `INCONSISTENT` when H does not take more than L, `NEGATIVE`, `OUT_OF_RANGE`, and what `readOptions` throws
 * @example
 * const low = { cycleEnergy: q("11 MJ"), consumption: q("15.6 kWh/100 km"), range: q("540 km") };
 * const high = { cycleEnergy: q("13 MJ"), consumption: q("18.0 kWh/100 km"), range: q("470 km") };
 * wltpIndividual({ low, high, cycleEnergy: q("11.5 MJ") }).consumption.in("kWh/100 km"); // 16.2
 */
export function wltpIndividual(options: WltpIndividualOptions): WltpIndividualResult {
  const rule = {
    cycleEnergy: { unit: "MJ", above: 0 },
    consumption: { unit: "kWh/100 km", above: 0 },
    range: { unit: "km", above: 0 },
  } as const;
  const { cycleEnergy } = readOptions("wltpIndividual", options, { cycleEnergy: rule.cycleEnergy }, ["low", "high"]);
  const low = readOptions("wltpIndividual low", options.low, rule);
  const high = readOptions("wltpIndividual high", options.high, rule);
  if (high.cycleEnergy <= low.cycleEnergy) {
    throw new InputError(
      "INCONSISTENT",
      `vehicle H must take more energy than vehicle L: got ${high.cycleEnergy} MJ and ${low.cycleEnergy} MJ`,
      { low: low.cycleEnergy, high: high.cycleEnergy },
    );
  }
  const difference = high.cycleEnergy - low.cycleEnergy;
  const inputs = { individual: cycleEnergy, low: low.cycleEnergy, difference };
  const coefficient = interpolationCoefficient.of(inputs);
  const between = (a: number, b: number): number => a + coefficient * (b - a);
  const range = between(low.range, high.range);
  const consumption = between(low.consumption, high.consumption);
  if (range <= 0 || consumption <= 0) {
    throw new InputError(
      "NOT_VALID_HERE",
      `the vehicle lies so far outside of its family (coefficient ${coefficient.toPrecision(3)}) that the line gives no figures`,
      { coefficient },
    );
  }
  const outside = coefficient < 0 || coefficient > 1;
  return Object.freeze({
    coefficient,
    consumption: quantity(consumption, "kWh/100 km"),
    range: quantity(range, "km"),
    rules: interpolated,
    warnings: Object.freeze([
      ...doubtsOfRules(interpolated),
      ...(outside
        ? [
            `the vehicle lies outside of its family (coefficient ${coefficient.toPrecision(3)}): the rule extrapolates only within narrow limits`,
          ]
        : []),
    ]),
    working: () => {
      const working: Working = [];
      interpolationCoefficient.of(inputs, working);
      return working as Step[];
    },
  });
}
