import { describeGiven, InputError, type NumberRule, readOptions } from "@tarewatt/units";
import { readSource } from "../check/read-source.js";
import { readText } from "../check/read-text.js";
import type { ChargingStation } from "./station.js";

/** @internal A station in SI units; what is not limited is infinite. */
export interface StationRead {
  readonly name: string;
  /** Greatest direct power into the vehicle, in W. */
  readonly power: number;
  readonly current: number;
  readonly maximumVoltage: number;
  readonly minimumVoltage: number;
  readonly efficiency?: number | undefined;
}

const rules = {
  power: { unit: "W", above: 0, optional: true },
  current: { unit: "A", above: 0, optional: true },
  maximumVoltage: { unit: "V", above: 0, optional: true },
  minimumVoltage: { unit: "V", above: 0, optional: true },
  efficiency: { unit: "1", above: 0, atMost: 1, optional: true },
} as const satisfies Readonly<Record<string, NumberRule>>;

/** @internal */
export function readStation(given: ChargingStation): StationRead {
  const read = readOptions("station", given, rules, ["name?", "supply?", "source?"]);
  readSource(given.source);
  const { supply = "direct" } = given;
  if (supply !== "direct" && supply !== "alternating") {
    throw new InputError(
      "WRONG_CHOICE",
      `station.supply must be "direct" or "alternating": got ${describeGiven(supply)}`,
      {},
    );
  }
  const { power, current, maximumVoltage, minimumVoltage, efficiency } = read;
  if (power === undefined && current === undefined) {
    throw new InputError("MISSING_OPTION", "a station needs its power, its current, or both", { option: "power" });
  }
  if (maximumVoltage !== undefined && minimumVoltage !== undefined && minimumVoltage >= maximumVoltage) {
    throw new InputError(
      "INCONSISTENT",
      `the lowest voltage of the station must lie below its highest: got ${given.minimumVoltage} and ${given.maximumVoltage}`,
      {},
    );
  }
  if (supply === "alternating") {
    if (power === undefined || efficiency === undefined) {
      throw new InputError(
        "MISSING_OPTION",
        "an alternating supply needs power and efficiency: its power is at the wall, and the vehicle converts it",
        { option: power === undefined ? "power" : "efficiency" },
      );
    }
    if (current !== undefined || maximumVoltage !== undefined || minimumVoltage !== undefined) {
      throw new InputError(
        "INCONSISTENT",
        "current and voltages of a station are direct ones: give an alternating supply by its power",
        {},
      );
    }
  }
  return {
    name: readText("station.name", given.name) ?? "the station",
    power: (power ?? Number.POSITIVE_INFINITY) * (supply === "alternating" ? (efficiency ?? 1) : 1),
    current: current ?? Number.POSITIVE_INFINITY,
    maximumVoltage: maximumVoltage ?? Number.POSITIVE_INFINITY,
    minimumVoltage: minimumVoltage ?? 0,
    efficiency,
  };
}
