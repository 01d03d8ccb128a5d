import {
  type Energy,
  InputError,
  type Length,
  type Quantity,
  quantity,
  readOptions,
  type Step,
  type Working,
} from "@tarewatt/units";
import { combinedConsumption, combinedRange } from "./combined.js";
import { cycleLengths } from "./cycle-lengths.js";
import { consumptionOverRange } from "./depletion.js";
import { consumptionsOf, doubtsOfRecharge, wallPerBattery } from "./driven-cycles.js";
import { perMile } from "./per-mile.js";
import type { ProcedurePart, ProcedureResult } from "./procedure-result.js";
import { doubtsOfRules, type Rule, rules } from "./rule.js";

/** A test in which one cycle was driven again and again, from full until the vehicle no longer followed. */
export interface DepletionTest {
  /** Distance driven in all. */
  readonly distance: Quantity<Length>;
  /** Energy that the battery gave over it, at its terminals. */
  readonly usableEnergy: Quantity<Energy>;
  /** Energy from the wall that filled the battery again; without it nothing is said at the wall. */
  readonly rechargeEnergy?: Quantity<Energy> | undefined;
}

/** Options of {@link usSingleCycle}. */
export interface UsSingleCycleOptions {
  /** The test on repeated UDDS. */
  readonly city: DepletionTest;
  /** The test on repeated HWFET. */
  readonly highway: DepletionTest;
}

const list: readonly Rule[] = /* @__PURE__ */ rules(
  {
    rule: "UDDS after UDDS in one test, HWFET after HWFET in another, each from full",
    source: {
      document:
        "answer of the US to the UN guide on electric vehicles, EVE-05-12e (2013), on SAE J1634 of October 2002",
      status: "seen",
    },
  },
  {
    rule: "after 2012 allowed, with approval, where the multi-cycle test cannot be driven",
    source: { document: "SAE J1634 (2017), summary of its publisher", status: "seen" },
  },
  {
    rule: "range is the distance until the vehicle cannot follow the cycle",
    source: { document: "SAE J1634", section: "single-cycle test", status: "memory" },
  },
  {
    rule: "consumption is the energy of the whole test per its distance, at the battery and, by the recharge, at the wall",
    source: { document: "SAE J1634", section: "single-cycle test", status: "memory" },
  },
  {
    rule: "city and highway are weighted 55/45",
    source: { document: "answer of the US to the UN guide on electric vehicles, EVE-05-12e (2013)", status: "seen" },
  },
);

const overRange = /* @__PURE__ */ perMile(consumptionOverRange);
/** Two discharges of one battery, as a fraction: beyond this they are doubted; common practice, no source. */
const ALIKE = 0.05;
const MILE = 1609.344;

/**
 * The US single-cycle tests: one cycle repeated from full to empty, in the city and on the highway, before any adjustment for a label.
 * The way before the multi-cycle test, and that of vehicles that cannot drive it.
 *
 * The ranges are the distances that were driven, the first cycle cold. The usable energy of the result is the mean of both tests.
 *
 * @param options - both tests as driven
 * @returns unadjusted figures; give them to {@link usLabel}
 * @throws InputError `INCONSISTENT` when a test is shorter than one cycle, the recharge of one is less than what the battery gave or
 *   more than twice as much, or only one of them has a recharge; `NEGATIVE`, `OUT_OF_RANGE`, and what `readOptions` throws
 * @example
 * const test = usSingleCycle({
 *   city: { distance: q("120 mi"), usableEnergy: q("24 kWh"), rechargeEnergy: q("28 kWh") },
 *   highway: { distance: q("100 mi"), usableEnergy: q("24 kWh"), rechargeEnergy: q("28 kWh") },
 * });
 * test.range.in("mi"); // 111
 * test.consumption.atWall?.in("Wh/mi"); // 254.3...
 */
export function usSingleCycle(options: UsSingleCycleOptions): ProcedureResult {
  readOptions("usSingleCycle", options, {}, ["city", "highway"]);
  const city = readDepletion("city", options.city, cycleLengths.UDDS);
  const highway = readDepletion("highway", options.highway, cycleLengths.HWFET);
  if ((city.factor === undefined) !== (highway.factor === undefined)) {
    throw new InputError("INCONSISTENT", "both tests must have a rechargeEnergy, or neither", {});
  }
  const energies = [city.usableEnergy, highway.usableEnergy] as const;
  const mean = (energies[0] + energies[1]) / 2;
  const differ = Math.abs(energies[0] - energies[1]) / mean;
  return Object.freeze({
    procedure: "US single-cycle tests (SAE J1634), unadjusted",
    rangeMeans:
      "distance on repeated UDDS, and on repeated HWFET, until the vehicle cannot follow, at 20 to 30 °C without heating or cooling, " +
      "weighted 55/45; no adjustment to the road",
    ...figuresOf(city, highway),
    usableEnergy: quantity(mean, "kWh"),
    rules: list,
    warnings: Object.freeze([
      ...doubtsOfRules(list),
      ...doubtsOfRecharge(city.factor),
      ...doubtsOfRecharge(highway.factor),
      ...(differ > ALIKE
        ? [
            `the battery gave ${energies[0]} kWh in one test and ${energies[1]} kWh in the other; within ${100 * ALIKE} % is usual (common practice, no source)`,
          ]
        : []),
    ]),
    working: () => {
      const working: Working = [];
      figuresOf(city, highway, working);
      return working as Step[];
    },
  });
}

interface Depletion {
  /** In mi. */
  readonly distance: number;
  /** In kWh. */
  readonly usableEnergy: number;
  readonly rechargeEnergy: number | undefined;
  readonly factor: number | undefined;
}

function readDepletion(name: string, given: DepletionTest, cycle: number): Depletion {
  const read = readOptions(name, given, {
    distance: { unit: "mi", above: 0 },
    usableEnergy: { unit: "kWh", above: 0 },
    rechargeEnergy: { unit: "kWh", above: 0, optional: true },
  });
  const { distance, usableEnergy, rechargeEnergy } = read;
  const least = cycle / MILE;
  if (distance < 0.98 * least) {
    const message = `${name}.distance must be that of the whole test, one cycle of ${Number(least.toPrecision(4))} mi at least: got ${distance} mi`;
    throw new InputError("INCONSISTENT", message, { name, least, distance });
  }
  return { distance, usableEnergy, rechargeEnergy, factor: wallPerBattery(usableEnergy, rechargeEnergy) };
}

function figuresOf(city: Depletion, highway: Depletion, working?: Working) {
  const [inCity, onHighway] = [partOf("city", city, working), partOf("highway", highway, working)];
  const [c, h] = [inCity.consumption, onHighway.consumption];
  const mean = (a: number, b: number, steps?: Working) =>
    quantity(combinedConsumption.of({ city: a, highway: b }, steps), "Wh/mi");
  const walls = c.atWall && h.atWall && mean(c.atWall.in("Wh/mi"), h.atWall.in("Wh/mi"), working);
  const batteries = mean(c.atBattery.in("Wh/mi"), h.atBattery.in("Wh/mi"), walls === undefined ? working : undefined);
  return {
    range: quantity(combinedRange.of({ city: city.distance, highway: highway.distance }, working), "mi"),
    consumption: Object.freeze({ atBattery: batteries, ...(walls === undefined ? {} : { atWall: walls }) }),
    parts: Object.freeze([inCity, onHighway]),
  };
}

function partOf(name: string, { distance, usableEnergy, rechargeEnergy }: Depletion, working?: Working): ProcedurePart {
  const factor = wallPerBattery(usableEnergy, rechargeEnergy, working);
  const atBattery = overRange.of({ usableEnergy, range: distance }, working);
  return Object.freeze({
    name,
    range: quantity(distance, "mi"),
    consumption: consumptionsOf(atBattery, factor, "mi", working),
  });
}
