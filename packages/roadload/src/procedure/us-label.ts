import {
  type DistancePerEnergy,
  describeGiven,
  type EnergyPerDistance,
  InputError,
  type Length,
  type Mass,
  type Quantity,
  quantity,
  readNumber,
  readOptions,
  type Step,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import { combinedFuelEconomy } from "./combined.js";
import { derivedFiveCycle, derivedSet } from "./five-cycle.js";
import type { ProcedurePart, ProcedureResult } from "./procedure-result.js";
import { doubtsOfRules, type Rule, rules } from "./rule.js";

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

/** Options of {@link usLabel}. */
export interface UsLabelOptions {
  /** Unadjusted figures, from {@link usMultiCycle}. */
  readonly test: ProcedureResult;
  /** How they are adjusted. */
  readonly adjustment: LabelAdjustmentMethod;
}

/** What a US label says of a battery-electric vehicle, before rounding. Made by {@link usLabel}. */
export interface UsLabelResult extends ProcedureResult {
  /** Label figures per unadjusted ones. */
  readonly adjustment: { readonly method: string; readonly factor: number };
  /** Fuel economy at the wall; only when the energy of the recharge is known. */
  readonly economy?: {
    readonly city: Quantity<DistancePerEnergy>;
    readonly highway: Quantity<DistancePerEnergy>;
    /** Harmonic 55/45 mean of both. */
    readonly combined: Quantity<DistancePerEnergy>;
  };
}

/**
 * Figures of a US label from an unadjusted test: range, consumption and fuel economy, in the city, on the highway, combined.
 *
 * One factor adjusts ranges and fuel economies of city and highway alike: with five cycles it is the combined 5-cycle fuel
 * economy per the combined unadjusted one. Certified vehicles show that: where the label took five cycles, city and highway
 * have the same factor to 0.003.
 *
 * @param options - the test and the adjustment
 * @returns label figures, not rounded: see {@link roundForUsLabel}
 * @throws InputError `NOT_VALID_HERE` when a 5-cycle method is wanted and the test says nothing at the wall, `WRONG_CHOICE`
 *   for another method or what is no test, `OUT_OF_RANGE`, `NOT_A_FRACTION`, and what `readOptions` throws
 * @example
 * const [cycle, hwy] = [{ energy: q("1.7 kWh"), distance: q("7.45 mi") }, { energy: q("2.6 kWh"), distance: q("10.26 mi") }];
 * const test = usMultiCycle({
 *   ...{ city: [cycle, cycle, cycle, cycle], highway: [hwy, hwy], usableEnergy: q("80 kWh"), rechargeEnergy: q("90 kWh") },
 * });
 * usLabel({ test, adjustment: { method: "default" } }).range.in("mi"); // 234.4...
 */
export function usLabel(options: UsLabelOptions): UsLabelResult {
  readOptions("usLabel", options, {}, ["test", "adjustment"]);
  const { test } = options;
  const [city, highway] = testParts(test);
  const { factor, method, rule, warnings, steps } = adjust(options.adjustment, city, highway);
  const adjusted = [city, highway].map((part) => adjustedPart(part, factor)) as [ProcedurePart, ProcedurePart];
  const [inCity, onHighway] = adjusted.map(({ consumption }) => consumption.atWall?.inverse().to("MPGe"));
  const list = rules(...test.rules, rule);
  return Object.freeze({
    procedure: `US label, adjusted by ${method} (factor ${Number(factor.toPrecision(4))})`,
    rangeMeans:
      "usable energy per consumption on UDDS and HWFET at 20 to 30 °C, weighted 55/45, times a factor that stands for cold, " +
      "heat, high speed and hard driving",
    range: test.range.times(factor),
    consumption: adjustedPart({ ...city, consumption: test.consumption }, factor).consumption,
    usableEnergy: test.usableEnergy,
    parts: Object.freeze(adjusted),
    adjustment: Object.freeze({ method, factor }),
    ...(inCity === undefined || onHighway === undefined
      ? {}
      : {
          economy: Object.freeze({
            city: inCity,
            highway: onHighway,
            combined: combinedFuelEconomy({ city: inCity, highway: onHighway }),
          }),
        }),
    rules: list,
    warnings: Object.freeze([...doubtsOfRules(list), ...warnings]),
    working: () => [...test.working(), ...steps()],
  });
}

/** City and highway of a test, when it is one. */
function testParts(test: unknown): readonly [ProcedurePart, ProcedurePart] {
  const { parts, rules: list, working } = Object(test) as Partial<ProcedureResult>;
  const found = ["city", "highway"].map((name) =>
    Array.isArray(parts) ? (parts as readonly ProcedurePart[]).find((part) => part?.name === name) : undefined,
  );
  const [city, highway] = found;
  if (city === undefined || highway === undefined || !Array.isArray(list) || typeof working !== "function") {
    throw new InputError("WRONG_CHOICE", "test must come from usMultiCycle or simulateUsTest", { name: "test" });
  }
  return [city, highway];
}

interface Adjusting {
  readonly factor: number;
  readonly method: string;
  readonly rule: Rule;
  readonly warnings: readonly string[];
  readonly steps: () => Step[];
}

function adjust(given: LabelAdjustmentMethod, city: ProcedurePart, highway: ProcedurePart): Adjusting {
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

function adjustedPart({ name, range, consumption }: ProcedurePart, factor: number): ProcedurePart {
  const { atBattery, atWall } = consumption;
  return Object.freeze({
    name,
    range: range.times(factor),
    consumption: Object.freeze({
      atBattery: atBattery.times(1 / factor),
      ...(atWall === undefined ? {} : { atWall: atWall.times(1 / factor) }),
    }),
  });
}

/** Options of {@link roundForUsLabel}. */
export interface RoundForUsLabelOptions {
  /** A label, from {@link usLabel}. */
  readonly label: UsLabelResult;
}

/** Figures as a label prints them. */
export interface UsLabelFigures {
  /** Combined range, to the mile. */
  readonly range: Quantity<Length>;
  /** Combined fuel economy to the MPGe; only when the recharge is known. */
  readonly economy?: Quantity<DistancePerEnergy>;
  /** Combined consumption at the wall, to the kWh/100 mi; only when the recharge is known. */
  readonly consumption?: Quantity<EnergyPerDistance>;
  /** Where the rounding is from. */
  readonly rule: Rule;
}

/**
 * The figures of a label as it prints them, in whole miles, MPGe and kWh/100 mi. That the unit is kWh/100 mi was seen
 * (40 CFR 600.311-12 (c)(3)); that all three are whole numbers is from memory.
 *
 * @param options - the label
 * @returns rounded figures
 * @throws InputError `WRONG_CHOICE` when it is no label, and what `readOptions` throws
 * @example
 * const [cycle, hwy] = [{ energy: q("1.7 kWh"), distance: q("7.45 mi") }, { energy: q("2.6 kWh"), distance: q("10.26 mi") }];
 * const test = usMultiCycle({
 *   ...{ city: [cycle, cycle, cycle, cycle], highway: [hwy, hwy], usableEnergy: q("80 kWh"), rechargeEnergy: q("90 kWh") },
 * });
 * const label = usLabel({ test, adjustment: { method: "default" } });
 * String(roundForUsLabel({ label }).range); // "234 mi"
 */
export function roundForUsLabel(options: RoundForUsLabelOptions): UsLabelFigures {
  readOptions("roundForUsLabel", options, {}, ["label"]);
  const { range, economy, consumption } = Object(options.label) as Partial<UsLabelResult>;
  if (range === undefined || consumption === undefined) {
    throw new InputError("WRONG_CHOICE", "label must come from usLabel", { name: "label" });
  }
  const miles = Math.round(readNumber("label.range", range, { unit: "mi", atLeast: 0 }));
  const combined = economy?.combined;
  const { atWall } = Object(consumption) as Partial<ProcedureResult["consumption"]>;
  return Object.freeze({
    range: quantity(miles, "mi"),
    ...(combined === undefined
      ? {}
      : { economy: quantity(Math.round(readNumber("label.economy", combined, { unit: "MPGe", above: 0 })), "MPGe") }),
    ...(atWall === undefined
      ? {}
      : {
          consumption: quantity(
            Math.round(readNumber("label.consumption", atWall, { unit: "kWh/100 mi", above: 0 })),
            "kWh/100 mi",
          ),
        }),
    rule: Object.freeze({
      rule: "whole miles, MPGe and kWh/100 mi",
      source: Object.freeze({ document: "40 CFR 600.311-12", section: "(c)", status: "memory" } as const),
    }),
  });
}

/** Options of {@link usLabelScope}. */
export interface UsLabelScopeOptions {
  /** Gross vehicle weight rating: the largest mass that the maker allows. */
  readonly grossWeight: Quantity<Mass>;
  /** Whether the vehicle is made above all to carry persons (a car, a sport utility vehicle, a passenger van). */
  readonly carriesPersons: boolean;
}

/** Whether a vehicle has a US range label at all. */
export interface UsLabelScope {
  /** Whether it has one. */
  readonly labelled: boolean;
  /** Why, in words. */
  readonly because: string;
  /** The rules behind it. */
  readonly rules: readonly Rule[];
  /** What a reader should doubt. */
  readonly warnings: readonly string[];
}

const lightDuty: Rule = {
  rule: "light-duty vehicles have a gross vehicle weight below 8500 lb",
  source: { document: "US vehicle weight classes, government data centre", status: "seen" },
};
const mediumPassenger: Rule = {
  rule: "vehicles for persons from 8500 to 10 000 lb are labelled since model year 2011",
  source: { document: "40 CFR 86.1803, medium-duty passenger vehicle; 40 CFR 600.002", status: "memory" },
};

/**
 * Whether a vehicle has a US label: heavy pickups and vans have none, so a range that is announced for them is the maker's.
 *
 * @param options - gross weight and purpose
 * @returns the answer with its rule
 * @throws InputError `OUT_OF_RANGE`, `WRONG_CHOICE`, and what `readOptions` throws
 * @example
 * usLabelScope({ grossWeight: q("9,500 lb"), carriesPersons: false }).labelled; // false
 */
export function usLabelScope(options: UsLabelScopeOptions): UsLabelScope {
  const { grossWeight } = readOptions("usLabelScope", options, { grossWeight: { unit: "lb", above: 0 } }, [
    "carriesPersons",
  ]);
  const { carriesPersons } = options;
  if (typeof carriesPersons !== "boolean") {
    throw new InputError("WRONG_CHOICE", `carriesPersons must be true or false: got ${describeGiven(carriesPersons)}`, {
      name: "carriesPersons",
    });
  }
  const light = grossWeight < 8500;
  const labelled = light || (carriesPersons && grossWeight <= 10_000);
  const list = rules(light ? lightDuty : mediumPassenger);
  return Object.freeze({
    labelled,
    because: light
      ? "its gross weight is below 8500 lb"
      : labelled
        ? "its gross weight is 8500 lb or more, but it is made for persons and at most 10 000 lb"
        : "its gross weight is 8500 lb or more, and it is no passenger vehicle of at most 10 000 lb",
    rules: list,
    warnings: Object.freeze(doubtsOfRules(list)),
  });
}
