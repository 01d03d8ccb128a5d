import type { ElectricCharge, Quantity, Temperature, Voltage } from "@tarewatt/units";
import type { Caution } from "../safety/caution.js";
import type { ChargeRateLimit } from "./charge-rate-limit.js";
import type { UsableWindow } from "./usable-window.js";

/**
 * A battery as the simulation of a vehicle needs it: plain numbers in SI units, for loops. Power is that at the terminals,
 * positive discharging; state of charge is 0 (empty cells) to 1 (full). Temperature and age are fixed when it is made.
 */
export interface Battery {
  /** What it is, in words. */
  readonly name: string;
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
  /**
   * Power lost inside, in W, never negative. Above the greatest power the battery cannot follow; what is returned there only
   * keeps a loop finite.
   */
  lossPower(terminalPower: number, stateOfCharge: number): number;
  /** Change of the state of charge in 1/s: negative discharging. */
  stateOfChargeRate(terminalPower: number, stateOfCharge: number): number;
  /** The most it can give, in W, not negative. */
  maximumDischargePower(stateOfCharge: number): number;
  /** The most it can take, in W, as a positive number; 0 when it is full, or too cold or too hot to be charged. */
  maximumChargePower(stateOfCharge: number): number;
  /** Loss and rate together, for loops; they are asked for one by one when it is left out. */
  readonly lossAndRate?: LossAndRate | undefined;
}

/**
 * Loss and rate of a battery together, for loops: both begin with the same current, which is then found once.
 *
 * It stands for the two functions that it names, and is only asked while the battery has these: a copy of a battery with a
 * loss of its own does not keep the loss of the first.
 */
export interface LossAndRate {
  /** The loss that it gives. */
  readonly lossPower: Battery["lossPower"];
  /** The rate that it gives. */
  readonly stateOfChargeRate: Battery["stateOfChargeRate"];
  /**
   * Writes the loss in W into the first place of a list, and the rate of the state of charge in 1/s into the second.
   * @param terminalPower - power at the terminals in W, positive while it discharges
   * @param stateOfCharge - 0 to 1
   * @param into - takes the two numbers
   */
  write(terminalPower: number, stateOfCharge: number, into: Float64Array): void;
}

/** A battery made of equal cells, from an open-circuit voltage and a resistance. Made by {@link packBattery}. */
export interface PackBattery extends Battery {
  /** Tells this battery from other models. */
  readonly form: "voltage behind a resistance";
  /** Capacity that is left. */
  readonly capacity: Quantity<ElectricCharge>;
  /** Temperature of the cells that it was made for. */
  readonly temperature: Quantity<Temperature>;
  /** Resistance over that of the new battery. */
  readonly resistanceGrowth: number;
  /** How fast its cells may be charged at this temperature; absent where nothing but voltage and current limits them. */
  readonly chargeRateLimit?: ChargeRateLimit;
  /** States of charge of the cells that a driver sees as empty and full; absent when neither reserve nor usable fraction is known. */
  readonly usableWindow?: UsableWindow;
  /** Open-circuit voltage of the pack in V. */
  openCircuitVoltage(stateOfCharge: number): number;
  /** Resistance of the pack in Ω, of the pulse length that the cell's resistance was given for. */
  resistance(stateOfCharge: number): number;
  /** Lowest voltage at the terminals. */
  readonly minimumVoltage: Quantity<Voltage>;
  /** Highest voltage at the terminals. */
  readonly maximumVoltage: Quantity<Voltage>;
  /** Cautions about safety, to be printed wherever figures of the battery are. */
  readonly cautions: readonly Caution[];
}
