import { describeGiven, InputError } from "@tarewatt/units";
import { isArray } from "./is-array.js";

/** Longest list read: a curve, not a recording. */
const MOST = 10_000;

/** @internal What every number of a list must be. */
export interface ListRule {
  readonly atLeast: number;
  readonly atMost: number;
  /** Said after the range, such as "in V". */
  readonly unit?: string;
  /** Each number greater than the one before it. */
  readonly rising?: boolean;
}

/** @internal Reads a list of plain numbers of a curve: two or more, finite, in range, and rising where they must. */
export function readNumbers(name: string, given: unknown, rule: ListRule): readonly number[] {
  const list: unknown = ArrayBuffer.isView(given) ? [...(given as Float64Array)] : given;
  if (!isArray(list)) {
    throw new InputError("WRONG_CHOICE", `${name} must be an array of numbers: got ${describeGiven(given)}`, { name });
  }
  if (list.length < 2 || list.length > MOST) {
    throw new InputError("OUT_OF_RANGE", `${name} must have 2 to ${MOST} numbers: got ${list.length}`, { name });
  }
  const unit = rule.unit === undefined ? "" : ` ${rule.unit}`;
  const numbers = Array.from(list, (value: unknown, i): number => {
    if (typeof value !== "number" || !Number.isFinite(value)) {
      throw new InputError("NOT_A_NUMBER", `${name}[${i}] must be a finite number: got ${describeGiven(value)}`, {
        name,
      });
    }
    if (value < rule.atLeast || value > rule.atMost) {
      const range = `${rule.atLeast} to ${rule.atMost}${unit}`;
      throw new InputError("OUT_OF_RANGE", `${name}[${i}] must lie within ${range}: got ${value}`, { name });
    }
    return value;
  });
  if (rule.rising === true) assertRising(name, numbers, false);
  return Object.freeze(numbers);
}

/** @internal Refuses numbers that fall, or, unless they may, stay equal. */
export function assertRising(name: string, numbers: readonly number[], mayStay: boolean): void {
  const at = numbers.findIndex((value, i) => {
    const before = numbers[i - 1];
    return before !== undefined && (mayStay ? value < before : value <= before);
  });
  if (at < 0) return;
  const wanted = mayStay ? "must not fall" : "must rise";
  throw new InputError(
    "INCONSISTENT",
    `${name} ${wanted} from point to point: ${name}[${at - 1}] is ${numbers[at - 1]}, ${name}[${at}] is ${numbers[at]}`,
    { name, at },
  );
}

/** @internal Refuses two lists that do not belong together. */
export function assertPairs(one: string, ones: readonly number[], other: string, others: readonly number[]): void {
  if (ones.length === others.length) return;
  throw new InputError(
    "INCONSISTENT",
    `${one} and ${other} must have one number for each other: got ${ones.length} and ${others.length}`,
    { [one]: ones.length, [other]: others.length },
  );
}
