import { type NumberRule, type Power, type Quantity, quantity, type Ratio, readOptions } from "@tarewatt/units";
import type { Caution } from "../safety/caution.js";
import type { PackBattery } from "./battery.js";
import { readBattery } from "./read-battery.js";

/** Options of {@link batteryPower}. */
export interface BatteryPowerOptions {
  /** The battery. */
  readonly battery: PackBattery;
  /** State of charge of its cells, 0 to 1. */
  readonly stateOfCharge: number | Quantity<Ratio>;
  /** Heat that cooling takes from the cells for as long as one likes. Not negative. With it the continuous power is found. */
  readonly cooling?: Quantity<Power> | undefined;
}

/** Power that a battery can give and take. Both directions as positive powers at the terminals. */
export interface PowerBothWays {
  /** The most it gives. */
  readonly discharge: Quantity<Power>;
  /** The most it takes. */
  readonly charge: Quantity<Power>;
}

/** Power of a battery at one state of charge. */
export interface BatteryPower {
  /** For as long as the pulse that its resistance was given for, about ten seconds: limits of voltage and current. */
  readonly peak: PowerBothWays;
  /** For ever, as far as heat is concerned: no more is lost inside than cooling takes away. Absent without `cooling`. */
  readonly continuous?: PowerBothWays;
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
  /** Cautions about safety, to be printed with the result. */
  readonly cautions: readonly Caution[];
}

/**
 * Peak power and continuous power of a battery at a state of charge.
 *
 * Peak power ends at a limit of voltage or current. Continuous power is the one whose loss the cooling just carries away,
 * and no more than the peak: it needs a resistance of minutes, not of seconds, which is greater. Other limits of a real
 * pack (fuses, busbars) are not known here. Charging of cold and hot cells is limited as `chargeRateLimit` of the battery says.
 *
 * @param options - battery, state of charge, and the heat that cooling takes away
 * @throws InputError `NEGATIVE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `WRONG_CHOICE`, `NOT_AN_OBJECT`, `UNKNOWN_OPTION`,
 *   `MISSING_OPTION`
 * @example
 * const cells = { cellCapacity: q("140 Ah"), cellResistance: q("0.7 mΩ"), openCircuit: openCircuitCurves.nickelRich };
 * const battery = packBattery({ arrangement: { series: 96, parallel: 2 }, ...cells, interconnectResistance: q("10 mΩ") });
 * const { peak, continuous } = batteryPower({ battery, stateOfCharge: 0.5, cooling: q("5 kW") });
 * peak.discharge.format(); // "655 kW"
 * continuous?.discharge.format(); // "117 kW"
 */
export function batteryPower(options: BatteryPowerOptions): BatteryPower {
  const rules = {
    stateOfCharge: { unit: "1", atLeast: 0, atMost: 1 },
    cooling: { unit: "W", atLeast: 0, optional: true },
  } as const satisfies Readonly<Record<string, NumberRule>>;
  const { stateOfCharge, cooling } = readOptions("batteryPower", options, rules, ["battery"]);
  const battery = readBattery(options.battery);
  const discharge = battery.maximumDischargePower(stateOfCharge);
  const charge = battery.maximumChargePower(stateOfCharge);
  const continuous =
    cooling === undefined ? undefined : continuousPower(battery, stateOfCharge, cooling, { discharge, charge });
  return Object.freeze({
    peak: bothWays(discharge, charge),
    ...(continuous && { continuous }),
    warnings: battery.warnings,
    cautions: battery.cautions,
  });
}

/** From I²R = cooling: the current, and the power at the terminals on either side of the open-circuit voltage. */
function continuousPower(
  battery: PackBattery,
  stateOfCharge: number,
  cooling: number,
  peak: { readonly discharge: number; readonly charge: number },
): PowerBothWays {
  const volts = battery.openCircuitVoltage(stateOfCharge);
  const amperes = Math.sqrt(cooling / battery.resistance(stateOfCharge));
  // Past half the voltage more current gives less power: the peak is the limit there.
  const past = amperes * battery.resistance(stateOfCharge) > volts / 2;
  const discharge = past ? peak.discharge : Math.min(peak.discharge, amperes * volts - cooling);
  return bothWays(discharge, Math.min(peak.charge, amperes * volts + cooling));
}

function bothWays(discharge: number, charge: number): PowerBothWays {
  return Object.freeze({ discharge: quantity(discharge / 1000, "kW"), charge: quantity(charge / 1000, "kW") });
}
