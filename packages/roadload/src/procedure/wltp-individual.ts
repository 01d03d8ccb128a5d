import {
  type Energy,
  type EnergyPerDistance,
  InputError,
  type Length,
  type Quantity,
  quantity,
  readOptions,
  type Step,
  type Working,
} from "@tarewatt/units";
import {
  interpolatedConsumption,
  interpolatedRange,
  interpolationCoefficient,
  interpolationSource,
} from "./interpolation.js";
import { doubtsOfRules, type Rule, rules } from "./rule.js";

/** How far outside of L (0) and H (1) a vehicle may stand: the rule has limits, but these are common practice, no source. */
const OUTSIDE = 0.2;

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
  /** How the figures came about. */
  working(): Step[];
}

const interpolated: readonly Rule[] = /* @__PURE__ */ rules({
  rule: "consumption and range of an individual vehicle lie on the straight line between L and H, by cycle energy",
  source: interpolationSource,
});

/**
 * Consumption and range of an individual vehicle between the two of its family that were tested.
 *
 * @param options - vehicles L and H, and the cycle energy of the individual one
 * @returns its figures
 * @throws InputError `INCONSISTENT` when H does not take more than L or goes as far, `NOT_VALID_HERE` when the vehicle lies far outside
 *   of its family, `NEGATIVE`, `OUT_OF_RANGE`, and what `readOptions` throws
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
  for (const [name, unit, less, more] of [
    ["cycleEnergy", "MJ", low, high],
    ["consumption", "kWh/100 km", low, high],
    // The vehicle that takes more goes less far.
    ["range", "km", high, low],
  ] as const) {
    if (less[name] < more[name]) continue;
    throw new InputError(
      "INCONSISTENT",
      `vehicle H must take more energy than vehicle L and go less far: got ${name} ${low[name]} ${unit} for L and ${high[name]} ${unit} for H`,
      { name, low: low[name], high: high[name] },
    );
  }
  const figures = (working?: Working) => {
    const difference = high.cycleEnergy - low.cycleEnergy;
    const given = { individual: cycleEnergy, low: low.cycleEnergy, difference };
    const coefficient = interpolationCoefficient.of(given, working);
    return {
      coefficient,
      consumption: interpolatedConsumption.of({ low: low.consumption, high: high.consumption, coefficient }, working),
      range: interpolatedRange.of({ low: low.range, high: high.range, coefficient }, working),
    };
  };
  const { coefficient, consumption, range } = figures();
  if (coefficient < -OUTSIDE || coefficient > 1 + OUTSIDE) {
    throw new InputError(
      "NOT_VALID_HERE",
      `the vehicle lies far outside of its family: the coefficient is ${coefficient.toPrecision(3)}, ` +
        `L is 0, H is 1, and ${-OUTSIDE} to ${1 + OUTSIDE} is taken here; give vehicles L and H about it`,
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
      figures(working);
      return working as Step[];
    },
  });
}
