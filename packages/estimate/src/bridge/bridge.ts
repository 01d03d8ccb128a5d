import {
  type Dimension,
  describeGiven,
  InputError,
  isQuantity,
  type Quantity,
  quantity,
  readNumber,
  readOptions,
  type Step,
} from "@tarewatt/units";
import { readFilled, readText } from "../check/reads.js";
import type { Bridge, BridgeEnd } from "./bridge-result.js";
import { makeBridge, type StepNumbers } from "./make-bridge.js";

/** A cause, and the figure with it taken in. */
export interface BridgeStep<T> {
  /** The cause, in words: `"usable energy instead of total"`. */
  readonly cause: string;
  /** The figure with this cause and all before it. */
  readonly value: T;
  /** Why it matters, in a sentence. */
  readonly explanation?: string | undefined;
  /** How the figure came about. */
  readonly working?: (() => readonly Step[]) | undefined;
}

/** Options of {@link bridge}. */
export interface BridgeOptions<T> {
  /** The figure to begin with. */
  readonly from: BridgeEnd<T>;
  /** The figures after each cause, in order. */
  readonly steps: readonly BridgeStep<T>[];
  /** What the last figure is; with a value, what the causes leave open is a part of its own. */
  readonly to: {
    /** What the last figure is, in words. */
    readonly label: string;
    /** Its value, when it is known by itself. */
    readonly value?: T | undefined;
  };
  /** What that part is called; `"what these causes leave open"` when left out. */
  readonly rest?: string | undefined;
}

/**
 * From one figure to another, one cause at a time, in the order stated.
 *
 * The changes sum exactly, in floating point and in any order: figures are moved to a common grid for that, by less than 1e-13 of the largest.
 * All figures are shown in the unit of the first.
 *
 * @param options - the first figure, the figure after each cause, and what the last one is
 * @returns the parts, their sum, and the same in other units
 * @throws InputError `EMPTY` without a step, `WRONG_DIMENSION`, `NOT_A_QUANTITY`, `NOT_A_NUMBER`, `WRONG_CHOICE`, and what `readOptions` throws
 * @example
 * const range = bridge({
 *   from: { label: "all the energy at a steady 80 km/h", value: q("600 km") },
 *   steps: [
 *     { cause: "usable energy instead of total", value: q("558 km") },
 *     { cause: "the cycle instead of a steady speed", value: q("470 km") },
 *   ],
 *   to: { label: "on the cycle" },
 * });
 * range.parts[1]?.change; // -88 km
 * range.lines(["km", "mi"])[1]; // "usable energy instead of total: −42 km (−26 mi)"
 */
export function bridge<D extends Dimension>(options: BridgeOptions<Quantity<D>>): Bridge<Quantity<D>>;
/** The same for ratios. */
export function bridge(options: BridgeOptions<number>): Bridge<number>;
export function bridge(options: BridgeOptions<Quantity<Dimension>> | BridgeOptions<number>): unknown {
  readOptions("bridge", options, {}, ["from", "steps", "to", "rest?"]);
  const { from, steps, to, rest = "what these causes leave open" } = options as BridgeOptions<unknown>;
  readOptions("from of bridge", from, {}, ["label", "value"]);
  readOptions("to of bridge", to, {}, ["label", "value?"]);
  const unit = unitOf(from.value);
  const number = (name: string, value: unknown): number => readNumber(name, value, { unit });
  const read = readFilled("steps", steps).map((each, i): StepNumbers => {
    const step = each as BridgeStep<unknown>;
    readOptions(`step ${i + 1} of bridge`, step, {}, ["cause", "value", "explanation?", "working?"]);
    const { cause, value, explanation, working } = step;
    if (working !== undefined && typeof working !== "function") {
      throw new InputError(
        "WRONG_CHOICE",
        `working of step ${i + 1} must be a function: got ${describeGiven(working)}`,
        {},
      );
    }
    return {
      cause: readText(`cause of step ${i + 1}`, cause),
      value: number(`value of step ${i + 1}`, value),
      ...(explanation === undefined ? {} : { explanation: readText(`explanation of step ${i + 1}`, explanation) }),
      ...(working === undefined ? {} : { working }),
    };
  });
  const end = to.value === undefined ? undefined : number("value of to", to.value);
  const open = end !== undefined && end !== read.at(-1)?.value;
  return makeBridge({
    unit,
    from: { label: readText("label of from", from.label), value: number("value of from", from.value) },
    steps: open ? [...read, { cause: readText("rest", rest), value: end }] : read,
    to: readText("label of to", to.label),
  });
}

/** Unit of the first figure; one whose unit alone does not say what it measures, such as a torque, is refused. */
function unitOf(value: unknown): string {
  if (!isQuantity(value)) return "1";
  const plain = quantity<string>(0, value.unit).dimension as Dimension;
  if (plain.kind === value.dimension.kind) return value.unit;
  throw new InputError(
    "NOT_VALID_HERE",
    `the figures of a bridge must be what their unit says: ${value} is a ${value.dimension.kind}`,
    {},
  );
}
