import type { NumberRule, Quantity, UnitDimension, Working } from "@tarewatt/units";
import type { Evidence } from "../evidence/evidence.js";
import { readModel } from "./read-model.js";

/** One named input of a model: its unit, its range and what it is. */
export interface ModelInput extends NumberRule {
  /** What it is, in words. */
  readonly meaning: string;
  /**
   * Its place in the Sobol sequence, 1 to 20, when draws are to be spread evenly over several inputs together. Give the inputs of a
   * model places of their own, the lowest to those that matter most, and keep them: an input with its place is drawn alike
   * whatever the others are. Without a place an input is spread evenly by itself.
   */
  readonly place?: number | undefined;
}

/** One named output of a model: its unit and what it is. */
export interface ModelOutput {
  /** Unit of the number that the model returns; `"1"` for a ratio. */
  readonly unit: string;
  /** What it is, in words: boundary, basis and procedure included. */
  readonly meaning: string;
}

/**
 * A pure function from named numbers to named numbers, ours or yours, with the units said once. Everything generic works on
 * it: `propagate`, `solveFor`, `rankUnknowns`.
 *
 * @typeParam Inputs - inputs by name
 * @typeParam Outputs - outputs by name
 */
export interface Model<
  Inputs extends Readonly<Record<string, ModelInput>>,
  Outputs extends Readonly<Record<string, ModelOutput>>,
> {
  /** How the model is called in messages. */
  readonly name: string;
  /** What goes in. */
  readonly inputs: Inputs;
  /** What comes out. */
  readonly outputs: Outputs;
  /**
   * The calculation, on plain numbers in the units stated.
   * @param inputs - one number for each input
   * @param working - where to record steps, when somebody wants to see them
   * @returns one number for each output
   */
  readonly evaluate: (inputs: ModelNumbers<Inputs>, working?: Working) => ModelNumbers<Outputs>;
}

/** One plain number for each name. */
export type ModelNumbers<Names> = { readonly [K in keyof Names]: number };

/** A quantity of the dimension that a unit measures; a number for a ratio. */
export type ValueIn<Unit extends string> = Unit extends "1" ? number : Quantity<UnitDimension<Unit>>;

/** Evidence for each input of a model. */
export type EvidenceFor<Inputs extends Readonly<Record<string, ModelInput>>> = {
  readonly [K in keyof Inputs]: Evidence<ValueIn<Inputs[K]["unit"]>>;
};

/**
 * Declares a model of your own; it only helps the compiler to see the units.
 *
 * @param definition - name, inputs, outputs and calculation
 * @throws InputError `WRONG_CHOICE` when a part is missing
 * @example
 * const cubeMass = model({
 *   name: "mass of a cube",
 *   inputs: { edge: { unit: "m", meaning: "edge", above: 0 }, density: { unit: "kg/m³", meaning: "density", above: 0 } },
 *   outputs: { mass: { unit: "kg", meaning: "mass" } },
 *   evaluate: ({ edge, density }) => ({ mass: density * edge ** 3 }),
 * });
 * cubeMass.evaluate({ edge: 2, density: 1000 }).mass; // 8000
 */
export function model<
  const Inputs extends Readonly<Record<string, ModelInput>>,
  const Outputs extends Readonly<Record<string, ModelOutput>>,
>(definition: Model<Inputs, Outputs>): Model<Inputs, Outputs> {
  const { name, inputs, outputs, evaluate } = readModel(definition);
  return Object.freeze({
    name,
    inputs: Object.freeze({ ...inputs }),
    outputs: Object.freeze({ ...outputs }),
    evaluate,
  });
}
