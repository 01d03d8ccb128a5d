import { describeGiven, InputError, type Length, type Quantity, readNumber, readOptions } from "@tarewatt/units";

/** Letter of the negative electrode: lithium ion, or lithium metal and its alloys. */
export type NegativeElectrode = "I" | "L";

/**
 * Letters of the positive electrode: cobalt, nickel, manganese, vanadium, titanium (the standard); iron, iron phosphate,
 * manganese phosphate, any other (a later decision of the certification bodies).
 */
export type PositiveElectrode = "C" | "N" | "M" | "V" | "T" | "F" | "Fp" | "Mp" | "X";

/** What the letters of a positive electrode stand for. @internal */
export const positiveElectrodes = {
  C: "cobalt",
  N: "nickel",
  M: "manganese",
  V: "vanadium",
  T: "titanium",
  F: "iron",
  Fp: "iron phosphate",
  Mp: "manganese phosphate",
  X: "any other",
} as const satisfies Readonly<Record<PositiveElectrode, string>>;

/** What every designation may say, whatever the form of the cell. */
export interface DesignationLabels {
  /** Negative electrode; absent in a trade name of digits alone. */
  readonly negativeElectrode?: NegativeElectrode | undefined;
  /** Material that the positive electrode is based on; absent in a trade name of digits alone. */
  readonly positiveElectrode?: PositiveElectrode | undefined;
  /** Cells in series, of a battery. A whole number of at least one. */
  readonly series?: number | undefined;
  /** Cells in parallel, of a battery. A whole number of at least one. */
  readonly parallel?: number | undefined;
}

/** Designation of a cylindrical cell. */
export interface CylinderDesignation extends DesignationLabels {
  /** Form of the cell. */
  readonly form: "cylindrical";
  /** Largest diameter. */
  readonly diameter: Quantity<Length>;
  /** Largest overall height. */
  readonly height: Quantity<Length>;
}

/** Designation of a prismatic cell. */
export interface PrismaticDesignation extends DesignationLabels {
  /** Form of the cell; a pouch is designated as a prismatic cell. */
  readonly form: "prismatic";
  /** Largest thickness. */
  readonly thickness: Quantity<Length>;
  /** Largest width. */
  readonly width: Quantity<Length>;
  /** Largest overall height. */
  readonly height: Quantity<Length>;
}

/** What a designation after IEC 61960 says. */
export type Designation = CylinderDesignation | PrismaticDesignation;

const SIZE = { unit: "mm", above: 0, atMost: 9999 } as const;
const SIZE_IF_OF_FORM = { unit: "mm", above: 0, atMost: 9999, optional: true } as const;
const COUNT = { unit: "1", atLeast: 1, atMost: 99_999, optional: true } as const;

/**
 * Writes the designation of a cell after IEC 61960: letters, then the largest sizes in whole millimetres, rounded up.
 *
 * A size below 1 mm is written in tenths with a `t`. Write sizes that include the tolerance: the standard wants the largest.
 * Valid for cells of lithium; the standard covers portable ones, and the trade writes the same for others.
 * Source: IEC 61960-3, clause 5.1, seen quoted.
 *
 * @param designation - form, sizes, letters of the electrodes, and cells in series and parallel for a battery
 * @returns the designation with slashes, which has one reading only
 * @throws InputError `WRONG_CHOICE`, `OUT_OF_RANGE`, `NEGATIVE`, `WRONG_DIMENSION`, `NOT_A_QUANTITY`, `MISSING_OPTION`,
 *   `UNKNOWN_OPTION`, `NOT_AN_OBJECT`
 * @example
 * const electrodes = { negativeElectrode: "I", positiveElectrode: "N" } as const;
 * writeDesignation({ form: "cylindrical", ...electrodes, diameter: q("18.3 mm"), height: q("64.9 mm") }); // "INR19/65"
 */
export function writeDesignation(designation: Designation): string {
  const others = ["form", "negativeElectrode?", "positiveElectrode?"];
  const counts = { series: COUNT, parallel: COUNT };
  readOptions(
    "writeDesignation",
    designation,
    { height: SIZE, diameter: SIZE_IF_OF_FORM, thickness: SIZE_IF_OF_FORM, width: SIZE_IF_OF_FORM, ...counts },
    others,
  );
  const { form, series, parallel } = designation;
  const letters = readLetters(designation);
  if (form !== "cylindrical" && form !== "prismatic") {
    throw new InputError("WRONG_CHOICE", `form must be "cylindrical" or "prismatic": got ${describeGiven(form)}`, {});
  }
  const names = form === "cylindrical" ? ["diameter", "height"] : ["thickness", "width", "height"];
  const held: Readonly<Record<string, unknown>> = { ...designation };
  const strange = ["diameter", "thickness", "width"].find((name) => !names.includes(name) && held[name] !== undefined);
  if (strange !== undefined) {
    throw new InputError("UNKNOWN_OPTION", `a ${form} cell has no ${strange}: it takes ${names.join(", ")}`, {});
  }
  const sizes = names.map((name) => written(readNumber(name, held[name], SIZE)));
  const body = `${letters}${form === "cylindrical" ? "R" : "P"}${sizes.join("/")}`;
  return `${countOf("series", series, "", "")}${body}${countOf("parallel", parallel, "-", "")}`;
}

function readLetters({ negativeElectrode = "I", positiveElectrode = "X" }: DesignationLabels): string {
  if (negativeElectrode !== "I" && negativeElectrode !== "L") {
    throw new InputError(
      "WRONG_CHOICE",
      `negativeElectrode must be "I" or "L": got ${describeGiven(negativeElectrode)}`,
      {},
    );
  }
  if (typeof positiveElectrode !== "string" || !Object.hasOwn(positiveElectrodes, positiveElectrode)) {
    const known = Object.keys(positiveElectrodes).join(", ");
    throw new InputError(
      "WRONG_CHOICE",
      `positiveElectrode must be one of ${known}: got ${describeGiven(positiveElectrode)}`,
      {},
    );
  }
  return negativeElectrode + positiveElectrode;
}

/** A size that came from inches or metres may be a trifle above its whole millimetre. */
const TRIFLE = 1e-9;

function written(millimetres: number): string {
  const up = (value: number): number => Math.max(1, Math.ceil(value * (1 - TRIFLE)));
  const tenths = up(millimetres * 10);
  return tenths < 10 ? `t${tenths}` : String(up(millimetres));
}

/** One cell in series or parallel is not written. */
function countOf(name: string, count: number | undefined, before: string, after: string): string {
  if (count === undefined || count === 1) return "";
  if (Number.isInteger(count)) return `${before}${count}${after}`;
  throw new InputError("OUT_OF_RANGE", `${name} must be a whole number: got ${count}`, { name });
}
