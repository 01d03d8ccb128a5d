import { type NumberRule, quantity, readNumber, readOptions } from "@tarewatt/units";
import { interpolate } from "../check/interpolate.js";
import { readPart } from "../check/read-part.js";
import { readText } from "../check/read-text.js";
import { chargeFactors, openCircuitPoints, temperatureFactors } from "../chemistry/curve-points.js";
import {
  resistanceAgainstCharge as publishedAgainstCharge,
  resistanceAgainstTemperature as publishedAgainstTemperature,
} from "../chemistry/resistance-curves.js";
import { highVoltageCaution } from "../safety/high-voltage-caution.js";
import type { PackBattery } from "./battery.js";
import { tabled, tabledBattery } from "./battery-table.js";
import { cellsOf } from "./cells-of.js";
import { chargeRateDoubts, chargeRateLimitAt } from "./charge-rate-limit.js";
import type { PackBatteryOptions } from "./pack-battery-options.js";
import { packResistance } from "./pack-resistance.js";
import { usableWindowOf } from "./usable-window.js";

const rules = {
  cellCapacity: { unit: "Ah", above: 0, atMost: 1e5, optional: true },
  cellResistance: { unit: "Ω", above: 0, atMost: 100 },
  interconnectResistance: { unit: "Ω", atLeast: 0, atMost: 100, optional: true },
  temperature: { unit: "°C", atLeast: -60, atMost: 90, optional: true },
  resistanceGrowth: { unit: "1", above: 0, atMost: 100, optional: true },
  capacityLeft: { unit: "1", above: 0, atMost: 1, optional: true },
  minimumCellVoltage: { unit: "V", above: 0, optional: true },
  maximumCellVoltage: { unit: "V", above: 0, optional: true },
  maximumDischargeCurrent: { unit: "A", above: 0, optional: true },
  maximumChargeCurrent: { unit: "A", above: 0, optional: true },
  chargeRateLimit: { unit: "1", atLeast: 0, atMost: 1000, optional: true },
} as const satisfies Readonly<Record<string, NumberRule>>;
// One list, not lists spread into one: a bundler keeps what is spread.
// biome-ignore format: pairs and groups a line
const others = [
  "openCircuit", "pack?", "arrangement?", "usableFraction?", "reserve?", "name?",
  "resistanceAgainstCharge?", "resistanceAgainstTemperature?",
];

/**
 * A battery as a voltage behind a resistance, both of them curves: for simulations, charging, and power at a state of charge.
 *
 * Resistance is that of the cells (at half charge and 25 °C, times factors for charge, temperature and age) times series over
 * parallel, plus what joins them. Its curves are tabled at every 0.1 % of charge; beyond its ends a curve holds their values.
 * Cold and hot cells take less charge, or none: see `chargeRateLimit`. States of charge are those of the cells; what a driver sees of them is the `usableWindow`.
 * What it leaves out: the slow part of the voltage's answer to a current, hysteresis, the dependence of the open-circuit
 * voltage on temperature, and differences between cells. Source: definition of the equivalent circuit; the curves say where they are from.
 *
 * @param options - cells, curves, temperature, age and limits
 * @returns the battery, with plain-number functions in SI units
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `WRONG_CHOICE`, `INCONSISTENT` when curves, voltage
 *   limits or reserves contradict, or a pack and its figures are given, `NOT_VALID_HERE` for curves that are cut short or refer to another point, `NOT_AN_OBJECT`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * const cells = { cellCapacity: q("140 Ah"), cellResistance: q("0.7 mΩ"), openCircuit: openCircuitCurves.nickelRich };
 * const arrangement = { series: 96, parallel: 2 };
 * const battery = packBattery({ arrangement, ...cells, interconnectResistance: q("10 mΩ") });
 * battery.lossPower(100_000, 0.5).toFixed(0); // "3627"
 * battery.cautions[0]?.code; // "HIGH_VOLTAGE"
 */
export function packBattery(options: PackBatteryOptions): PackBattery {
  const read = readOptions("packBattery", options, rules, others);
  const { cellResistance, interconnectResistance = 0, temperature = 25 } = read;
  const { resistanceGrowth = 1, capacityLeft = 1 } = read;
  const cells = cellsOf(options, read.cellCapacity);
  const { series, parallel } = cells;
  const openCircuit = openCircuitPoints("openCircuit.", readPart("openCircuit", options.openCircuit));
  const { resistanceAgainstCharge = publishedAgainstCharge } = options;
  const { resistanceAgainstTemperature = publishedAgainstTemperature } = options;
  const charged = readPart("resistanceAgainstCharge", resistanceAgainstCharge);
  const byCharge = chargeFactors("resistanceAgainstCharge.", charged);
  const warmed = readPart("resistanceAgainstTemperature", resistanceAgainstTemperature);
  const byTemperature = temperatureFactors("resistanceAgainstTemperature.", warmed);
  const name = readText("name", options.name) ?? `${series}s${parallel}p of ${cellName(options.openCircuit)}`;

  const lowest = openCircuit.voltage[0] as number;
  const highest = openCircuit.voltage.at(-1) as number;
  const { minimumCellVoltage = cells.minimumVoltage ?? lowest, maximumCellVoltage = cells.maximumVoltage ?? highest } =
    read;
  checkWindow(minimumCellVoltage, maximumCellVoltage, { lowest, highest });

  const factor = interpolate(byTemperature.temperature, byTemperature.factor, temperature) * resistanceGrowth;
  const steps = tabled(
    (state) => series * interpolate(openCircuit.stateOfCharge, openCircuit.voltage, state),
    (state) => {
      const atCharge = interpolate(byCharge.stateOfCharge, byCharge.factor, state);
      const resistance = cellResistance * factor * atCharge;
      return packResistance.of({ cellResistance: resistance, series, parallel, interconnectResistance });
    },
  );
  const capacity = cells.capacity * parallel * capacityLeft;
  const minimumVoltage = quantity(series * minimumCellVoltage, "V");
  const maximumVoltage = quantity(series * maximumCellVoltage, "V");
  const caution = highVoltageCaution(maximumVoltage);
  const chargeRateLimit = chargeRateLimitAt(temperature, read.chargeRateLimit);
  const kernel = tabledBattery({
    steps,
    charge: capacity * 3600,
    minimumVoltage: minimumVoltage.in("V"),
    maximumVoltage: maximumVoltage.in("V"),
    dischargeCurrent: read.maximumDischargeCurrent ?? Number.POSITIVE_INFINITY,
    chargeCurrent: Math.min(
      read.maximumChargeCurrent ?? Number.POSITIVE_INFINITY,
      chargeRateLimit === undefined ? Number.POSITIVE_INFINITY : chargeRateLimit.rate * capacity,
    ),
  });
  const { window: usableWindow, warnings: windowDoubts } = usableWindowOf(
    { reserve: options.reserve, usableFraction: cells.usableFraction },
    kernel.openCircuitVoltage,
  );
  return Object.freeze({
    form: "voltage behind a resistance",
    name,
    capacity: quantity(capacity, "Ah"),
    temperature: quantity(temperature, "°C"),
    resistanceGrowth,
    minimumVoltage,
    maximumVoltage,
    cautions: Object.freeze(caution === undefined ? [] : [caution]),
    ...(chargeRateLimit && { chargeRateLimit }),
    ...(usableWindow && { usableWindow }),
    warnings: Object.freeze([
      ...cells.warnings,
      ...doubts(options, temperature, byTemperature),
      ...chargeRateDoubts(temperature, chargeRateLimit),
      ...windowDoubts,
    ]),
    ...kernel,
  } as const);
}

/** A copy that lost its name still makes a battery. */
function cellName({ name }: { readonly name?: unknown }): string {
  return typeof name === "string" ? name : "a cell";
}

function checkWindow(
  minimum: number,
  maximum: number,
  curve: { readonly lowest: number; readonly highest: number },
): void {
  readNumber("minimumCellVoltage", quantity(minimum, "V"), { unit: "V", atMost: curve.highest });
  readNumber("maximumCellVoltage", quantity(maximum, "V"), { unit: "V", above: Math.max(minimum, curve.lowest) });
}

function doubts(
  options: PackBatteryOptions,
  temperature: number,
  { temperature: tabledAt }: { readonly temperature: readonly number[] },
): string[] {
  const [first = 0] = tabledAt;
  const last = tabledAt.at(-1) ?? 0;
  const shown = Number(temperature.toPrecision(4));
  const outside = temperature < first || temperature > last;
  return [
    ...(options.interconnectResistance === undefined
      ? ["the resistance between the cells is not given and not counted: loss and heat are too small"]
      : []),
    ...(options.resistanceAgainstTemperature === undefined && temperature !== 25
      ? [`resistance at ${shown} °C follows one published cell; cells differ`]
      : []),
    ...(outside
      ? [`${shown} °C lies outside the resistances at ${first} °C to ${last} °C: the nearer end is used`]
      : []),
  ];
}
