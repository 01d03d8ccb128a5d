import {
  type DistancePerEnergy,
  type EnergyPerDistance,
  InputError,
  type Length,
  type Quantity,
  quantity,
  readNumber,
  readOptions,
} from "@tarewatt/units";
import type { ProcedureResult } from "./procedure-result.js";
import { readRules, readWarnings } from "./read-test.js";
import { doubtsOfRules, isDoubtOfRules, type Rule, rules } from "./rule.js";
import type { UsLabelResult } from "./us-label.js";

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
  /** The rules behind the label and its rounding. */
  readonly rules: readonly Rule[];
  /** What a reader should doubt: what the label warns of, and the rounding. */
  readonly warnings: readonly string[];
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
  const {
    range,
    economy,
    consumption,
    adjustment,
    rules: behind,
    warnings,
  } = Object(options.label) as Partial<UsLabelResult>;
  if (range === undefined || consumption === undefined || adjustment === undefined || !Array.isArray(behind)) {
    throw new InputError("WRONG_CHOICE", "label must come from usLabel", { name: "label" });
  }
  const miles = Math.round(readNumber("label.range", range, { unit: "mi", atLeast: 0 }));
  const combined = economy?.combined;
  const { atWall } = Object(consumption) as Partial<ProcedureResult["consumption"]>;
  const list = rules(...readRules("label.rules", behind), {
    rule: "whole miles, MPGe and kWh/100 mi; the unit kWh/100 mi was seen, the whole numbers are remembered",
    source: { document: "40 CFR 600.311-12", section: "(c)", status: "memory" },
  });
  const others = readWarnings("label.warnings", warnings).filter((each) => !isDoubtOfRules(each));
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
    rules: list,
    warnings: Object.freeze([...others, ...doubtsOfRules(list)]),
  });
}
