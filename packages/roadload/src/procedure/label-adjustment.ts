import {
  type DistancePerEnergy,
  describeGiven,
  type EnergyPerDistance,
  InputError,
  type Quantity,
  quantity,
  readOptions,
  type Step,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import { combinedFuelEconomy } from "./combined.js";
import { derivedFiveCycle, derivedSet } from "./five-cycle.js";
import type { ProcedurePart } from "./procedure-result.js";
import type { Rule } from "./rule.js";

/**
 * Label figures per unadjusted ones, fuel economy and range alike: the default of the rule, and what certified
 * battery-electric vehicles of model years 2011 to 2024 show. Which method a maker takes is worth about 5 %.
 *
 * @example
 * labelAdjustment.default; // 0.7
 * labelAdjustment.observed.fiveCycle.likely; // 0.744
 */
export const labelAdjustment = /* @__PURE__ */ (() =>
  Object.freeze({
    /** The factor of the rule, for who does not measure. */
    default: 0.7,
    /** What labels show. */
    observed: Object.freeze({
      /** All of them: 5th percentile, median, 95th percentile. */
      all: Object.freeze({ low: 0.678, likely: 0.7, high: 0.75 }),
      /** Those labelled by two cycles and the default, where the method is known: where they cluster, and its middle. */
      twoCycle: Object.freeze({ low: 0.685, likely: 0.7, high: 0.7 }),
      /** Those labelled by vehicle-specific five cycles: where they cluster, and their median. */
      fiveCycle: Object.freeze({ low: 0.72, likely: 0.744, high: 0.77 }),
      source: Object.freeze({
        document: "public US test car lists and label tables of battery-electric vehicles, model years 2011 to 2024",
        status: "seen",
      } as const),
    }),
    source: Object.freeze({
      document: "40 CFR 600.116-12 (a)(6), 600.210-12 (d)(3)",
      section: "0.7 as documentation of numerical software prints it",
      status: "quoted",
    } as const),
  } as const))();

/** How unadjusted figures become label figures: always an explicit choice. */
export type LabelAdjustmentMethod =
  /** The factor 0.7 of the rule. */
  | { readonly method: "default" }
  /** Your own factor, such as one of {@link labelAdjustment}. */
  | { readonly method: "factor"; readonly factor: Fraction }
  /** Published curves that were made for other vehicles. */
  | { readonly method: "derived 5-cycle"; readonly set: "2006" | "2015" }
  /** Consumptions at the wall from {@link fiveCycleCity} and {@link fiveCycleHighway}. */
  | {
      readonly method: "vehicle-specific 5-cycle";
      readonly city: Quantity<EnergyPerDistance>;
      readonly highway: Quantity<EnergyPerDistance>;
    };

/** What an adjustment comes to. @internal */
export interface Adjusting {
  readonly factor: number;
  readonly method: string;
  readonly rule: Rule;
  readonly warnings: readonly string[];
  readonly steps: () => Step[];
}

/** The factor of a method for a test, and what it rests on. @internal */
export function adjust(given: LabelAdjustmentMethod, city: ProcedurePart, highway: ProcedurePart): Adjusting {
  const { method } = Object(given) as Partial<LabelAdjustmentMethod>;
  const base = { warnings: [], steps: () => [] };
  switch (method) {
    case "default":
      readOptions("adjustment", given, {}, ["method"]);
      return {
        ...base,
        method: "the default",
        factor: labelAdjustment.default,
        rule: { rule: "range and fuel economy times 0.7", source: labelAdjustment.source },
      };
    case "factor": {
      const { factor } = readOptions("adjustment", given, { factor: { unit: "1", above: 0, atMost: 1 } }, ["method"]);
      const { low, high } = labelAdjustment.observed.all;
      const odd = factor < low || factor > 0.77;
      return {
        ...base,
        method: "a factor that was given",
        factor,
        rule: { rule: "the factor is the caller's", source: { document: "given by the caller", status: "definition" } },
        warnings: odd
          ? [`the adjustment ${factor} lies outside what most labels show (${low} to ${high}; five cycles up to 0.77)`]
          : [],
      };
    }
    case "derived 5-cycle": {
      const { set } = given as Extract<LabelAdjustmentMethod, { method: typeof method }>;
      readOptions("adjustment", given, {}, ["method", "set"]);
      const coefficients = derivedSet(set);
      const economies = [economyOf(city), economyOf(highway)] as const;
      const inCity = { economy: economies[0], ...coefficients.city };
      const onHighway = { economy: economies[1], ...coefficients.highway };
      return {
        method: `derived 5-cycle, ${set} set`,
        factor: factorOf(economies, [derivedFiveCycle(inCity), derivedFiveCycle(onHighway)]),
        rule: { rule: `derived 5-cycle coefficients of the ${set} set`, source: coefficients.source },
        warnings: ["the derived 5-cycle curves were fitted to vehicles that use several times as much energy"],
        steps: () => [derivedFiveCycle.explain(inCity), derivedFiveCycle.explain(onHighway)],
      };
    }
    case "vehicle-specific 5-cycle": {
      const { city: c, highway: h } = readOptions(
        "adjustment",
        given,
        { city: { unit: "Wh/mi", above: 0 }, highway: { unit: "Wh/mi", above: 0 } },
        ["method"],
      );
      const five = [c, h].map((value) => quantity(value, "Wh/mi").inverse().to("MPGe")) as unknown as Economies;
      const factor = factorOf([economyOf(city), economyOf(highway)], five);
      return {
        ...base,
        method: "vehicle-specific 5-cycle",
        factor,
        rule: {
          rule: "vehicle-specific 5-cycle consumption of the caller",
          source: { document: "40 CFR 600.114", status: "memory" },
        },
        warnings:
          factor > 1
            ? [`the 5-cycle consumption is below the unadjusted one (factor ${factor.toPrecision(3)}): check both`]
            : [],
      };
    }
    default:
      throw new InputError(
        "WRONG_CHOICE",
        `adjustment.method must be "default", "factor", "derived 5-cycle" or "vehicle-specific 5-cycle": got ${describeGiven(method)}`,
        { name: "adjustment.method" },
      );
  }
}

type Economies = readonly [Quantity<DistancePerEnergy>, Quantity<DistancePerEnergy>];

function economyOf({ consumption, name }: ProcedurePart): Quantity<DistancePerEnergy> {
  const { atWall } = consumption;
  if (atWall !== undefined) return atWall.inverse().to("MPGe");
  throw new InputError(
    "NOT_VALID_HERE",
    `5-cycle methods take fuel economies at the wall, and the test says none for ${name}: give usMultiCycle the rechargeEnergy`,
    { part: name },
  );
}

/** Combined 5-cycle fuel economy per combined unadjusted one. */
function factorOf([city, highway]: Economies, [city5, highway5]: Economies): number {
  return combinedFuelEconomy({ city: city5, highway: highway5 }).ratioTo(combinedFuelEconomy({ city, highway }));
}
