import {
  type DistancePerEnergy,
  describeGiven,
  InputError,
  type Quantity,
  quantity,
  readOptions,
  type Step,
} from "@tarewatt/units";
import { type CombinedFuelEconomyInputs, combinedFuelEconomy } from "./combined.js";
import { derivedFiveCycle, derivedSet } from "./derived-five-cycle.js";
import { type LabelAdjustmentMethod, labelAdjustment } from "./label-adjustment.js";
import type { ProcedurePart } from "./procedure-result.js";
import type { Rule } from "./rule.js";

/**
 * Factors that five cycles of one vehicle can give: cold, heat and hard driving cost energy, so none is above 1. Labels show
 * 0.72 to 0.77; the limits about that are common practice, no source.
 */
const FIVE_CYCLE = { refused: { low: 0.3, high: 1 }, doubted: { low: 0.6, high: 0.85 } } as const;

/** What an adjustment comes to. @internal */
export interface Adjusting {
  /** Label figure per unadjusted one, in the city and on the highway. */
  readonly city: number;
  readonly highway: number;
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
        ...both(labelAdjustment.default),
        rule: { rule: "range and fuel economy times 0.7", source: labelAdjustment.source },
      };
    case "factor": {
      const { factor } = readOptions("adjustment", given, { factor: { unit: "1", above: 0, atMost: 1 } }, ["method"]);
      const { low, high } = labelAdjustment.observed.all;
      const odd = factor < low || factor > 0.77;
      return {
        ...base,
        method: "a factor that was given",
        ...both(factor),
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
      const inCity = { economy: economyOf(city), ...coefficients.city };
      const onHighway = { economy: economyOf(highway), ...coefficients.highway };
      return {
        method: `derived 5-cycle, ${set} set`,
        city: derivedFiveCycle(inCity).ratioTo(inCity.economy),
        highway: derivedFiveCycle(onHighway).ratioTo(onHighway.economy),
        rule: {
          rule: `derived 5-cycle, ${set} set: city and highway each by a curve of their own; ranges go with the fuel economies`,
          source: coefficients.source,
        },
        warnings: [
          "the derived 5-cycle curves were fitted to vehicles that use several times as much energy; the form of the curve was " +
            "seen in 40 CFR 600.210-12, the coefficients only as quoted, that ranges go with them is from memory",
        ],
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
      const economies = [economyOf(city), economyOf(highway)] as const;
      const factor = factorOf(economies, five);
      assertPlausible(factor);
      return {
        method: "vehicle-specific 5-cycle",
        ...both(factor),
        rule: {
          rule: "vehicle-specific 5-cycle consumption of the caller",
          source: { document: "40 CFR 600.114", status: "memory" },
        },
        warnings:
          factor < FIVE_CYCLE.doubted.low || factor > FIVE_CYCLE.doubted.high
            ? [
                `the 5-cycle factor ${factor.toPrecision(3)} lies outside what is usual, ${FIVE_CYCLE.doubted.low} to ${FIVE_CYCLE.doubted.high}: check both consumptions`,
              ]
            : [],
        steps: () => {
          const [unadjusted, adjusted] = [economies, five].map(([inCity, onHighway]) => ({
            city: inCity,
            highway: onHighway,
          }));
          return [unadjusted, adjusted].map((each) => combinedFuelEconomy.explain(each as CombinedFuelEconomyInputs));
        },
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

const both = (factor: number) => ({ city: factor, highway: factor });

function assertPlausible(factor: number): void {
  const { low, high } = FIVE_CYCLE.refused;
  if (factor >= low && factor <= high) return;
  throw new InputError(
    "INCONSISTENT",
    `the 5-cycle consumptions and those of the test give the factor ${factor.toPrecision(3)}, which must lie between ${low} and ${high}: ` +
      "give consumptions at the wall of the same vehicle (cold, heat and hard driving cost energy)",
    { factor },
  );
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
