import { InputError, type NumberRule } from "@tarewatt/units";
import { interpolate } from "../check/interpolate.js";
import { neverTurns, readPoints, readRising, sameLength } from "../check/read-points.js";

const CHARGE = { unit: "1", atLeast: 0, atMost: 1 } as const satisfies NumberRule;
/** A cell of any chemistry in use stays below this, in V: more is a slip of unit. */
const VOLTAGE = { unit: "1", above: 0, atMost: 6 } as const satisfies NumberRule;
/** No published cell has changed its resistance by more than this, in either direction. */
const FACTOR = { unit: "1", atLeast: 0.001, atMost: 1000 } as const satisfies NumberRule;
/** Temperatures that a cell can meet, in °C. */
const TEMPERATURE = { unit: "1", atLeast: -60, atMost: 120 } as const satisfies NumberRule;

/** A curve that spans less of the charge cannot stand for a cell from empty to full. */
const FROM_EMPTY_TO_FULL = { empty: 0.05, full: 0.95 } as const;

/** Parts of something that may be a curve. `within` names it in messages: empty, or such as "openCircuit.". */
type Given<Part extends string> = Readonly<Partial<Record<Part, unknown>>>;

/** @internal States of charge and voltages in V of an open-circuit curve. Beyond its ends a reader holds their values. */
export function openCircuitPoints(within: string, given: Given<"stateOfCharge" | "voltage">) {
  const stateOfCharge = readRising(`${within}stateOfCharge`, given.stateOfCharge, CHARGE);
  const voltage = readPoints(`${within}voltage`, given.voltage, VOLTAGE);
  sameLength(`${within}voltage`, voltage, `${within}stateOfCharge`, stateOfCharge);
  neverTurns(`${within}voltage`, voltage, "must not fall with charge", (before, after) => after < before);
  const [first, last] = [stateOfCharge[0] as number, stateOfCharge.at(-1) as number];
  if (first > FROM_EMPTY_TO_FULL.empty || last < FROM_EMPTY_TO_FULL.full) {
    throw new InputError(
      "NOT_VALID_HERE",
      `${within}stateOfCharge must reach from empty to full, 0.05 or less to 0.95 or more: got ${first} to ${last}`,
      { first, last },
    );
  }
  return { stateOfCharge, voltage };
}

/** @internal States of charge and factors of a resistance, which are 1 at half charge. */
export function chargeFactors(within: string, given: Given<"stateOfCharge" | "factor">) {
  const stateOfCharge = readRising(`${within}stateOfCharge`, given.stateOfCharge, CHARGE);
  const factor = readPoints(`${within}factor`, given.factor, FACTOR);
  sameLength(`${within}factor`, factor, `${within}stateOfCharge`, stateOfCharge);
  assertOneAt(within, 0.5, "a state of charge of 0.5", stateOfCharge, factor);
  return { stateOfCharge, factor };
}

/** @internal Temperatures in °C and factors of a resistance, which are 1 at 25 °C. */
export function temperatureFactors(within: string, given: Given<"temperature" | "factor">) {
  const temperature = readRising(`${within}temperature`, given.temperature, TEMPERATURE);
  const factor = readPoints(`${within}factor`, given.factor, FACTOR);
  sameLength(`${within}factor`, factor, `${within}temperature`, temperature);
  assertOneAt(within, 25, "25 °C", temperature, factor);
  return { temperature, factor };
}

/** Factors that refer to another point than they should would scale every result. */
function assertOneAt(
  within: string,
  x: number,
  place: string,
  xs: readonly number[],
  factors: readonly number[],
): void {
  const reached = x >= (xs[0] as number) && x <= (xs.at(-1) as number);
  const value = interpolate(xs, factors, x);
  if (reached && Math.abs(value - 1) <= 0.02) return;
  const got = reached ? `it is ${Number(value.toPrecision(3))}` : "the table does not reach there";
  throw new InputError("NOT_VALID_HERE", `${within}factor must be 1 at ${place}, what it refers to: ${got}`, { place });
}
