import { describeGiven, InputError, quantity } from "@tarewatt/units";
import { readText } from "../check/read-text.js";
import {
  type Designation,
  type DesignationLabels,
  type NegativeElectrode,
  type PositiveElectrode,
  positiveElectrodes,
  writeDesignation,
} from "./designation.js";
import { whyNoDesignation } from "./why-no-designation.js";

/** One way to read a designation. */
export interface DesignationReading {
  /** What it says, read so. */
  readonly designation: Designation;
  /** How the digits were read, in words. */
  readonly how: string;
  /** What it says, in words. */
  readonly inWords: string;
  /** The same with slashes, which has this one reading only; without electrodes in the name, `X` stands for any. */
  readonly written: string;
}

/** A designation, read. */
export interface DesignationReadings {
  /** The likeliest reading; `how` says by which rule. */
  readonly likely: DesignationReading;
  /** All readings, the likeliest first; more than one when the digits can be cut in several ways. */
  readonly all: readonly DesignationReading[];
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
}

/** Sizes in mm, as cut from the digits. */
interface Cut {
  readonly sizes: readonly number[];
  readonly how: string;
}

const PATTERN = /^(\d{1,3})?([IL])(Fp|Mp|C|N|M|V|T|F|X)([RP])([\dt/]+)(?:-(\d{1,3}))?$/;
/** What makers add to tell their own cells apart: it holds a capital letter, by which it differs from a count in parallel. */
const SUFFIX = /^(.*?\d)((?:[- ]\d{0,3})?[A-Z][A-Z\d]{0,5})$/;

/**
 * Reads the designation of a cell after IEC 61960, such as `INR19/65`, `ICP103450` or `2ICP08/34/150-2`, and the trade names
 * of cylinders made of four or five digits, such as `21700`.
 *
 * With slashes every size is in whole millimetres, or in tenths after a `t`, and is the largest one, rounded up. Without, the
 * digits can be cut in several ways: of cylinders, five digits are a diameter and a height in tenths of a millimetre (65.0) in
 * the older form, or in whole ones (120) in newer trade names; of prismatic cells, the trade also writes the thickness
 * in tenths. Then all readings are given, and a warning. What a maker adds to the sizes (`INR21700-50E`, `INR18650 MJ1`) is named in a
 * warning and left out: the standard knows digits alone behind the dash, the cells in parallel. Source: IEC 61960-3, clause 5.1, seen quoted; trade habits are common
 * practice without a source.
 *
 * @param text - the designation, without blanks
 * @returns the readings, the likeliest first
 * @throws InputError `WRONG_CHOICE` for what is no designation, `TOO_LONG`, `EMPTY`
 * @example
 * const { likely } = readDesignation("ICR18650");
 * likely.designation.height; // 65 mm
 * likely.written; // "ICR18/65"
 * readDesignation("IFpR46120").likely.how; // "height in whole mm, as newer trade names write it"
 */
export function readDesignation(text: string): DesignationReadings {
  const given = readText("designation", text);
  if (given === undefined) refuse(text);
  const [, base, suffix] = SUFFIX.exec(given) ?? [];
  if (base === undefined || suffix === undefined) return readBare(given);
  const read = readBare(base);
  const left = `'${suffix.trim()}' is no part of a designation: it is taken for the maker's own suffix and left out`;
  return Object.freeze({ ...read, warnings: Object.freeze([left, ...read.warnings]) });
}

function readBare(given: string): DesignationReadings {
  if (/^\d{4,5}$/.test(given)) return readings(given, cylinderCuts(given), {}, "cylindrical");
  const match = PATTERN.exec(given);
  if (match === null) refuse(given);
  const [, series, negative, positive, letter, digits = "", parallel] = match;
  const labels: DesignationLabels = {
    negativeElectrode: negative as NegativeElectrode,
    positiveElectrode: positive as PositiveElectrode,
    ...(series !== undefined && { series: Number(series) }),
    ...(parallel !== undefined && { parallel: Number(parallel) }),
  };
  const form = letter === "R" ? "cylindrical" : "prismatic";
  const cuts = digits.includes("/")
    ? slashCut(digits)
    : form === "cylindrical"
      ? cylinderCuts(digits)
      : boxCuts(digits);
  return readings(given, cuts, labels, form);
}

function readings(given: string, cuts: readonly Cut[], labels: DesignationLabels, form: Designation["form"]) {
  const wanted = form === "cylindrical" ? 2 : 3;
  const fitting = cuts.filter(({ sizes }) => sizes.length === wanted && sizes.every((size) => size > 0 && size < 2000));
  const none = labels.series === 0 || labels.parallel === 0;
  const all = none ? [] : fitting.map(({ sizes, how }) => reading(sizes, how, labels));
  const [likely] = all;
  if (likely === undefined) refuse(given);
  const others = all.slice(1).map(({ written }) => written);
  return Object.freeze({
    likely,
    all: Object.freeze(all),
    warnings: Object.freeze([
      ...(others.length === 0
        ? []
        : [`'${given}' has no slashes and is read as ${likely.written}; it may also mean ${others.join(" or ")}`]),
      ...(labels.series === undefined && (labels.parallel ?? 0) >= 10
        ? [
            `'-${labels.parallel}' is read as ${labels.parallel} cells in parallel; some makers write a suffix of their own there`,
          ]
        : []),
    ]),
  });
}

function reading(sizes: readonly number[], how: string, labels: DesignationLabels): DesignationReading {
  const [first = 0, second = 0, third = 0] = sizes.map((size) => size);
  const mm = (size: number) => quantity(size, "mm");
  const designation: Designation =
    sizes.length === 2
      ? { form: "cylindrical", ...labels, diameter: mm(first), height: mm(second) }
      : { form: "prismatic", ...labels, thickness: mm(first), width: mm(second), height: mm(third) };
  Object.freeze(designation);
  const inWords = [...electrodes(labels), `${designation.form}, at most ${sizes.join(" × ")} mm`, ...battery(labels)];
  return Object.freeze({ designation, how, inWords: inWords.join(", "), written: writeDesignation(designation) });
}

function electrodes({ negativeElectrode, positiveElectrode }: DesignationLabels): string[] {
  if (negativeElectrode === undefined || positiveElectrode === undefined) return [];
  const positive = positiveElectrodes[positiveElectrode];
  return [negativeElectrode === "I" ? "lithium ion" : "lithium metal", `positive electrode based on ${positive}`];
}

function battery({ series, parallel }: DesignationLabels): string[] {
  return [
    ...(series === undefined ? [] : [`${series} in series`]),
    ...(parallel === undefined ? [] : [`${parallel} in parallel`]),
  ];
}

function slashCut(digits: string): Cut[] {
  const parts = digits.split("/");
  if (!parts.every((part) => /^t?\d{1,4}$/.test(part))) return [];
  const sizes = parts.map((part) => (part.startsWith("t") ? Number(part.slice(1)) / 10 : Number(part)));
  return [{ sizes, how: "largest sizes in mm, rounded up" }];
}

/** A cylinder is taller than wide, or the trade would call it a button: that decides which cut is likelier. */
function cylinderCuts(digits: string): Cut[] {
  if (!/^\d{4,6}$/.test(digits)) return [];
  const diameter = Number(digits.slice(0, 2));
  const height = Number(digits.slice(2));
  const whole = { sizes: [diameter, height], how: "height in whole mm, as newer trade names write it" };
  if (digits.length === 4) return [whole];
  const tenths = { sizes: [diameter, height / 10], how: "height in tenths of a mm, the older form" };
  if (digits.length === 6) return [tenths];
  return height / 10 > diameter ? [tenths, whole] : [whole, tenths];
}

function boxCuts(digits: string): Cut[] {
  const thin = /^t(\d)(\d\d)(\d\d)$/.exec(digits);
  if (thin !== null) {
    const [tenths = 0, width = 0, height = 0] = thin.slice(1).map(Number);
    return [{ sizes: [tenths / 10, width, height], how: "thickness in tenths of a mm after the t, others in mm" }];
  }
  if (/^\d{6}$/.test(digits)) {
    const [thickness = 0, width = 0, height = 0] = [0, 2, 4].map((at) => Number(digits.slice(at, at + 2)));
    return [
      { sizes: [thickness, width, height], how: "sizes in whole mm, as the standard writes them" },
      {
        sizes: [thickness / 10, width, height],
        how: "thickness in tenths of a mm, as trade names of pouches write it",
      },
    ];
  }
  // A size of 100 mm and more takes three digits; the standard then wants slashes, and the trade leaves them out.
  const at = (from: number, to: number): number => Number(digits.slice(from, to));
  if (/^\d{8}$/.test(digits)) {
    return [{ sizes: [at(0, 2), at(2, 5), at(5, 8)], how: "sizes in mm, three digits for width and height" }];
  }
  if (!/^\d{7}$/.test(digits)) return [];
  return [
    { sizes: [at(0, 2), at(2, 4), at(4, 7)], how: "sizes in mm, three digits for the height" },
    { sizes: [at(0, 2), at(2, 5), at(5, 7)], how: "sizes in mm, three digits for the width" },
  ];
}

function refuse(given: unknown): never {
  const why = typeof given === "string" ? `: ${whyNoDesignation(given)}` : "";
  throw new InputError(
    "WRONG_CHOICE",
    "designation must be one after IEC 61960, such as INR19/65 or ICP08/34/150, or a trade name of four or five digits: got " +
      `${describeGiven(given)}${why}`,
    { given },
  );
}
