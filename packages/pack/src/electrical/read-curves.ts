import { InputError, type NumberRule } from "@tarewatt/units";
import { readPart } from "../check/read-part.js";
import { readPoints, readRising, sameLength } from "../check/read-points.js";
import type { OpenCircuitCurve, ResistanceAgainstTemperature, ResistanceCurve } from "../chemistry/curve.js";

const state = { unit: "1", atLeast: 0, atMost: 1 } as const satisfies NumberRule;
const ratio = { unit: "1", above: 0, atMost: 1e4 } as const satisfies NumberRule;

/** @internal States of charge of a curve, from 0 to 1. */
export function readStates(name: string, given: unknown): readonly number[] {
  const states = readRising(name, given, state);
  if (states[0] === 0 && states.at(-1) === 1) return states;
  throw new InputError("INCONSISTENT", `${name} must reach from 0 to 1: got ${states[0]} to ${states.at(-1)}`, {
    name,
  });
}

/** @internal A checked curve, and its ends in V. */
export interface OpenCircuitRead {
  readonly name: string;
  readonly stateOfCharge: readonly number[];
  readonly voltage: readonly number[];
  readonly lowest: number;
  readonly highest: number;
}

/** @internal */
export function readOpenCircuit(given: OpenCircuitCurve): OpenCircuitRead {
  const { name, stateOfCharge, voltage } = readPart("openCircuit", given);
  const states = readStates("openCircuit.stateOfCharge", stateOfCharge);
  const volts = readPoints("openCircuit.voltage", voltage, { unit: "1", above: 0, atMost: 10 });
  sameLength("openCircuit.voltage", volts, "openCircuit.stateOfCharge", states);
  const falls = volts.findIndex((each, index) => index > 0 && each < (volts[index - 1] ?? each));
  if (falls !== -1) {
    throw new InputError(
      "INCONSISTENT",
      `openCircuit.voltage must not fall with charge: ${volts[falls]} V follows ${volts[falls - 1]} V`,
      { name: "openCircuit.voltage", index: falls },
    );
  }
  return {
    name: typeof name === "string" ? name : "a cell",
    stateOfCharge: states,
    voltage: volts,
    lowest: volts[0] as number,
    highest: volts.at(-1) as number,
  };
}

/** @internal */
export function readResistance(given: ResistanceCurve): {
  stateOfCharge: readonly number[];
  factor: readonly number[];
} {
  const { stateOfCharge, factor } = readPart("resistanceAgainstCharge", given);
  const states = readStates("resistanceAgainstCharge.stateOfCharge", stateOfCharge);
  const factors = readPoints("resistanceAgainstCharge.factor", factor, ratio);
  sameLength("resistanceAgainstCharge.factor", factors, "resistanceAgainstCharge.stateOfCharge", states);
  return { stateOfCharge: states, factor: factors };
}

/** @internal */
export function readAgainstTemperature(given: ResistanceAgainstTemperature): {
  temperature: readonly number[];
  factor: readonly number[];
} {
  const { temperature, factor } = readPart("resistanceAgainstTemperature", given);
  const at = readRising("resistanceAgainstTemperature.temperature", temperature, {
    unit: "1",
    atLeast: -100,
    atMost: 150,
  });
  const factors = readPoints("resistanceAgainstTemperature.factor", factor, ratio);
  sameLength("resistanceAgainstTemperature.factor", factors, "resistanceAgainstTemperature.temperature", at);
  return { temperature: at, factor: factors };
}
