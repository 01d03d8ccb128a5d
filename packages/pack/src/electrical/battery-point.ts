import {
  type ElectricCurrent,
  type ElectricResistance,
  InputError,
  type NumberRule,
  type Power,
  type Quantity,
  quantity,
  type Ratio,
  readOptions,
  type Step,
  type Voltage,
} from "@tarewatt/units";
import type { Caution } from "../safety/caution.js";
import type { PackBattery } from "./battery.js";
import { currentAtPower } from "./current-at-power.js";
import { resistiveHeat } from "./heat.js";
import { readBattery } from "./read-battery.js";

/** Options of {@link batteryPoint}. */
export interface BatteryPointOptions {
  /** The battery. */
  readonly battery: PackBattery;
  /** Power at its terminals: positive discharging, negative charging. */
  readonly power: Quantity<Power>;
  /** State of charge of its cells, 0 to 1. */
  readonly stateOfCharge: number | Quantity<Ratio>;
}

/** A battery at one power and one state of charge. */
export interface BatteryPoint {
  /** Voltage without current. */
  readonly openCircuitVoltage: Quantity<Voltage>;
  /** Voltage at the terminals: below the open-circuit voltage discharging, above it charging. */
  readonly terminalVoltage: Quantity<Voltage>;
  /** Current, positive discharging. */
  readonly current: Quantity<ElectricCurrent>;
  /** Resistance of cells and what joins them. */
  readonly resistance: Quantity<ElectricResistance>;
  /** Power lost inside, which becomes heat; reversible heat is not in it. */
  readonly loss: Quantity<Power>;
  /** Power out over power in, 0 to 1: out of the terminals discharging, into the cells charging. 1 without power. */
  readonly efficiency: number;
  /** What is doubtful, such as a voltage beyond its limit; empty when nothing is. */
  readonly warnings: readonly string[];
  /** Cautions about safety, to be printed with the result. */
  readonly cautions: readonly Caution[];
  /** How current and loss came about. */
  working(): Step[];
}

const rules = {
  power: { unit: "W" },
  stateOfCharge: { unit: "1", atLeast: 0, atMost: 1 },
} as const satisfies Readonly<Record<string, NumberRule>>;

/**
 * Voltage, current, loss and efficiency of a battery at a power and a state of charge.
 *
 * Valid where the battery is: at its temperature and age, for the pulse length that its resistance belongs to.
 * A voltage limit that the power breaks is a warning; a power that no current gives is an error.
 *
 * @param options - battery, power at its terminals (positive discharging), state of charge
 * @throws InputError `NOT_VALID_HERE` for more than the battery can ever give, `OUT_OF_RANGE`, `NOT_A_FRACTION`,
 *   `WRONG_DIMENSION`, `WRONG_CHOICE`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * const cells = { cellCapacity: q("140 Ah"), cellResistance: q("0.7 mΩ"), openCircuit: openCircuitCurves.nickelRich };
 * const battery = packBattery({ arrangement: { series: 96, parallel: 2 }, ...cells, interconnectResistance: q("10 mΩ") });
 * const point = batteryPoint({ battery, power: q("100 kW"), stateOfCharge: 0.5 });
 * point.terminalVoltage; // 346.7 V
 * point.efficiency.toFixed(3); // "0.965"
 */
export function batteryPoint(options: BatteryPointOptions): BatteryPoint {
  const { power, stateOfCharge } = readOptions("batteryPoint", options, rules, ["battery"]);
  const battery = readBattery(options.battery);
  const volts = battery.openCircuitVoltage(stateOfCharge);
  const ohms = battery.resistance(stateOfCharge);
  const greatest = volts ** 2 / (4 * ohms);
  if (power > greatest) {
    throw new InputError(
      "NOT_VALID_HERE",
      `${options.power} is more than the battery can give at any current, ${quantity(greatest / 1000, "kW").format()} at a ` +
        `state of charge of ${stateOfCharge}: ask for less`,
      { power: options.power },
    );
  }
  const openCircuitVoltage = quantity(volts, "V");
  const resistance = quantity(ohms, "Ω");
  const forCurrent = { openCircuitVoltage, resistance, power: options.power };
  const current = currentAtPower(forCurrent);
  const amperes = current.in("A");
  const forLoss = { current, resistance };
  const loss = resistiveHeat(forLoss);
  const terminal = volts - amperes * ohms;
  return Object.freeze({
    openCircuitVoltage,
    terminalVoltage: quantity(terminal, "V"),
    current,
    resistance,
    loss,
    efficiency: power >= 0 ? terminal / volts : volts / terminal,
    warnings: Object.freeze([...battery.warnings, ...beyond(battery, terminal)]),
    cautions: battery.cautions,
    working: () => [currentAtPower.explain(forCurrent), resistiveHeat.explain(forLoss)],
  });
}

function beyond({ minimumVoltage, maximumVoltage }: PackBattery, terminal: number): string[] {
  const shown = quantity(terminal, "V").format();
  // A power at its limit may pass it by a rounding error.
  const slack = 1e-9 * terminal;
  if (terminal < minimumVoltage.in("V") - slack) {
    return [`the terminals are at ${shown}, below the lowest ${minimumVoltage.format()}: the pack would cut off`];
  }
  if (terminal > maximumVoltage.in("V") + slack) {
    return [`the terminals are at ${shown}, above the highest ${maximumVoltage.format()}: the pack would refuse`];
  }
  return [];
}
