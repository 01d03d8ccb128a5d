import { InputError, type NumberRule, readNumber, readOptions } from "@tarewatt/units";

/** One value, or its low, likely and high end. */
export type Spread<Value> =
  | Value
  | {
      /** Low end. */
      readonly low: Value;
      /** Most likely value. */
      readonly likely: Value;
      /** High end. */
      readonly high: Value;
    };

/** A spread as plain numbers. @internal */
export interface SpreadNumbers {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** Reads a spread in the unit of a rule; what stands for it when it is left out. @internal */
export function readSpread(name: string, given: unknown, rule: NumberRule, prior?: SpreadNumbers): SpreadNumbers {
  if (given === undefined && prior !== undefined) return prior;
  if (!isSpread(given)) {
    const value = readNumber(name, given, rule);
    return { low: value, likely: value, high: value };
  }
  const read = readOptions(name, given, { low: rule, likely: rule, high: rule });
  const { low, likely, high } = read;
  if (low === undefined || likely === undefined || high === undefined || !(low <= likely && likely <= high)) {
    throw new InputError(
      "INCONSISTENT",
      `${name} must rise from low over likely to high: got ${low}, ${likely} and ${high} ${rule.unit}`,
      {
        name,
      },
    );
  }
  return { low, likely, high };
}

/** Something with ends; a quantity has none, and neither has a list. */
function isSpread(given: unknown): given is object {
  return typeof given === "object" && given !== null && ("low" in given || "likely" in given || "high" in given);
}

type Values<Spreads> = { readonly [K in keyof Spreads]: number };

/** Combinations of the ends of several spreads. @internal */
export const corners = {
  /** All at their likely values. */
  likely: <Spreads extends Readonly<Record<string, SpreadNumbers>>>(spreads: Spreads): Values<Spreads> =>
    Object.fromEntries(Object.entries(spreads).map(([name, { likely }]) => [name, likely])) as Values<Spreads>,
  /** Every combination of low and high ends. */
  all: <Spreads extends Readonly<Record<string, SpreadNumbers>>>(spreads: Spreads): Values<Spreads>[] =>
    Object.entries(spreads).reduce<Record<string, number>[]>(
      (found, [name, { low, high }]) => found.flatMap((each) => [low, high].map((end) => ({ ...each, [name]: end }))),
      [{}],
    ) as Values<Spreads>[],
};
