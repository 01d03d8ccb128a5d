import {
  type Area,
  describeGiven,
  type Energy,
  InputError,
  type Length,
  type Mass,
  type NumbersRead,
  type Power,
  type Quantity,
  readOptions,
} from "@tarewatt/units";
import { type Grade, readProvenance } from "../evidence/provenance.js";
import { recordNumbers } from "./columns.js";

/** A documented vehicle. What is not known is left out. */
export interface VehicleRecord {
  /** How it is called in the report. */
  readonly name: string;
  /** Curb mass: ready to drive, without driver and load. For an EU mass in running order take 75 kg off first. */
  readonly curbMass: Quantity<Mass>;
  /** Mass of its whole pack, housing included. */
  readonly packMass?: Quantity<Mass> | undefined;
  /** Energy of its pack, total. */
  readonly packEnergy?: Quantity<Energy> | undefined;
  /** Energy of its pack, usable. */
  readonly usableEnergy?: Quantity<Energy> | undefined;
  /** Model year. */
  readonly year?: number | undefined;
  /** How many motors drive it. */
  readonly motors?: number | undefined;
  /** Peak power of all motors together. */
  readonly power?: Quantity<Power> | undefined;
  /** Length over all. */
  readonly length?: Quantity<Length> | undefined;
  /** Width of the body, without mirrors. */
  readonly width?: Quantity<Length> | undefined;
  /** Height over all. */
  readonly height?: Quantity<Length> | undefined;
  /** Distance between the axles. */
  readonly wheelbase?: Quantity<Length> | undefined;
  /** Frontal area. */
  readonly frontalArea?: Quantity<Area> | undefined;
  /** Drag coefficient. */
  readonly dragCoefficient?: number | undefined;
  /** Body style, in words. */
  readonly body?: string | undefined;
  /** How pack and body are built, in words. */
  readonly construction?: string | undefined;
  /** What it has that others may not have. */
  readonly equipment?: readonly string[] | undefined;
  /** Where its figures are from. */
  readonly source?: string | undefined;
  /** How far they can be trusted. */
  readonly grade?: Grade | undefined;
  /** When they were said: year, month or day. */
  readonly date?: string | undefined;
}

/** @internal The numbers of a record in their units. */
export type RecordNumbersRead = NumbersRead<typeof recordRules>;

const recordRules = /* @__PURE__ */ (() => ({ ...recordNumbers, ...optionalRules() }))();

/** All numbers but the curb mass may be left out. */
function optionalRules() {
  const { curbMass: _, ...others } = recordNumbers;
  return Object.fromEntries(
    Object.entries(others).map(([name, rule]) => [name, { ...rule, optional: true }]),
  ) as unknown as {
    readonly [K in keyof typeof others]: (typeof others)[K] & { readonly optional: true };
  };
}

/**
 * Checks a documented vehicle, and makes a copy that nobody can change.
 *
 * @param given - what is known of it
 * @returns the record, frozen
 * @throws InputError `UNKNOWN_OPTION`, `MISSING_OPTION`, `OUT_OF_RANGE`, `WRONG_CHOICE`, and `INCONSISTENT` for a pack that is heavier than
 *   its vehicle or has more usable than total energy
 * @example
 * const car = vehicleRecord({ name: "crossover (invented)", curbMass: q("2310 kg"), packMass: q("545 kg"), motors: 2 });
 * car.curbMass; // 2310 kg
 */
export function vehicleRecord(given: VehicleRecord): VehicleRecord {
  recordNumbersOf(given);
  const entries = Object.entries(given).filter(([, value]) => value !== undefined);
  return Object.freeze(
    Object.fromEntries(entries.map(([key, value]) => [key, Array.isArray(value) ? Object.freeze([...value]) : value])),
  ) as unknown as VehicleRecord;
}

/** @internal Reads and checks a record. */
export function recordNumbersOf(given: VehicleRecord): RecordNumbersRead {
  const texts = ["name", "body?", "construction?", "source?", "grade?", "date?", "equipment?"];
  const numbers = readOptions("a vehicle record", given, recordRules, texts);
  const wrong = (what: string, got: unknown): never => {
    throw new InputError("WRONG_CHOICE", `${what}: got ${describeGiven(got)}`, {});
  };
  for (const part of ["name", "body", "construction", "source"] as const) {
    const text: unknown = given[part];
    if (text !== undefined && (typeof text !== "string" || text.trim() === "")) {
      wrong(`the ${part} of a vehicle record must be a text`, text);
    }
  }
  const { name, equipment } = given;
  readProvenance(`the record of ${name}`, { grade: given.grade, source: given.source, date: given.date });
  if (equipment !== undefined) {
    if (!Array.isArray(equipment)) wrong(`the equipment of ${name} must be a list of texts`, equipment);
    for (const each of equipment as readonly unknown[]) {
      if (typeof each !== "string" || each.trim() === "" || each.includes("|")) {
        wrong(`the equipment of ${name} must be a list of texts without vertical bars`, each);
      }
    }
  }
  for (const part of ["motors", "year"] as const) {
    const number = numbers[part];
    if (number !== undefined && !Number.isInteger(number)) {
      throw new InputError("OUT_OF_RANGE", `${part} of ${name} must be a whole number: got ${number}`, { part });
    }
  }
  const inOrder = (small: number | undefined, large: number | undefined, words: string): void => {
    if (small !== undefined && large !== undefined && small > large) {
      throw new InputError("INCONSISTENT", `${name}: ${words}: got ${small} and ${large}`, { small, large });
    }
  };
  inOrder(numbers.packMass, numbers.curbMass, "the pack must be lighter than the vehicle, in kg");
  inOrder(numbers.usableEnergy, numbers.packEnergy, "the usable energy must not exceed the total, in kWh");
  inOrder(numbers.wheelbase, numbers.length, "the wheelbase must not exceed the length, in m");
  return numbers;
}
