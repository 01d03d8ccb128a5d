import { type DistancePerEnergy, type Quantity, readOptions } from "@tarewatt/units";
import { combinedFuelEconomy } from "./combined.js";
import { adjust, type LabelAdjustmentMethod } from "./label-adjustment.js";
import type { ProcedurePart, ProcedureResult } from "./procedure-result.js";
import { readTest } from "./read-test.js";
import { doubtsOfRules, rules } from "./rule.js";

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
  const test = readTest(options.test);
  const { city, highway } = test;
  const { factor, method, rule, warnings, steps } = adjust(options.adjustment, city, highway);
  const combined = adjustedPart(test.whole, factor);
  const adjusted = [city, highway].map((part) => adjustedPart(part, factor)) as [ProcedurePart, ProcedurePart];
  const [inCity, onHighway] = adjusted.map(({ consumption }) => consumption.atWall?.inverse().to("MPGe"));
  const list = rules(...test.rules, rule);
  return Object.freeze({
    procedure: `US label, adjusted by ${method} (factor ${Number(factor.toPrecision(4))})`,
    rangeMeans:
      "usable energy per consumption on UDDS and HWFET at 20 to 30 °C, weighted 55/45, times a factor that stands for cold, " +
      "heat, high speed and hard driving",
    range: combined.range,
    consumption: combined.consumption,
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
