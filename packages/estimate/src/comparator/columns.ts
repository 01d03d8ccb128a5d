import type { NumberRule } from "@tarewatt/units";

/** A number that a vehicle record can hold. */
export interface RecordNumber extends NumberRule {
  /** How its column is headed. */
  readonly head: string;
  /** Other heads that mean the same. */
  readonly alsoHead: readonly string[];
}

/**
 * The numbers of a vehicle record: unit, limits against slips of the pen (2.48 kg for 2480 kg), and heads of their columns.
 * @internal
 */
export const recordNumbers = {
  year: { unit: "1", atLeast: 1990, atMost: 2100, head: "year", alsoHead: ["model year"] },
  curbMass: { unit: "kg", atLeast: 200, atMost: 60_000, head: "curb mass", alsoHead: ["kerb mass", "curb weight"] },
  packMass: { unit: "kg", atLeast: 0, atMost: 20_000, head: "pack mass", alsoHead: ["battery mass", "pack weight"] },
  packEnergy: {
    unit: "kWh",
    above: 0,
    atMost: 5000,
    head: "pack energy, total",
    alsoHead: ["pack energy", "total energy"],
  },
  usableEnergy: { unit: "kWh", above: 0, atMost: 5000, head: "pack energy, usable", alsoHead: ["usable energy"] },
  motors: { unit: "1", atLeast: 1, atMost: 8, head: "motors", alsoHead: ["number of motors", "motor count"] },
  power: { unit: "kW", above: 0, atMost: 5000, head: "power", alsoHead: ["peak power"] },
  length: { unit: "m", atLeast: 1, atMost: 30, head: "length", alsoHead: [] },
  width: { unit: "m", atLeast: 0.5, atMost: 5, head: "width", alsoHead: [] },
  height: { unit: "m", atLeast: 0.5, atMost: 6, head: "height", alsoHead: [] },
  wheelbase: { unit: "m", atLeast: 1, atMost: 15, head: "wheelbase", alsoHead: [] },
  frontalArea: { unit: "m²", atLeast: 0.3, atMost: 20, head: "frontal area", alsoHead: [] },
  dragCoefficient: { unit: "1", atLeast: 0.05, atMost: 2, head: "drag coefficient", alsoHead: [] },
} as const satisfies Readonly<Record<string, RecordNumber>>;

/** @internal The texts of a vehicle record, with the heads of their columns. */
export const recordTexts = {
  name: { head: "name", alsoHead: ["vehicle", "model"] },
  body: { head: "body", alsoHead: ["body style"] },
  construction: { head: "construction", alsoHead: ["pack construction"] },
  source: { head: "source", alsoHead: ["sources"] },
  grade: { head: "grade", alsoHead: [] },
  date: { head: "date", alsoHead: [] },
} as const satisfies Readonly<Record<string, { readonly head: string; readonly alsoHead: readonly string[] }>>;

/** @internal */
export type RecordNumberName = keyof typeof recordNumbers;
/** @internal */
export type RecordTextName = keyof typeof recordTexts;
