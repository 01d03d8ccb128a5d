import {
  type Energy,
  InputError,
  type NumberRule,
  type Power,
  type Quantity,
  quantity,
  type Ratio,
  readOptions,
  type Time,
} from "@tarewatt/units";
import type { Caution } from "../safety/caution.js";
import type { PackBattery } from "./battery.js";
import { readBattery } from "./read-battery.js";
import { voltageIntegral } from "./voltage-integral.js";

/** Options of {@link openCircuitEnergy}. */
export interface OpenCircuitEnergyOptions {
  /** The battery. */
  readonly battery: PackBattery;
  /** Lower state of charge, 0 to 1; 0 when left out. */
  readonly from?: number | Quantity<Ratio> | undefined;
  /** Upper state of charge, 0 to 1; 1 when left out. */
  readonly to?: number | Quantity<Ratio> | undefined;
}

const STATE = { unit: "1", atLeast: 0, atMost: 1, optional: true } as const satisfies NumberRule;
/** Steps of a discharge. */
const STEPS = 1000;

/**
 * Energy of the cells between two states of charge, without any loss: what an endless discharge would deliver.
 *
 * Returns kilowatt hours. Negative when `to` lies below `from`. Source: definition, ∫U·dQ.
 *
 * @param options - battery, and the two states of charge
 * @throws InputError `NOT_A_FRACTION`, `NEGATIVE`, `WRONG_CHOICE`, `NOT_AN_OBJECT`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * const cells = { cellCapacity: q("140 Ah"), cellResistance: q("0.7 mΩ"), openCircuit: openCircuitCurves.nickelRich };
 * const battery = packBattery({ arrangement: { series: 96, parallel: 2 }, ...cells, interconnectResistance: q("10 mΩ") });
 * openCircuitEnergy({ battery }); // 99.986 kWh
 * openCircuitEnergy({ battery, from: 0.1, to: 0.8 }); // 69.7 kWh
 */
export function openCircuitEnergy(options: OpenCircuitEnergyOptions): Quantity<Energy> {
  const { from = 0, to = 1 } = readOptions("openCircuitEnergy", options, { from: STATE, to: STATE }, ["battery"]);
  const battery = readBattery(options.battery);
  return quantity((voltageIntegral(battery.openCircuitVoltage, from, to) * battery.capacity.in("Ah")) / 1000, "kWh");
}

/** Options of {@link dischargeAtPower}. */
export interface DischargeAtPowerOptions {
  /** The battery. */
  readonly battery: PackBattery;
  /** Power at its terminals, constant. Greater than zero. */
  readonly power: Quantity<Power>;
  /** State of charge to begin with, 0 to 1; 1 when left out. */
  readonly from?: number | Quantity<Ratio> | undefined;
  /** State of charge to end at, below `from`; 0 when left out. */
  readonly to?: number | Quantity<Ratio> | undefined;
}

/** What a battery delivers at a constant power. */
export interface Discharge {
  /** Energy at the terminals. */
  readonly energy: Quantity<Energy>;
  /** Energy lost inside on the way. */
  readonly loss: Quantity<Energy>;
  /** Energy at the terminals over what left the cells, 0 to 1. */
  readonly efficiency: number;
  /** How long it lasts. */
  readonly time: Quantity<Time>;
  /** State of charge at the end. */
  readonly endsAt: number;
  /** What ended it: the state of charge asked for, or a limit of voltage or current, which cuts the power off. */
  readonly endedBy: "state of charge" | "cut-off";
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
  /** Cautions about safety, to be printed with the result. */
  readonly cautions: readonly Caution[];
}

/**
 * Energy that a battery delivers at a constant power, until a state of charge or its cut-off.
 *
 * The boundary is the terminals of the battery, direct current. It is stepped by 0.1 % of charge at most, at the middle of
 * each step. The pack's management keeps a reserve of charge that the driver never sees: spread in the `usableWindow` of the
 * battery, when it has one, or give the two ends of the window that is used.
 *
 * @param options - battery, power, and states of charge to begin and to end
 * @throws InputError `INCONSISTENT` when it ends above where it begins, `NOT_VALID_HERE` for a power that it cannot give at the
 *   beginning, `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `WRONG_CHOICE`, `UNKNOWN_OPTION`,
 * `MISSING_OPTION`
 * @example
 * const cells = { cellCapacity: q("140 Ah"), cellResistance: q("0.7 mΩ"), openCircuit: openCircuitCurves.nickelRich };
 * const battery = packBattery({ arrangement: { series: 96, parallel: 2 }, ...cells, interconnectResistance: q("10 mΩ") });
 * const { energy, endsAt, endedBy } = dischargeAtPower({ battery, power: q("100 kW") });
 * energy; // 95.1 kWh
 * endedBy; // "cut-off"
 */
export function dischargeAtPower(options: DischargeAtPowerOptions): Discharge {
  const rules = { power: { unit: "W", above: 0 }, from: STATE, to: STATE } as const;
  const { power, from = 1, to = 0 } = readOptions("dischargeAtPower", options, rules, ["battery"]);
  const battery = readBattery(options.battery);
  if (to >= from) {
    throw new InputError("INCONSISTENT", `a discharge must end below its beginning: got from ${from} to ${to}`, {
      from,
      to,
    });
  }
  if (power > battery.maximumDischargePower(from)) {
    const most = quantity(battery.maximumDischargePower(from) / 1000, "kW").format();
    throw new InputError(
      "NOT_VALID_HERE",
      `the battery gives at most ${most} at a state of charge of ${from}: got ${options.power}`,
      {
        power: options.power,
      },
    );
  }
  const step = (from - to) / STEPS;
  let seconds = 0;
  let lost = 0;
  let endsAt = from;
  let cutOff = false;
  for (let i = 0; i < STEPS && !cutOff; i++) {
    const middle = from - (i + 0.5) * step;
    // The limits fall with the charge, so a step whose end is possible is possible all through.
    cutOff = power > battery.maximumDischargePower(middle - step / 2);
    if (cutOff) continue;
    const duration = step / -battery.stateOfChargeRate(power, middle);
    seconds += duration;
    lost += battery.lossPower(power, middle) * duration;
    endsAt = from - (i + 1) * step;
  }
  const delivered = power * seconds;
  return Object.freeze({
    energy: quantity(delivered, "J").to("kWh"),
    loss: quantity(lost, "J").to("kWh"),
    efficiency: seconds === 0 ? 1 : delivered / (delivered + lost),
    time: quantity(seconds, "s").to("h"),
    endsAt: cutOff ? endsAt : to,
    endedBy: cutOff ? "cut-off" : "state of charge",
    warnings: battery.warnings,
    cautions: battery.cautions,
  } as const);
}
