import {
  describeGiven,
  type Energy,
  InputError,
  type Quantity,
  quantity,
  readOptions,
  type Step,
  type Working,
} from "@tarewatt/units";
import { assertLength, lengthSource, type TestCycle } from "./cycle-lengths.js";
import {
  type Count,
  consumptionOf,
  type Driven,
  type DrivenCycle,
  doubtsOfRecharge,
  partOf,
  readDriven,
  wallPerBattery,
  weightOfFirst,
} from "./driven-cycles.js";
import type { ProcedurePart, ProcedureResult } from "./procedure-result.js";
import { doubtsOfRules, type Rule, rules } from "./rule.js";
import { assertPartsOfWhole, doubtsOfParts, type Parts } from "./wltp-parts.js";

/** How the battery is emptied: whole cycles one after the other, or a few with constant speed between. */
export type WltpProcedure = "shortened" | "consecutive";

/** Cycles of the parts of the world-wide procedure, each in the order in which they were driven. */
export interface WltpPartCycles {
  /** City cycles (low and medium): four in the shortened procedure. */
  readonly city?: readonly DrivenCycle[] | undefined;
  /** Low phases; weighted as the city cycles, which must be given too. */
  readonly low?: readonly DrivenCycle[] | undefined;
  /** Medium phases; weighted as the city cycles, which must be given too. */
  readonly medium?: readonly DrivenCycle[] | undefined;
  /** High phases; weighted as the whole cycles. */
  readonly high?: readonly DrivenCycle[] | undefined;
  /** Extra-high phases; weighted as the whole cycles. */
  readonly extraHigh?: readonly DrivenCycle[] | undefined;
}

/** Options of {@link wltpRange}. */
export interface WltpRangeOptions {
  /** How the battery was emptied. */
  readonly procedure: WltpProcedure;
  /** The whole cycles: two in the shortened procedure, two or more in the consecutive one; the first one is cold. */
  readonly cycles: readonly DrivenCycle[];
  /** What is known of the parts. */
  readonly parts?: WltpPartCycles | undefined;
  /** Energy that the battery gives over the whole test, at its terminals. */
  readonly usableEnergy: Quantity<Energy>;
  /** Energy from the wall that fills the battery again; without it nothing is said at the wall. */
  readonly rechargeEnergy?: Quantity<Energy> | undefined;
}

const ANNEX = "UN GTR No. 15, annex 8; UN R154, annex B8";
const common: readonly Rule[] = /* @__PURE__ */ rules(
  {
    rule: "the test is at 23 °C, and range is what is driven from its start to the break-off criterion",
    source: { document: ANNEX, status: "seen" },
  },
  {
    rule: "pure electric range is usable energy per weighted consumption at the battery; the first cycle weighs what it takes of it",
    source: { document: ANNEX, section: "4.4.2", status: "memory" },
  },
  {
    rule: "consumption is the energy of the recharge at the wall per pure electric range",
    source: { document: ANNEX, section: "4.3.4", status: "memory" },
  },
  { rule: "each cycle and phase was driven whole, to 2 % of its length", source: lengthSource },
);
const shortened: Rule = {
  rule: "two whole cycles and two more city cycles, constant speed of 100 km/h between and after, at most 10 % of charge left before the last",
  source: { document: "UN GTR No. 15, annex 8", section: "as the trade press of 2017 has it", status: "quoted" },
};
const consecutive: Rule = {
  rule: "whole cycles one after the other until the break-off criterion",
  source: { document: ANNEX, section: "3.4.4.1", status: "memory" },
};

/**
 * Pure electric range and consumption of the world-wide procedure (WLTP), whole cycle and parts, from a test by the shortened
 * or the consecutive procedure.
 *
 * @param options - the cycles as driven, the usable energy, the recharge
 * @returns range and consumption of the whole cycle, and of the parts that were given
 * @throws InputError `INCONSISTENT` when the number of cycles does not fit, they take more than the battery gives, or the
 *   recharge is less than that or more than twice as much; when a cycle or phase is not as long as it should be, or the parts
 *   do not fit the whole; `MISSING_OPTION` for low or medium phases without the city cycles; `EMPTY`, `WRONG_CHOICE`,
 *   `NEGATIVE`, `OUT_OF_RANGE`, and what `readOptions` throws
 * @example
 * const [first, second] = [{ energy: q("4.2 kWh"), distance: q("23.266 km") }, { energy: q("3.9 kWh"), distance: q("23.266 km") }];
 * wltpRange({ procedure: "shortened", cycles: [first, second], usableEnergy: q("60 kWh") }).range.in("km"); // 356.0...
 */
export function wltpRange(options: WltpRangeOptions): ProcedureResult {
  const { usableEnergy, rechargeEnergy } = readOptions(
    "wltpRange",
    options,
    { usableEnergy: { unit: "kWh", above: 0 }, rechargeEnergy: { unit: "kWh", above: 0, optional: true } },
    ["procedure", "cycles", "parts?"],
  );
  const { procedure } = options;
  if (procedure !== "shortened" && procedure !== "consecutive") {
    const got = describeGiven(procedure);
    throw new InputError("WRONG_CHOICE", `procedure must be "shortened" or "consecutive": got ${got}`, {
      name: "procedure",
    });
  }
  const short = procedure === "shortened";
  const most = Number.POSITIVE_INFINITY;
  const cycles = readDriven("cycles", options.cycles, [2, short ? 2 : most], "km");
  assertLength("cycles", cycles, "WLTC", "km");
  const given = options.parts ?? {};
  readOptions("wltpRange parts", given, {}, ["city?", "low?", "medium?", "high?", "extraHigh?"]);
  const read = (name: keyof WltpPartCycles, cycle: TestCycle, count: number): readonly Driven[] | undefined => {
    if (given[name] === undefined) return undefined;
    const howMany: Count = [2, short ? count : most];
    const driven = readDriven(`parts.${name}`, given[name], howMany, "km");
    assertLength(`parts.${name}`, driven, cycle, "km");
    return driven;
  };
  const known: Parts = {
    city: read("city", "WLTC, city", 4),
    low: read("low", "WLTC, low", 4),
    medium: read("medium", "WLTC, medium", 4),
    high: read("high", "WLTC, high", 2),
    extraHigh: read("extraHigh", "WLTC, extra high", 2),
  };
  if (known.city === undefined && (known.low ?? known.medium) !== undefined) {
    throw new InputError(
      "MISSING_OPTION",
      "low and medium phases are weighted as the city cycles: give parts.city too",
      {
        option: "parts.city",
      },
    );
  }
  assertPartsOfWhole(cycles, known);
  const basis = { usableEnergy, wallPerBattery: wallPerBattery(usableEnergy, rechargeEnergy) };
  const [whole, ...parts] = figuresOf(cycles, known, basis);
  const list = rules(...common, short ? shortened : consecutive);
  return Object.freeze({
    procedure: `WLTP, ${procedure} procedure`,
    rangeMeans: "usable energy per weighted consumption over the whole cycle at 23 °C, without heating or cooling",
    range: (whole as ProcedurePart).range,
    consumption: (whole as ProcedurePart).consumption,
    usableEnergy: quantity(usableEnergy, "kWh"),
    parts: Object.freeze(parts),
    rules: list,
    warnings: Object.freeze([
      ...doubtsOfRules(list),
      ...doubtsOfParts(cycles, known),
      ...doubtsOfRecharge(basis.wallPerBattery),
    ]),
    working: () => {
      const working: Working = [];
      figuresOf(cycles, known, basis, working);
      wallPerBattery(usableEnergy, rechargeEnergy, working);
      return working as Step[];
    },
  });
}

/** The whole cycle first, then the parts that are known. */
function figuresOf(
  cycles: readonly Driven[],
  { city, low, medium, high, extraHigh }: Parts,
  basis: Parameters<typeof partOf>[2],
  working?: Working,
): ProcedurePart[] {
  const part = (name: string, driven: readonly Driven[] | undefined, weight: number): ProcedurePart[] =>
    driven === undefined ? [] : [partOf(name, consumptionOf(driven, weight, "km", working), basis, "km", working)];
  const first = weightOfFirst("the whole", cycles, basis.usableEnergy, working);
  const whole = part("whole cycle", cycles, first);
  const firstCity = city === undefined ? first : weightOfFirst("the city", city, basis.usableEnergy, working);
  return [
    ...whole,
    ...part("city", city, firstCity),
    ...part("low", low, firstCity),
    ...part("medium", medium, firstCity),
    ...part("high", high, first),
    ...part("extra high", extraHigh, first),
  ];
}
