import { type AnyQuantity, describeGiven, InputError, isQuantity, quantity, readNumber } from "@tarewatt/units";
import { ReportError } from "../check/errors.js";

/**
 * A value with its spread: one in ten outcomes lies below `p10`, half below `p50`, nine in ten below `p90`. Any object with
 * these three will do.
 */
export interface SpreadLike {
  /** Value that one outcome in ten stays below. */
  readonly p10: AnyQuantity | number;
  /** Median. */
  readonly p50: AnyQuantity | number;
  /** Value that nine outcomes in ten stay below. */
  readonly p90: AnyQuantity | number;
}

/** What a table or an answer can show; `undefined` shows as a dash. */
export type TableCell = string | number | AnyQuantity | SpreadLike | undefined;

/** @internal A cell read and converted: what every format prints from. */
export type ReadCell =
  | { readonly kind: "nothing" }
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "number"; readonly value: number; readonly unit: string }
  | {
      readonly kind: "spread";
      readonly p10: number;
      readonly p50: number;
      readonly p90: number;
      readonly unit: string;
    };

/** @internal Where a cell stands, and in which unit it is shown. */
export interface CellPlace {
  /** How the cell is called in a message. */
  readonly name: string;
  /** Unit of the column. */
  readonly unit: string | undefined;
  /** The column has a unit beside another one, so that a bare number would be ambiguous. */
  readonly oneOfTwo: boolean;
}

/** @internal Whether something is a spread: an object with the three percentiles. */
export function isSpread(cell: unknown): cell is SpreadLike {
  return (
    typeof cell === "object" && cell !== null && !isQuantity(cell) && "p10" in cell && "p50" in cell && "p90" in cell
  );
}

/** @internal A cell as a table keeps it: of a spread a copy, because the caller may change his own. */
export function keptCell(cell: TableCell): TableCell {
  return isSpread(cell) ? Object.freeze({ p10: cell.p10, p50: cell.p50, p90: cell.p90 }) : cell;
}

/** @internal Reads a cell; what cannot be shown is refused. */
export function readCell(cell: TableCell, place: CellPlace): ReadCell {
  if (cell === undefined) return { kind: "nothing" };
  if (typeof cell === "string") return { kind: "text", text: cell };
  if (typeof cell === "number" || isQuantity(cell)) {
    const unit = place.unit ?? unitOfCell(cell);
    return { kind: "number", value: inUnit(cell, unit, place), unit };
  }
  if (isSpread(cell)) return readSpread(cell, place);
  throw new ReportError(
    "NOT_A_CELL",
    `${place.name} must be a text, a number, a quantity, an object with p10, p50 and p90, or undefined: got ${describeGiven(cell)}`,
    { name: place.name },
  );
}

function readSpread(cell: SpreadLike, place: CellPlace): ReadCell {
  const unit = place.unit ?? unitOfCell(cell.p50);
  const [p10, p50, p90] = (["p10", "p50", "p90"] as const).map((key) =>
    inUnit(cell[key], unit, { ...place, name: `${place.name}.${key}` }),
  ) as [number, number, number];
  if (!(p10 <= p50 && p50 <= p90)) {
    throw new ReportError(
      "NOT_ORDERED",
      `${place.name} must have p10 ≤ p50 ≤ p90: got ${cell.p10}, ${cell.p50}, ${cell.p90}`,
      { p10, p50, p90 },
    );
  }
  return { kind: "spread", p10, p50, p90, unit };
}

function unitOfCell(cell: AnyQuantity | number): string {
  return isQuantity(cell) ? cell.unit : "1";
}

/**
 * The number in a unit. A bare number is taken to be in the unit of its column; but where the column shows a ratio, in per
 * cent say, it is the ratio itself, as everywhere in the library: 0.74 is 74 %.
 */
function inUnit(value: AnyQuantity | number, unit: string, { name, oneOfTwo }: CellPlace): number {
  if (typeof value !== "number") return readNumber(name, value, { unit });
  if (isRatio(unit)) return readNumber(name, quantity(readNumber(name, value, { unit: "1" }), "1"), { unit });
  if (oneOfTwo) {
    throw new InputError(
      "NOT_A_QUANTITY",
      `${name} needs a unit, since its column shows two: got the bare number ${value}`,
      {
        name,
      },
    );
  }
  return readNumber(name, value, { unit: "1" });
}

function isRatio(unit: string): boolean {
  const { key, kind } = quantity(1, unit).dimension;
  const ratio = quantity(1, "1").dimension;
  return key === ratio.key && kind === ratio.kind;
}
