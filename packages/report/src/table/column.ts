import { describeGiven, InputError, quantity, readNumber } from "@tarewatt/units";
import { readKeys, readList, readText } from "../check/read.js";

/** Which side the cells of a column keep to. */
export type Align = "left" | "right" | "centre";

/** A column of a {@link Table}. */
export interface Column {
  /** Key of its cells in the rows. */
  readonly key: string;
  /** Head of the column. */
  readonly title: string;
  /**
   * Unit that every number of the column is shown in; the head names it. A bare number is taken to be in this unit, except
   * that in a column of ratios (`"%"`) it is the ratio itself: 0.74 shows as 74.
   */
  readonly unit?: string | undefined;
  /** Two units to be shown side by side in two columns, such as `["km", "mi"]`, instead of `unit`. */
  readonly units?: readonly [string, string] | undefined;
  /** Side that the cells keep to; numbers keep right and texts left when left out. */
  readonly align?: Align | undefined;
  /**
   * Significant digits of the numbers, 1 to 15; 3 when left out, though a whole number without unit, a count, is then
   * printed in full. A spread prints to the places that its width justifies.
   */
  readonly digits?: number | undefined;
}

/** @internal A column as it is shown: a column with two units gives two of these. */
export interface ShownColumn {
  readonly key: string;
  readonly title: string;
  readonly unit: string | undefined;
  readonly oneOfTwo: boolean;
  readonly align: Align | undefined;
  readonly digits: number | undefined;
}

const ALIGNMENTS: readonly unknown[] = ["left", "right", "centre"];

/** @internal Checks a column and copies it. */
export function readColumn(column: Column, index: number): Column {
  const where = `columns[${index}]`;
  readKeys(where, column, ["key", "title", "unit?", "units?", "align?", "digits?"]);
  const { key, title, unit, units, align, digits } = column;
  readText(`${where}.key`, key);
  readText(`${where}.title`, title);
  if (unit !== undefined && units !== undefined) {
    throw new InputError("INCONSISTENT", `${where} has both unit and units: give one of them`, { column: key });
  }
  if (unit !== undefined) quantity(1, unit);
  if (units !== undefined) for (const one of readPair(`${where}.units`, units)) quantity(1, one);
  if (align !== undefined && !ALIGNMENTS.includes(align)) {
    throw new InputError("WRONG_CHOICE", `${where}.align must be left, right or centre: got ${describeGiven(align)}`, {
      name: `${where}.align`,
    });
  }
  if (digits !== undefined) readDigits(`${where}.digits`, digits);
  return Object.freeze({ ...column, ...(units === undefined ? {} : { units: Object.freeze([...units]) }) }) as Column;
}

function readDigits(name: string, digits: number): void {
  if (Number.isInteger(readNumber(name, digits, { unit: "1", atLeast: 1, atMost: 15 }))) return;
  throw new InputError("OUT_OF_RANGE", `${name} must be a whole number from 1 to 15: got ${digits}`, { digits });
}

function readPair(name: string, units: readonly string[]): readonly string[] {
  if (readList(name, units).length === 2) return units;
  throw new InputError(
    "INCONSISTENT",
    `${name} must name two units: got ${units.length}; for one unit use the option unit`,
    {
      units,
    },
  );
}

/** @internal The columns as they are shown, left to right. */
export function shownColumns(columns: readonly Column[]): readonly ShownColumn[] {
  return columns.flatMap(({ key, title, unit, units, align, digits }): readonly ShownColumn[] => {
    const shared = { key, title, align, digits };
    if (units === undefined) return [{ ...shared, unit, oneOfTwo: false }];
    return units.map((one) => ({ ...shared, unit: one, oneOfTwo: true }));
  });
}
