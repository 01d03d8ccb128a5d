import { withUnit } from "../escape/with-unit.js";
import { commonPlaces, formatPlaces, formatSpread } from "../table/number.js";
import type { ValueAxis } from "./figure.js";
import { alsoIn } from "./measure.js";

const DIGITS = 3;

/** @internal How the numbers of a figure print: all to the same place, with no more digits than they were given with. */
export interface Printer {
  /** A number without its unit. */
  readonly bare: (value: number) => string;
  /** A value with its unit, and in the second unit in parentheses where the axis has one. */
  readonly value: (value: number) => string;
  /** A change with its sign; a change is no point, so that the zero of the second unit does not matter. */
  readonly change: (change: number) => string;
}

/** @internal */
export function printerOf(values: readonly number[], axis: ValueAxis): Printer {
  const places = commonPlaces(values, DIGITS);
  const convert = alsoIn(axis);
  const bare = (value: number): string => formatPlaces(value, places);
  const inBoth = (print: (value: number, places: number) => string, first: number, second: () => number): string => {
    const printed = withUnit(print(first, places), axis.unit);
    if (convert === undefined) return printed;
    // The second number is as coarse as the first.
    const coarser = Math.round(Math.log10(Math.abs(convert(1) - convert(0))));
    return `${printed} (${withUnit(print(second(), Math.max(0, places - coarser)), axis.also ?? "")})`;
  };
  const signed = (value: number, to: number): string => `${value > 0 ? "+" : ""}${formatPlaces(value, to)}`;
  return {
    bare,
    value: (value) => inBoth(formatPlaces, value, () => convert?.(value) ?? 0),
    change: (change) => inBoth(signed, change, () => (convert?.(change) ?? 0) - (convert?.(0) ?? 0)),
  };
}

/** @internal A value with its interval, to the digits that the interval justifies. */
export function printInterval(
  { value, low, high }: { readonly value?: number; readonly low?: number; readonly high?: number },
  axis: ValueAxis,
  printer: Printer,
): string {
  if (low === undefined || high === undefined) return value === undefined ? "" : printer.value(value);
  const spread = formatSpread({ p10: low, p50: value ?? low, p90: high }, DIGITS);
  const shown = value === undefined ? spread.replace(/^.*? \((.*)\)$/, "$1") : spread;
  return withUnit(shown, axis.unit);
}
