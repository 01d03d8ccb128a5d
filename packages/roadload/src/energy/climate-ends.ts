import {
  describeGiven,
  type Energy,
  InputError,
  type Length,
  type Power,
  type Quantity,
  quantity,
} from "@tarewatt/units";
import type { Ends } from "../climate/cabin-climate-options.js";
import type { SteadySpeedOptions } from "./steady-result.js";

/** Low and high end of what a climate takes, as `cabinClimate` gives them. */
export interface ClimateSpread {
  /** Of the power. */
  readonly power: Pick<Ends<Quantity<Power>>, "low" | "high">;
  /** Of the energy to warm up or cool down. */
  readonly warmUpEnergy: Pick<Ends<Quantity<Energy>>, "low" | "high">;
}

/** Ends of a range that come from what is not known of the climate; no percentiles. */
export interface RangeEnds {
  /** With the most that the climate may take; zero where the speed can then not be held. */
  readonly low: Quantity<Length>;
  /** With the least. */
  readonly high: Quantity<Length>;
}

type ClimateOption = SteadySpeedOptions["climate"];

/** Heating and cooling with what is not known of them: what `cabinClimate` gives is one. */
export type ClimateWithSpread = NonNullable<SteadySpeedOptions["climate"]> & WithSpread;

/** What a climate may say beside its likely values. */
export interface WithSpread {
  /** The ends of power and energy. */
  readonly spread?: ClimateSpread | undefined;
}

/** The climate at its ends; undefined when it does not say them. @internal */
export function climateEnds(
  climate: ClimateWithSpread | undefined,
): readonly [least: ClimateOption, most: ClimateOption] | undefined {
  const spread: unknown = climate?.spread;
  if (spread === undefined) return undefined;
  const { power, warmUpEnergy } = Object(spread) as Partial<ClimateSpread>;
  if (typeof power !== "object" || typeof warmUpEnergy !== "object" || power === null || warmUpEnergy === null) {
    throw new InputError(
      "NOT_AN_OBJECT",
      `climate.spread must have a power and a warmUpEnergy, each with low and high: got ${describeGiven(spread)}`,
      { name: "climate.spread" },
    );
  }
  return [
    { power: power.low, warmUpEnergy: warmUpEnergy.low },
    { power: power.high, warmUpEnergy: warmUpEnergy.high },
  ];
}

/** The ends of a range; a speed that cannot be held with the most takes it nowhere. @internal */
export function rangeEnds(
  range: Quantity<Length>,
  most: Quantity<Length> | undefined,
  least: Quantity<Length> | undefined,
): RangeEnds {
  const kilometres = [range, least ?? range, most ?? quantity(0, "km")].map((each) => each.in("km"));
  return Object.freeze({
    low: quantity(Math.min(...kilometres), "km"),
    high: quantity(Math.max(...kilometres), "km"),
  });
}
