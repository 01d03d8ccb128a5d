import { describeGiven, InputError, type NumberRule, readNumber } from "@tarewatt/units";
import { isArray } from "./is-array.js";

/** Most points of a curve that is read: more are a recording, not a curve. */
const MOST_POINTS = 10_000;

/** @internal A list of numbers (also of a typed array), or of quantities, in the unit of the rule. The copy is frozen. */
export function readPoints(name: string, list: unknown, rule: NumberRule): readonly number[] {
  const given = ArrayBuffer.isView(list) && !(list instanceof DataView) ? Array.from(list as Float64Array) : list;
  if (!isArray(given)) {
    throw new InputError("WRONG_CHOICE", `${name} must be an array: got ${describeGiven(given)}`, { name });
  }
  if (given.length < 2) {
    throw new InputError("EMPTY", `${name} must have two points at least: got ${given.length}`, { name });
  }
  if (given.length > MOST_POINTS) {
    throw new InputError("TOO_LONG", `${name} has at most ${MOST_POINTS} points: got ${given.length}`, { name });
  }
  return Object.freeze(Array.from(given, (point, index) => readNumber(`${name}[${index}]`, point, rule)));
}

/** @internal Points that rise strictly. */
export function readRising(name: string, given: unknown, rule: NumberRule): readonly number[] {
  const points = readPoints(name, given, rule);
  neverTurns(name, points, "must rise from point to point", (before, after) => after <= before);
  return points;
}

/** @internal Refuses points that turn: `must` is what they have to do, in words. */
export function neverTurns(
  name: string,
  points: readonly number[],
  must: string,
  turns: (before: number, after: number) => boolean,
): void {
  const index = points.findIndex((point, i) => i > 0 && turns(points[i - 1] as number, point));
  if (index === -1) return;
  throw new InputError("INCONSISTENT", `${name} ${must}: ${points[index]} follows ${points[index - 1]}`, {
    name,
    index,
  });
}

/** @internal States of charge of a curve that must reach from 0 to 1. */
export function readStates(name: string, given: unknown): readonly number[] {
  const states = readRising(name, given, { unit: "1", atLeast: 0, atMost: 1 });
  if (states[0] === 0 && states.at(-1) === 1) return states;
  throw new InputError("INCONSISTENT", `${name} must reach from 0 to 1: got ${states[0]} to ${states.at(-1)}`, {
    name,
  });
}

/** @internal As many points here as there. */
export function sameLength(
  name: string,
  points: readonly number[],
  otherName: string,
  others: readonly number[],
): void {
  if (points.length === others.length) return;
  throw new InputError(
    "INCONSISTENT",
    `${name} has ${points.length} points, ${otherName} ${others.length}: give a pair each`,
    {
      name,
      otherName,
    },
  );
}
