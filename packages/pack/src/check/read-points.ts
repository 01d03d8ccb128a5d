import { describeGiven, InputError, type NumberRule, readNumber } from "@tarewatt/units";

/** Most points of a curve that is read: more are a recording, not a curve. */
const MOST_POINTS = 10_000;

/** @internal A list of numbers, or of quantities, in the unit of the rule. The copy is frozen. */
export function readPoints(name: string, given: unknown, rule: NumberRule): readonly number[] {
  if (!Array.isArray(given)) {
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
  const at = points.findIndex((point, index) => index > 0 && point <= (points[index - 1] ?? point));
  if (at === -1) return points;
  throw new InputError(
    "INCONSISTENT",
    `${name} must rise from point to point: ${points[at]} follows ${points[at - 1]}`,
    {
      name,
      index: at,
    },
  );
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
