import {
  type AnyQuantity,
  type Dimension,
  InputError,
  isQuantity,
  printed,
  type Quantity,
  quantity,
  type Step,
} from "@tarewatt/units";
import { readFilled, readText } from "../check/reads.js";
import type { Bridge, BridgeMethod, BridgePart } from "./bridge-result.js";
import { onGrid } from "./grid.js";

/** @internal A bridge as plain numbers. */
export interface BridgeNumbers {
  readonly unit: string;
  readonly from: { readonly label: string; readonly value: number };
  readonly steps: readonly StepNumbers[];
  readonly to: string;
  readonly method?: BridgeMethod;
  readonly warnings?: readonly string[];
}

/** @internal A cause, and the figure with it. */
export interface StepNumbers {
  readonly cause: string;
  readonly explanation?: string | undefined;
  readonly value: number;
  readonly overOrders?: { readonly least: number; readonly most: number };
  readonly working?: (() => readonly Step[]) | undefined;
}

type Value = AnyQuantity | number;

/** @internal */
export function makeBridge({
  unit,
  from,
  steps,
  to,
  method = "in the order stated",
  warnings = [],
}: BridgeNumbers): Bridge {
  const given = [from.value, ...steps.map(({ value }) => value)];
  const figures = onGrid(given).map((value) => inUnitOf(value, unit));
  const parts = steps.map(({ cause, explanation = "", overOrders, working = () => [] }, i): BridgePart<Value> => {
    const [before, after] = [figures[i] as Value, figures[i + 1] as Value];
    const differenceOf = (size: number): Value => less(inUnitOf(size, unit), inUnitOf(0, unit));
    const range = overOrders && {
      overOrders: Object.freeze({ least: differenceOf(overOrders.least), most: differenceOf(overOrders.most) }),
    };
    return Object.freeze({ cause, explanation, before, after, change: less(after, before), ...range, working });
  });
  const [first, last] = [figures[0] as Value, figures.at(-1) as Value];
  const bridge: Bridge = {
    from: Object.freeze({ label: from.label, value: first }),
    parts: Object.freeze(parts),
    to: Object.freeze({ label: to, value: last }),
    change: less(last, first),
    method,
    warnings: Object.freeze([...warnings]),
    inUnit: (other) => {
      const text = readText("unit", other);
      const inIt = (value: number): number => (inUnitOf(value, unit) as Quantity<Dimension>).in<string>(text);
      if (unit === "1")
        throw new InputError("NOT_VALID_HERE", `a ratio has no unit: it cannot be shown in ${text}`, {});
      const converted = steps.map(({ value, overOrders, ...rest }) => ({
        ...{ ...rest, value: inIt(value) },
        ...(overOrders && {
          overOrders: { least: changeIn(overOrders.least, unit, text), most: changeIn(overOrders.most, unit, text) },
        }),
      }));
      return makeBridge({
        unit: text,
        from: { ...from, value: inIt(from.value) },
        steps: converted,
        to,
        method,
        warnings,
      });
    },
    lines: (units = [unit]) => {
      const columns = readFilled("units", units).map((each) =>
        printedBridge(each === unit ? bridge : bridge.inUnit(each as string)),
      );
      const beside = (pick: (column: PrintedBridge) => string | undefined): string => {
        const [text, ...others] = columns.map(pick);
        return others.length === 0 ? (text as string) : `${text} (${others.join(", ")})`;
      };
      return Object.freeze([
        `${from.label}: ${beside((column) => column.from)}`,
        ...parts.map(({ cause }, i) => `${cause}: ${beside(({ changes }) => changes[i])}`),
        `${to}: ${beside((column) => column.to)}`,
      ]);
    },
  };
  return Object.freeze(bridge);
}

/** @internal A number with its unit; a plain one for a ratio. */
export function inUnitOf(value: number, unit: string): Value {
  return unit === "1" ? value : quantity<string>(value, unit);
}

/** A change in another unit: what two temperatures differ by has a unit of its own. */
function changeIn(size: number, unit: string, other: string): number {
  const change = less(inUnitOf(size, unit), inUnitOf(0, unit)) as Quantity<Dimension>;
  return change.in<string>((less(inUnitOf(0, other), inUnitOf(0, other)) as AnyQuantity).unit);
}

function less(a: Value, b: Value): Value {
  return typeof a === "number" ? a - (b as number) : (a as Quantity<Dimension>).minus(b as Quantity<Dimension>);
}

/** Digits of the largest figure. */
const DIGITS = 3;

interface PrintedBridge {
  readonly from: string;
  readonly changes: readonly string[];
  readonly to: string;
  readonly change: string;
}

/** @internal Both ends and the changes with their sign: all with the same decimals, and summing as printed. */
export function printedBridge({ from, parts, to, change }: Bridge): PrintedBridge {
  const figures = [from.value, ...parts.map(({ after }) => after)].map(numberOf);
  const largest = Math.max(...figures.map(Math.abs));
  const decimals = largest === 0 ? 0 : DIGITS - 1 - Math.floor(Math.log10(largest));
  const step = 10 ** -decimals;
  const rounded = figures.map((each) => Math.round(each / step));
  const show = (steps: number, like: Value): string => {
    const value = Number((steps * step).toPrecision(12));
    const unit = isQuantity(like) ? like.unit : "1";
    return printed(quantity<string>(value, unit), { decimals: Math.min(12, Math.max(0, decimals)) });
  };
  const signed = (steps: number, like: Value): string => `${steps > 0 ? "+" : ""}${show(steps, like)}`;
  const [first, last] = [rounded[0] as number, rounded.at(-1) as number];
  return {
    from: show(first, from.value),
    changes: parts.map((part, i) => signed((rounded[i + 1] as number) - (rounded[i] as number), part.change)),
    to: show(last, to.value),
    change: signed(last - first, change),
  };
}

/** @internal The number of a quantity, in its own unit. */
export function numberOf(value: Value): number {
  return isQuantity(value) ? value.value : value;
}
