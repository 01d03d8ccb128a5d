import { describeGiven, InputError, readNumber, readOptions } from "@tarewatt/units";
import { textsOf } from "../check/read-words.js";
import { unusual } from "../check/unusual.js";
import type { Fraction } from "../fraction.js";

/**
 * A battery as a cycle meets it, in plain SI numbers; temperature and age are fixed when the object is made.
 *
 * Any object that has this shape can be driven with.
 */
export interface Battery {
  /** What the model is, in words. */
  readonly name: string;
  /** What a reader should doubt; results carry it on. Nothing when left out. */
  readonly warnings?: readonly string[] | undefined;
  /**
   * Heat in the battery, in W; never negative.
   * @param terminalPower - power at the terminals in W, positive while it discharges
   * @param stateOfCharge - 0 to 1
   */
  lossPower(terminalPower: number, stateOfCharge: number): number;
  /**
   * Change of the state of charge, in 1/s; negative while it discharges.
   * @param terminalPower - power at the terminals in W, positive while it discharges
   * @param stateOfCharge - 0 to 1
   */
  stateOfChargeRate(terminalPower: number, stateOfCharge: number): number;
  /**
   * Largest power at the terminals while it discharges, in W; never negative.
   * @param stateOfCharge - 0 to 1
   */
  maximumDischargePower(stateOfCharge: number): number;
  /**
   * Largest power at the terminals while it is charged, in W; never negative.
   * @param stateOfCharge - 0 to 1
   */
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

/** A battery and how full it is at the start. */
export interface BatteryState {
  /** The battery. */
  readonly model: Battery;
  /** State of charge at the start, 0 to 1. */
  readonly stateOfCharge: Fraction;
}

/** @internal */
export function readBattery(given: BatteryState): { readonly model: Battery; readonly stateOfCharge: number } {
  const { stateOfCharge } = readOptions("battery", given, { stateOfCharge: { unit: "1", atLeast: 0, atMost: 1 } }, [
    "model",
  ]);
  const model = (given.model ?? {}) as Partial<Battery>;
  const { lossPower, stateOfChargeRate, maximumDischargePower, maximumChargePower, warnings } = model;
  const functions = [lossPower, stateOfChargeRate, maximumDischargePower, maximumChargePower];
  const lists = warnings === undefined || Array.isArray(warnings);
  if (functions.some((each) => typeof each !== "function") || !lists || typeof model.name !== "string") {
    throw new InputError(
      "WRONG_CHOICE",
      "battery.model must be a battery: an object with name, lossPower, stateOfChargeRate, maximumDischargePower and maximumChargePower",
      { name: "battery.model" },
    );
  }
  return { model: given.model, stateOfCharge };
}

/** The loss and rate of a battery together, when they are those of the battery. @internal */
export function lossAndRateOf({ lossAndRate, lossPower, stateOfChargeRate }: Battery): LossAndRate | undefined {
  const same = lossAndRate?.lossPower === lossPower && lossAndRate.stateOfChargeRate === stateOfChargeRate;
  return same && typeof lossAndRate.write === "function" ? lossAndRate : undefined;
}

/** A number that the caller's battery gave, checked; infinite limits are limits, too. @internal */
export function batteryNumber(battery: Battery, what: string, value: number, stateOfCharge: number): number {
  if (typeof value === "number" && !Number.isNaN(value)) return value;
  throw new InputError(
    "NOT_A_NUMBER",
    `the battery '${battery.name}' must give a number for its ${what}: got ${describeGiven(value)} at a state of charge of ${stateOfCharge}`,
    { what, stateOfCharge },
  );
}

/** Heat in the caller's battery, in W: one that is negative would be energy from nowhere, rounding apart. @internal */
export function checkedLoss(battery: Battery, given: number, terminalPower: number, stateOfCharge: number): number {
  const loss = batteryNumber(battery, "loss", given, stateOfCharge);
  if (loss >= -1e-9 * (1 + Math.abs(terminalPower))) return loss;
  throw new InputError(
    "NEGATIVE",
    `the battery '${battery.name}' must have no negative loss: got ${loss} W at ${terminalPower} W at its terminals. Heat is positive, charging or not`,
    { loss, terminalPower, stateOfCharge },
  );
}

/**
 * Doubts about a state of charge that does not go with the energy that was drawn.
 *
 * @param joules - what the cells gave
 * @param turnover - energy that went through the drivetrain; a small part of it tells nothing
 * @param fell - by how much the state of charge fell
 * @internal
 */
export function warningsOfCharge({ name }: Battery, joules: number, turnover: number, fell: number): string[] {
  if (!(Math.abs(joules) > 0.01 * turnover)) return [];
  const kilowattHours = joules / 3.6e6;
  if (fell * joules > 0) return unusual({ batteryEnergy: kilowattHours / fell });
  const [gave, moved] = [kilowattHours, -fell].map((value) => Number(value.toPrecision(3)));
  return [
    `the cells of the battery '${name}' gave ${gave} kWh, and its state of charge changed by ${moved}: its stateOfChargeRate does not go with its power`,
  ];
}

/** Heating and cooling in W and J, and what a reader should doubt about them. @internal */
export interface Climate {
  readonly power: number;
  readonly warmUpEnergy: number;
  readonly warnings: readonly string[];
}

/** @internal */
export function readClimate(given: unknown): Climate {
  if (typeof given !== "object" || given === null) {
    throw new InputError("NOT_AN_OBJECT", `climate must be an object with a power: got ${describeGiven(given)}`, {});
  }
  // What a climate model says beside these may come along.
  const { power, warmUpEnergy, warnings } = given as { readonly [key in keyof Climate]?: unknown };
  return {
    power: readNumber("climate.power", power, { unit: "W", atLeast: 0 }),
    warmUpEnergy:
      warmUpEnergy === undefined ? 0 : readNumber("climate.warmUpEnergy", warmUpEnergy, { unit: "J", atLeast: 0 }),
    warnings: textsOf(warnings),
  };
}
