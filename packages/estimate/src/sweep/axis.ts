import { describeGiven, InputError, readNumber, readOptions } from "@tarewatt/units";
import type { ModelInput } from "../model/model.js";
import { entryOf } from "../model/read-model.js";
import { wholeNumber } from "../propagate/study.js";

/** Evenly spaced values of an input, both ends included. */
export interface AxisRange<X> {
  /** First value. */
  readonly from: X;
  /** Last value. */
  readonly to: X;
  /** How many values, 2 to 1000. */
  readonly points: number;
}

/** The values that an input takes in a sweep: evenly spaced, or one by one in ascending or descending order. */
export type Axis<X> = AxisRange<X> | readonly X[];

/** @internal An input that is swept, with its numbers. */
export interface AxisRead {
  readonly name: string;
  readonly unit: string;
  readonly meaning: string;
  readonly values: readonly number[];
}

/** @internal One to three inputs with their values, in the order given. */
export function readAxes(
  inputs: Readonly<Record<string, ModelInput>>,
  over: unknown,
  model: string,
): readonly AxisRead[] {
  if (typeof over !== "object" || over === null || Array.isArray(over)) {
    throw new InputError(
      "NOT_AN_OBJECT",
      `over must name one to three inputs with their values: got ${describeGiven(over)}`,
      {},
    );
  }
  const axes = Object.entries(over).map(([name, axis]): AxisRead => {
    const rule = entryOf(inputs, name, "input", model);
    const values = Array.isArray(axis)
      ? axis.map((value, i) => readNumber(`over.${name}[${i}]`, value, rule))
      : evenlySpaced(name, axis as AxisRange<unknown>, rule);
    const [a, b] = values;
    const goesOneWay = values.every(
      (value, i) =>
        i === 0 || Math.sign(value - (values[i - 1] as number)) === Math.sign((b as number) - (a as number)),
    );
    if (values.length < 2 || a === b || !goesOneWay) {
      throw new InputError("INCONSISTENT", `over.${name} takes two or more values, all rising or all falling`, {
        name,
      });
    }
    return { name, unit: rule.unit as string, meaning: rule.meaning, values };
  });
  if (axes.length < 1 || axes.length > 3) {
    throw new InputError("OUT_OF_RANGE", `a sweep goes over one to three inputs: got ${axes.length}`, {});
  }
  return axes;
}

function evenlySpaced(name: string, axis: AxisRange<unknown>, rule: ModelInput): readonly number[] {
  readOptions(`over.${name}`, axis, {}, ["from", "to", "points"]);
  const from = readNumber(`over.${name}.from`, axis.from, rule);
  const to = readNumber(`over.${name}.to`, axis.to, rule);
  const points = wholeNumber(`over.${name}.points`, axis.points, 2, 1000);
  return Array.from({ length: points }, (_, i) => (i === points - 1 ? to : from + ((to - from) * i) / (points - 1)));
}
