import { describeGiven, InputError, type NumberRule, type NumbersRead, readOptions } from "@tarewatt/units";
import { unusual } from "../check/unusual.js";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { assertDrivetrain } from "../drivetrain/read-drivetrain.js";
import { warningsOfCompany } from "../drivetrain/typical-drivetrain.js";
import type { Fraction } from "../fraction.js";
import { type Loss, losses } from "../resistance/loss.js";
import type { RoadLoad } from "../resistance/road-load.js";
import { readGrade, type SplitNumbers, splitNumbers } from "../resistance/road-load-numbers.js";
import { type Battery, type BatteryState, type Climate, readBattery, readClimate } from "./battery.js";

/** What takes part in a calculation, with the losses that each part holds. @internal */
export interface Scope {
  readonly load: RoadLoad;
  /** The load in SI units, on the grade. */
  readonly numbers: SplitNumbers;
  readonly drivetrain: Drivetrain;
  /** In W. */
  readonly accessories: number;
  /** Rise over run. */
  readonly grade: number;
  readonly chargingEfficiency: number | undefined;
  /** Undefined when none was given. */
  readonly climate: Climate | undefined;
  readonly battery: Battery | undefined;
  /** At the start; 1 without a battery. */
  readonly stateOfCharge: number;
  readonly batteryBoundary: BatteryBoundary;
}

/**
 * Where the energy called "at battery" is counted, which follows from what the drivetrain contains:
 *
 * - `"terminals"`: at the battery's direct current terminals. The drivetrain does not contain the battery's own loss, and
 *   nothing else counts it: what the cells give is more by that loss, a few per cent as a rule (common practice, no source);
 * - `"cells"`: at the cells, when the drivetrain contains `"battery"` or a battery was given;
 * - `"wall"`: at the wall, when the drivetrain contains `"charging"`.
 */
export type BatteryBoundary = "terminals" | "cells" | "wall";

/** What cycles and steady speeds are both asked with. */
interface ScopeOptions {
  readonly load: RoadLoad;
  readonly drivetrain: Drivetrain;
  readonly grade?: Fraction | undefined;
  readonly climate?: unknown;
  readonly battery?: BatteryState | undefined;
}

/** Reads what cycles and steady speeds are both asked with, and what one of them takes beside it. @internal */
export function readScope<const Rules extends Readonly<Record<string, NumberRule>>>(
  where: string,
  options: ScopeOptions,
  rules: Rules,
  others: readonly string[] = [],
): { readonly scope: Scope; readonly read: NumbersRead<Rules> } {
  const names = ["load", "drivetrain", "grade?", "climate?", ...others];
  const read = readOptions(where, options, { ...shared, ...rules }, names) as NumbersRead<typeof shared & Rules>;
  const { load, drivetrain } = options;
  const { accessories, chargingEfficiency } = read as NumbersRead<typeof shared>;
  assertDrivetrain(drivetrain);
  const grade = readGrade(options.grade);
  const numbers = splitNumbers(load, grade);
  const { model: battery, stateOfCharge } =
    options.battery === undefined ? { model: undefined, stateOfCharge: 1 } : readBattery(options.battery);
  const scope: Scope = {
    ...{ load, numbers, drivetrain, accessories, grade, chargingEfficiency, battery, stateOfCharge },
    climate: options.climate === undefined ? undefined : readClimate(options.climate),
    batteryBoundary: batteryBoundaryOf(drivetrain, battery),
  };
  assertNotCountedTwice(scope);
  return { scope, read };
}

const shared = {
  accessories: { unit: "W", atLeast: 0 },
  chargingEfficiency: { unit: "1", above: 0, atMost: 1, optional: true },
} as const satisfies Readonly<Record<string, NumberRule>>;

/** Refuses a loss that two parts hold. */
function assertNotCountedTwice({ load, drivetrain, accessories, chargingEfficiency, battery }: Scope): void {
  const contains = (loss: Loss): boolean => drivetrain.contains.includes(loss);
  for (const loss of load.holds) {
    if (contains(loss)) {
      refuse(loss, "the road load and the drivetrain", "take it out of one of them (load.holds, drivetrain.contains)");
    }
  }
  if (contains("accessories") && accessories > 0) {
    refuse("accessories", "the drivetrain and the accessory power", 'give accessories: q("0 W")');
  }
  if (contains("battery") && battery !== undefined) {
    refuse("battery", "the drivetrain and the battery", "leave 'battery' out of the drivetrain, or give no battery");
  }
  if (contains("charging") && battery !== undefined) {
    refuse("charging", "the drivetrain, whose energy is one at the wall, and the battery", "give no battery");
  }
  if (contains("charging") && chargingEfficiency !== undefined) {
    refuse("charging", "the drivetrain and the charging efficiency", "leave out chargingEfficiency");
  }
}

/** Losses that no part holds, for a warning. The battery's own and that of charging are a matter of the boundary. */
function lossesNotCounted({ load, drivetrain, accessories }: Scope): Loss[] {
  return losses.filter(
    (loss) =>
      loss !== "battery" &&
      loss !== "charging" &&
      !load.holds.includes(loss) &&
      !drivetrain.contains.includes(loss) &&
      !(loss === "accessories" && accessories > 0),
  );
}

/**
 * A warning, not an error: a charging efficiency that ends at the cells is right here, and nothing in the number tells.
 * About 0.93 for the charger alone: 7 % AC/DC loss measured on 26 cars at 11 kW by a touring club, 2025.
 */
const BATTERY_TWICE =
  "the battery's loss is counted, by the drivetrain or a battery model, and a charging efficiency from the wall to what the battery gives holds " +
  "it, too: give one of the charger alone (about 0.93), or leave the battery's loss out";

/**
 * What a reader of a result should doubt: what its parts say themselves, losses that nobody counts or two parts may hold, a
 * battery that gains.
 * @param atBattery - energy or power at the battery, negative when it gains
 * @param driven - what was driven, in words such as "on UDDS"
 * @param maximumSpeed - largest speed that was driven, in m/s
 * @internal
 */
export function warningsOf(scope: Scope, atBattery: number, driven: string, maximumSpeed: number): readonly string[] {
  const { load, drivetrain, chargingEfficiency, battery, numbers, climate, accessories } = scope;
  const missing = lossesNotCounted(scope);
  return Object.freeze([
    ...load.warnings,
    ...(drivetrain.warnings ?? []),
    ...(battery?.warnings ?? []),
    ...(climate?.warnings ?? []),
    ...unusual({ accessories, chargingEfficiency, drivenSpeed: maximumSpeed }),
    ...(resistsEverywhere(numbers, maximumSpeed) ? [] : [PUSHES]),
    ...(missing.length === 0 ? [] : [notCounted(missing)]),
    ...warningsOfCompany(drivetrain, accessories, chargingEfficiency),
    ...(chargingEfficiency !== undefined && scope.batteryBoundary === "cells" ? [BATTERY_TWICE] : []),
    ...(atBattery >= 0
      ? []
      : [`the battery gains energy ${driven}: at the wall this stands for what the next charge saves`]),
  ]);
}

/** By how much: common practice, no source. The motor alone loses about a tenth, bearings, spin or inverter a few per cent. */
function notCounted(missing: readonly Loss[]): string {
  const size = missing.includes("motor") ? "a tenth or more" : "a few per cent";
  const spin = missing.includes("driveline spin") ? ", give spin: 'here' to a lossDrivetrain" : "";
  return (
    `nothing here counts these losses: ${missing.join(", ")}. Consumption comes out too low for it, by ${size} (common practice, no source): ` +
    `name them in the drivetrain's contains when its figures hold them${spin}, or drive a road load that does (load.holds)`
  );
}

const PUSHES =
  "the road load is negative at some speed that is driven: still air on a level road does not push, so check its coefficients";

/** Whether A + B·v + C·v² is nowhere negative up to a speed. */
function resistsEverywhere({ constant, linear, quadratic }: SplitNumbers, maximumSpeed: number): boolean {
  const at = (v: number): number => constant + v * (linear + v * quadratic);
  const lowest = -linear / (2 * quadratic);
  const inside = lowest > 0 && lowest < maximumSpeed;
  return at(0) >= 0 && at(maximumSpeed) >= 0 && (!inside || at(lowest) >= 0);
}

/** @internal */
export function batteryBoundaryOf({ contains }: Drivetrain, battery: Battery | undefined): BatteryBoundary {
  if (contains.includes("charging")) return "wall";
  return contains.includes("battery") || battery !== undefined ? "cells" : "terminals";
}

/** A power that the caller's model gave, checked. @internal */
export function finitePower(drivetrain: Drivetrain, power: number, wheelPower: number, speed: number): number {
  if (Number.isFinite(power)) return power;
  throw new InputError(
    "NOT_A_NUMBER",
    `the drivetrain '${drivetrain.name}' must give finite powers: got ${describeGiven(power)} for ${wheelPower} W at the wheels and ${speed} m/s`,
    { power, wheelPower, speed },
  );
}

function refuse(loss: Loss, holders: string, mend: string): never {
  throw new InputError("COUNTED_TWICE", `'${loss}' is counted twice, by ${holders}: ${mend}`, { loss });
}
