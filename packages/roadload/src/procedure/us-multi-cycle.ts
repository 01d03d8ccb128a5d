import { type Energy, type Quantity, quantity, readOptions, type Step, type Working } from "@tarewatt/units";
import { combinedConsumption, combinedRange } from "./combined.js";
import { assertLength, lengthSource } from "./cycle-lengths.js";
import {
  consumptionOf,
  consumptionsOf,
  type Driven,
  type DrivenCycle,
  doubtsOfRecharge,
  partOf,
  readDriven,
  wallPerBattery,
  weightOfFirst,
} from "./driven-cycles.js";
import { highwayConsumption } from "./highway-consumption.js";
import type { ProcedureResult } from "./procedure-result.js";
import { doubtsOfRules, type Rule, rules } from "./rule.js";

/** One part of the US multi-cycle test. */
export interface UsMultiCycleStep {
  /** What is driven. */
  readonly drive: "UDDS" | "HWFET" | "constant";
  /** What comes then. */
  readonly then: string;
}

/**
 * What is driven in the US multi-cycle test, in order, with what lies between: 40 CFR 600.116-12(a)(2), seen. Both
 * constant-speed parts only empty the battery: their speed of 65 mph is from memory.
 *
 * @example
 * usMultiCycleOrder.map(({ drive }) => drive).join(" "); // "UDDS HWFET UDDS constant UDDS HWFET UDDS constant"
 */
export const usMultiCycleOrder: readonly UsMultiCycleStep[] = /* @__PURE__ */ (() =>
  Object.freeze(
    (
      [
        ["UDDS", "15 s with the key on"],
        ["HWFET", "soak of 10 min"],
        ["UDDS", "soak of at most 30 min"],
        ["constant", "soak of at most 30 min"],
        ["UDDS", "15 s with the key on"],
        ["HWFET", "soak of 10 min"],
        ["UDDS", "soak of at most 30 min"],
        ["constant", "to the end of the test"],
      ] as const
    ).map(([drive, then]) => Object.freeze({ drive, then })),
  ))();

/** Options of {@link usMultiCycle}. */
export interface UsMultiCycleOptions {
  /** The four UDDS, in the order in which they were driven: the first one is cold. */
  readonly city: readonly DrivenCycle[];
  /** The two HWFET. */
  readonly highway: readonly DrivenCycle[];
  /** Energy that the battery gives over the whole test, constant speeds included, at its terminals. */
  readonly usableEnergy: Quantity<Energy>;
  /** Energy from the wall that fills the battery again; without it nothing is said at the wall. */
  readonly rechargeEnergy?: Quantity<Energy> | undefined;
}

const rested: readonly Rule[] = /* @__PURE__ */ rules(
  {
    rule: "order of the cycles, pauses and soaks",
    source: { document: "40 CFR 600.116-12", section: "(a)(2)", status: "seen" },
  },
  {
    rule: "range is usable energy per consumption of each cycle, at the battery; city and highway are weighted 55/45",
    source: { document: "answer of the US to the UN guide on electric vehicles, EVE-05-12e (2013)", status: "seen" },
  },
  {
    rule: "the first UDDS weighs what it takes of the usable energy, the other three share the rest",
    source: { document: "SAE J1634", section: "8", status: "memory" },
  },
  {
    rule: "highway consumption is the mean of the two HWFET",
    source: { document: "SAE J1634", section: "8", status: "memory" },
  },
  {
    rule: "consumption at the wall is that at the battery times recharge per usable energy",
    source: { document: "SAE J1634", section: "8", status: "memory" },
  },
  { rule: "each cycle was driven whole, to 2 % of its length", source: lengthSource },
);

/**
 * The US multi-cycle test: consumption and range in the city, on the highway and combined, before any adjustment for a label.
 *
 * Combined range is the arithmetic 55/45 mean of both ranges; combined consumption is the arithmetic one of both consumptions,
 * which is the harmonic one of both fuel economies. So range times consumption is not quite the usable energy: at ranges of
 * 300 and 220 mi the two differ by 2.4 %.
 *
 * @param options - the cycles as driven, the usable energy, the recharge
 * @returns unadjusted figures; give them to {@link usLabel}
 * @throws InputError `INCONSISTENT` when there are not four and two cycles, they take more than the battery gives, or the
 *   recharge is less than that or more than twice as much; when a cycle is not as long as it should be; `EMPTY`, `NEGATIVE`, `OUT_OF_RANGE`, and what `readOptions` throws
 * @example
 * const [first, later] = [{ energy: q("1.9 kWh"), distance: q("7.45 mi") }, { energy: q("1.7 kWh"), distance: q("7.45 mi") }];
 * const highway = { energy: q("2.6 kWh"), distance: q("10.26 mi") };
 * const test = usMultiCycle({
 *   ...{ city: [first, later, later, later], highway: [highway, highway] },
 *   ...{ usableEnergy: q("80 kWh"), rechargeEnergy: q("90 kWh") },
 * });
 * test.range.in("mi"); // 334.3...
 * test.consumption.atWall?.in("Wh/mi"); // 269.8...
 */
export function usMultiCycle(options: UsMultiCycleOptions): ProcedureResult {
  const { usableEnergy, rechargeEnergy } = readOptions(
    "usMultiCycle",
    options,
    { usableEnergy: { unit: "kWh", above: 0 }, rechargeEnergy: { unit: "kWh", above: 0, optional: true } },
    ["city", "highway"],
  );
  const city = readDriven("city", options.city, [4, 4], "mi");
  const highway = readDriven("highway", options.highway, [2, 2], "mi");
  assertLength("city", city, "UDDS", "mi");
  assertLength("highway", highway, "HWFET", "mi");
  const basis: Basis = { usableEnergy, wallPerBattery: wallPerBattery(usableEnergy, rechargeEnergy) };
  const figures = figuresOf(city, highway, basis);
  return Object.freeze({
    procedure: "US multi-cycle test (SAE J1634), unadjusted",
    rangeMeans:
      "usable energy per consumption at the battery, for UDDS and HWFET at 20 to 30 °C without heating or cooling, weighted 55/45; " +
      "no adjustment to the road",
    ...figures,
    usableEnergy: quantity(usableEnergy, "kWh"),
    rules: rested,
    warnings: Object.freeze([...doubtsOfRules(rested), ...doubtsOfRecharge(basis.wallPerBattery)]),
    working: () => {
      const working: Working = [];
      wallPerBattery(usableEnergy, rechargeEnergy, working);
      figuresOf(city, highway, basis, working);
      return working as Step[];
    },
  });
}

interface Basis {
  readonly usableEnergy: number;
  readonly wallPerBattery: number | undefined;
}

function figuresOf(city: readonly Driven[], highway: readonly Driven[], basis: Basis, working?: Working) {
  const firstWeight = weightOfFirst("city and highway", [...city, ...highway], basis.usableEnergy, working);
  const inCity = consumptionOf(city, firstWeight, "mi", working);
  const [first, second] = highway.map(({ energy, distance }) => (1000 * energy) / distance) as [number, number];
  const onHighway = highwayConsumption.of({ first, second }, working);
  const parts = [
    partOf("city", inCity, basis, "mi", working),
    partOf("highway", onHighway, basis, "mi", working),
  ] as const;
  const combined = combinedConsumption.of({ city: inCity, highway: onHighway }, working);
  const consumption = consumptionsOf(combined, basis.wallPerBattery, "mi", working);
  const [c, h] = parts.map(({ range }) => range.in("mi")) as [number, number];
  return {
    range: quantity(combinedRange.of({ city: c, highway: h }, working), "mi"),
    consumption,
    parts: Object.freeze(parts),
  };
}
