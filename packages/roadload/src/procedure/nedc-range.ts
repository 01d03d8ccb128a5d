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
import { consumptionAtWall } from "../energy/consumption.js";
import { assertLength, cycleLengths, lengthSource } from "./cycle-lengths.js";
import { consumptionOverRange } from "./depletion.js";
import { doubtsOfRecharge } from "./driven-cycles.js";
import type { ProcedureResult } from "./procedure-result.js";
import { doubtsOfRules, type Rule, rules } from "./rule.js";

/** Options of {@link nedcRange}. */
export interface NedcRangeOptions {
  /** Distance driven on repeated NEDC, from full until the vehicle no longer followed. */
  readonly distance: Quantity<Length>;
  /**
   * Energy that the battery gave over it, at its terminals. The procedure does not ask for it: take it from the log of the same test.
   */
  readonly usableEnergy: Quantity<Energy>;
  /** The test of consumption: two NEDC from full, and the recharge after them. Without it nothing is said at the wall. */
  readonly consumptionTest?:
    | {
        /** Distance driven on the two cycles. */
        readonly distance: Quantity<Length>;
        /** Energy from the wall that filled the battery again. */
        readonly rechargeEnergy: Quantity<Energy>;
      }
    | undefined;
}

const list: readonly Rule[] = /* @__PURE__ */ rules(
  {
    rule: "range is driven on repeated NEDC until the vehicle cannot follow the curve up to 50 km/h; above, its pedal is held down",
    source: { document: "UN R101", section: "annex 9", status: "memory" },
  },
  {
    rule: "consumption is the energy of the recharge at the wall, after two NEDC from full, per their distance",
    source: { document: "UN R101", section: "annex 7", status: "memory" },
  },
  { rule: "the two cycles were driven whole, to 2 % of their length", source: lengthSource },
);

/**
 * The old European procedure (UN R101, NEDC) from measured tests: range and consumption.
 *
 * Range and consumption are of two tests. The consumption at the wall is that of two cycles, the first one cold, and not the
 * recharge of the range test; that at the battery is the mean over the range.
 *
 * @param options - the test of range, and that of consumption
 * @returns range and consumption
 * @throws InputError `INCONSISTENT` when the range is shorter than a cycle, the test of consumption is not two cycles long, or takes less
 *   from the wall than the battery gives for the distance, or more than twice as much; `NEGATIVE`, `OUT_OF_RANGE`, and what `readOptions` throws
 * @example
 * const test = nedcRange({
 *   ...{ distance: q("190 km"), usableEnergy: q("21 kWh") },
 *   consumptionTest: { distance: q("22.05 km"), rechargeEnergy: q("2.9 kWh") },
 * });
 * test.range.in("km"); // 190
 * test.consumption.atWall?.in("Wh/km"); // 131.5...
 */
export function nedcRange(options: NedcRangeOptions): ProcedureResult {
  const { distance, usableEnergy } = readOptions(
    "nedcRange",
    options,
    { distance: { unit: "km", above: 0 }, usableEnergy: { unit: "kWh", above: 0 } },
    ["consumptionTest?"],
  );
  const least = cycleLengths.NEDC / 1000;
  if (distance < 0.98 * least) {
    const message = `distance must be that of the whole test, one NEDC of ${least} km at least: got ${distance} km`;
    throw new InputError("INCONSISTENT", message, { least, distance });
  }
  const test = options.consumptionTest === undefined ? undefined : readConsumptionTest(options.consumptionTest);
  const figures = (working?: Working) => {
    const atBattery = consumptionOverRange.of({ usableEnergy, range: distance }, working);
    const atWall =
      test && consumptionAtWall.of({ energy: 3.6e6 * test.rechargeEnergy, distance: 1000 * test.distance }, working);
    return { atBattery, atWall };
  };
  const { atBattery, atWall } = figures();
  const factor = atWall === undefined ? undefined : atWall / atBattery;
  assertFactor(factor);
  return Object.freeze({
    procedure: "UN R101 on the NEDC",
    rangeMeans:
      "distance on repeated NEDC until the vehicle cannot follow the curve up to 50 km/h, at 20 to 30 °C, without heating or cooling",
    range: quantity(distance, "km"),
    consumption: Object.freeze({
      atBattery: quantity(atBattery, "Wh/km"),
      ...(atWall === undefined ? {} : { atWall: quantity(atWall, "Wh/km") }),
    }),
    usableEnergy: quantity(usableEnergy, "kWh"),
    parts: Object.freeze([]),
    rules: list,
    warnings: Object.freeze([...doubtsOfRules(list), ...doubtsOfRecharge(factor)]),
    working: () => {
      const working: Working = [];
      figures(working);
      return working as Step[];
    },
  });
}

function readConsumptionTest(given: NonNullable<NedcRangeOptions["consumptionTest"]>) {
  const test = readOptions("consumptionTest", given, {
    distance: { unit: "km", above: 0 },
    rechargeEnergy: { unit: "kWh", above: 0 },
  });
  assertLength("consumptionTest", [{ energy: test.rechargeEnergy, distance: test.distance }], "two NEDC", "km");
  return test;
}

/** Two cycles with a cold start, and the loss of charging, take more per distance than the battery gives over the range. */
function assertFactor(factor: number | undefined): void {
  if (factor === undefined || (factor >= 1 && factor <= 2)) return;
  throw new InputError(
    "INCONSISTENT",
    `the consumption at the wall must be 1 to 2 times that at the battery: got ${Number(factor.toPrecision(3))} times. Check which energy is which`,
    { factor },
  );
}
