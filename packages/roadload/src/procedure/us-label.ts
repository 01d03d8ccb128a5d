import {
  type DistancePerEnergy,
  type EnergyPerDistance,
  type Quantity,
  quantity,
  readOptions,
  type Step,
  type Working,
} from "@tarewatt/units";
import { adjust } from "./adjust.js";
import { combinedConsumption, combinedFuelEconomy, combinedRange } from "./combined.js";
import type { LabelAdjustmentMethod } from "./label-adjustment.js";
import { labelConsumption, labelRange } from "./label-figures.js";
import type { ProcedurePart, ProcedureResult } from "./procedure-result.js";
import { readTest } from "./read-test.js";
import { doubtsOfRules, isDoubtOfRules, type Rule, rules } from "./rule.js";

/** Options of {@link usLabel}. */
export interface UsLabelOptions {
  /** Unadjusted figures, from {@link usMultiCycle} or {@link simulateUsTest}: no label, which is adjusted already. */
  readonly test: ProcedureResult & {
    /** A label has it, a test has not. */
    readonly adjustment?: never;
  };
  /** How they are adjusted. */
  readonly adjustment: LabelAdjustmentMethod;
}

/** What a US label says of a battery-electric vehicle, before rounding. Made by {@link usLabel}. */
export interface UsLabelResult extends ProcedureResult {
  /** Label figures per unadjusted ones. */
  readonly adjustment: {
    /** How they were adjusted, in words. */
    readonly method: string;
    /** Combined range of the label per unadjusted one. */
    readonly factor: number;
    /** In the city. */
    readonly city: number;
    /** On the highway; another than in the city by the derived 5-cycle method alone. */
    readonly highway: number;
  };
  /** Fuel economy at the wall; only when the energy of the recharge is known. */
  readonly economy?: {
    /** In the city. */
    readonly city: Quantity<DistancePerEnergy>;
    /** On the highway. */
    readonly highway: Quantity<DistancePerEnergy>;
    /** Harmonic 55/45 mean of both. */
    readonly combined: Quantity<DistancePerEnergy>;
  };
}

/**
 * Figures of a US label from an unadjusted test: range, consumption and fuel economy, in the city, on the highway, combined.
 *
 * By the derived 5-cycle method city and highway each have a curve of their own, and the combined figures come from what they
 * give. By any other method one factor adjusts both alike: with vehicle-specific five cycles it is the combined 5-cycle fuel
 * economy per the combined unadjusted one. Certified vehicles show that: where the label took five cycles, city and highway
 * have the same factor to 0.003.
 *
 * @param options - the test and the adjustment
 * @returns label figures, not rounded: see {@link roundForUsLabel}
 * @throws InputError `NOT_VALID_HERE` when a 5-cycle method is wanted and the test says nothing at the wall, `WRONG_CHOICE`
 *   for another method, what is no test, or a label in its place, `INCONSISTENT` when 5-cycle consumptions cannot be of the
 *   vehicle that was tested, `OUT_OF_RANGE`, `NOT_A_FRACTION`, and what `readOptions` throws
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
  const adjusting = adjust(options.adjustment, city, highway);
  const { method, rule, warnings, steps } = adjusting;
  const adjusted = (working?: Working) =>
    [adjustedPart(city, adjusting.city, working), adjustedPart(highway, adjusting.highway, working)] as const;
  const parts = adjusted();
  const combined = combinedOf(parts);
  const [inCity, onHighway] = parts.map(({ consumption }) => consumption.atWall?.inverse().to("MPGe"));
  const same = adjusting.city === adjusting.highway;
  const factor = same ? adjusting.city : combined.range.ratioTo(combinedOf([city, highway]).range);
  const list = rules(...test.rules, rule, ...ofRanges);
  const round = (value: number): number => Number(value.toPrecision(4));
  const factors = same
    ? `factor ${round(factor)}`
    : `factor ${round(adjusting.city)} in the city, ${round(adjusting.highway)} on the highway`;
  const { conditions, following } = test;
  return Object.freeze({
    procedure: `US label, adjusted by ${method} (${factors})`,
    rangeMeans:
      "usable energy per consumption on UDDS and HWFET at 20 to 30 °C, weighted 55/45, times a factor that stands for cold, " +
      "heat, high speed and hard driving",
    range: combined.range,
    consumption: combined.consumption,
    usableEnergy: test.usableEnergy,
    parts: Object.freeze(parts),
    adjustment: Object.freeze({ method, factor, city: adjusting.city, highway: adjusting.highway }),
    ...(inCity === undefined || onHighway === undefined
      ? {}
      : {
          economy: Object.freeze({
            city: inCity,
            highway: onHighway,
            combined: combinedFuelEconomy({ city: inCity, highway: onHighway }),
          }),
        }),
    ...(conditions === undefined ? {} : { conditions }),
    ...(following === undefined ? {} : { following }),
    rules: list,
    warnings: Object.freeze([
      ...test.warnings.filter((each) => !isDoubtOfRules(each)),
      ...doubtsOfRules(list),
      ...warnings,
    ]),
    working: () => {
      const working: Working = [...test.working(), ...steps()];
      combinedOf(adjusted(working), working);
      return working as Step[];
    },
  });
}

const ofRanges: readonly Rule[] = /* @__PURE__ */ rules({
  rule: "combined range is the arithmetic 55/45 mean, combined fuel economy the harmonic one",
  source: { document: "public US label tables of battery-electric vehicles, model years 2011 to 2024", status: "seen" },
});

function adjustedPart({ name, range, consumption }: ProcedurePart, factor: number, working?: Working): ProcedurePart {
  const { atBattery, atWall } = consumption;
  const perMile = (given: Quantity<EnergyPerDistance>, steps?: Working) =>
    quantity(labelConsumption.of({ consumption: given.in("Wh/mi"), factor }, steps), "Wh/mi");
  return Object.freeze({
    name,
    range: quantity(labelRange.of({ range: range.in("mi"), factor }, working), "mi"),
    consumption: Object.freeze({
      // The working follows the consumption that the label prints.
      atBattery: perMile(atBattery, atWall === undefined ? working : undefined),
      ...(atWall === undefined ? {} : { atWall: perMile(atWall, working) }),
    }),
  });
}

/** City and highway together; the step of the range is the last one. */
function combinedOf(
  [city, highway]: readonly [ProcedurePart, ProcedurePart],
  working?: Working,
): Pick<ProcedureResult, "range" | "consumption"> {
  const mean = (c: Quantity<EnergyPerDistance>, h: Quantity<EnergyPerDistance>, steps?: Working) =>
    quantity(combinedConsumption.of({ city: c.in("Wh/mi"), highway: h.in("Wh/mi") }, steps), "Wh/mi");
  const { atWall: inCity } = city.consumption;
  const { atWall: onHighway } = highway.consumption;
  const wall = inCity === undefined || onHighway === undefined ? undefined : mean(inCity, onHighway, working);
  const atBattery = mean(
    city.consumption.atBattery,
    highway.consumption.atBattery,
    wall === undefined ? working : undefined,
  );
  const range = combinedRange.of({ city: city.range.in("mi"), highway: highway.range.in("mi") }, working);
  return {
    range: quantity(range, "mi"),
    consumption: Object.freeze({ atBattery, ...(wall === undefined ? {} : { atWall: wall }) }),
  };
}
