import { formatNumber } from "@tarewatt/units";
import { plainLine } from "../escape/plain.js";
import { withUnit } from "../escape/with-unit.js";
import type { ReadCell } from "./cell.js";
import { formatSpread } from "./number.js";

/** Significant digits where a column does not say. */
const USUAL_DIGITS = 3;

/** What stands where there is no value. */
const NOTHING = "–";

/** @internal A cell as one line of text, with its unit unless the head of the column says it. */
export function printCell(cell: ReadCell, digits: number | undefined, { unitInHead = false } = {}): string {
  if (cell.kind === "nothing") return NOTHING;
  if (cell.kind === "text") return plainLine(cell.text);
  const printed = cell.kind === "spread" ? formatSpread(cell, digits ?? USUAL_DIGITS) : printNumber(cell, digits);
  return unitInHead ? printed : withUnit(printed, cell.unit);
}

/** A whole number without a unit is a count or a year: to round it to three digits would be wrong, unless asked for. */
function printNumber(
  { value, unit }: { readonly value: number; readonly unit: string },
  digits: number | undefined,
): string {
  const isCount = digits === undefined && unit === "1" && Number.isInteger(value) && Math.abs(value) < 1e15;
  return formatNumber(value, isCount ? Math.max(1, String(Math.abs(value)).length) : (digits ?? USUAL_DIGITS));
}
