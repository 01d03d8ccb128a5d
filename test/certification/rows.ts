import { certifiedRoadLoad, type RoadLoad, referenceAir } from "@tarewatt/roadload";
import { quantity } from "@tarewatt/units";

/** A certified configuration, as a row of an open file of certified vehicles. */
export interface CertifiedRow {
  readonly id: string;
  readonly maker: string;
  readonly modelYear: number;
  /** Model years since the first one that the file has of the maker. */
  readonly yearsOfExperience: number;
  /** Rated power of all motors, in W. */
  readonly ratedPower: number;
  /** Equivalent test weight, in lb. */
  readonly testWeight: number;
  /** Certified road load: lbf, lbf/mph, lbf/mph². */
  readonly coefficients: readonly [constant: number, linear: number, quadratic: number];
  /** Unadjusted consumption at the wall, in Wh/mi. */
  readonly city: number;
  readonly highway: number;
  /** Size class of the label; empty when the row was not found in the label table. */
  readonly sizeClass: string;
  /** Nominal voltage times capacity of the pack, as filed, in Wh; NaN when not filed. */
  readonly packEnergy: number;
  /** Combined range of the label, in mi; NaN when the row was not found in the label table. */
  readonly labelRange: number;
  /** Whether the row is one to score on: of good quality, and found again in the label table. */
  readonly core: boolean;
}

export type Driving = "city" | "highway";

/** Where a row has no rated power: W per kg of test weight, the middle of the open file. */
const USUAL_SPECIFIC_POWER = 120;

/** One line of a table, by the names of its columns: a text that may be empty, a number that may be NaN. */
export interface Line {
  cell(name: string): string;
  number(name: string): number;
}

/** Lines of comma-separated text with a line of names, and no quoted cells. */
export function readLines(text: string): Line[] {
  const [head = "", ...lines] = text.trim().split(/\r?\n/);
  const names = head.split(",");
  return lines.map((line) => {
    const cells = line.split(",");
    const cell = (name: string): string => cells[names.indexOf(name)] ?? "";
    return { cell, number: (name) => (cell(name) === "" ? Number.NaN : Number(cell(name))) };
  });
}

/** Rows of certified configurations. */
export function readRows(text: string): CertifiedRow[] {
  const rows = readLines(text).flatMap(({ cell, number }) => {
    const testWeight = number("test_weight_lb");
    const power = number("rated_power_hp") * 745.69987;
    const row = {
      ...{ id: cell("id"), maker: cell("maker"), modelYear: number("model_year"), testWeight },
      ratedPower: power > 0 ? power : USUAL_SPECIFIC_POWER * testWeight * 0.45359237,
      coefficients: [
        ...[number("target_a_lbf"), number("target_b_lbf_per_mph"), number("target_c_lbf_per_mph2")],
      ] as unknown as CertifiedRow["coefficients"],
      ...{ city: number("udds_wall_wh_per_mi"), highway: number("hwfet_wall_wh_per_mi") },
      ...{
        sizeClass: cell("size_class"),
        packEnergy: 1000 * number("pack_vxah_kwh"),
        labelRange: number("label_range_mi"),
      },
      core: cell("quality") === "ok" && cell("label_match") === "exact",
    };
    const usable = [row.modelYear, testWeight, ...row.coefficients, row.city, row.highway].every(Number.isFinite);
    return usable ? [row] : [];
  });
  const firstYears = new Map<string, number>();
  for (const { maker, modelYear } of rows) {
    firstYears.set(maker, Math.min(modelYear, firstYears.get(maker) ?? modelYear));
  }
  return rows.map((row) => ({
    ...row,
    yearsOfExperience: row.modelYear - (firstYears.get(row.maker) ?? row.modelYear),
  }));
}

export function loadOf({ testWeight, coefficients: [a, b, c] }: CertifiedRow): RoadLoad {
  return certifiedRoadLoad({
    constant: quantity(a, "lbf"),
    linear: quantity(b, "lbf/mph"),
    quadratic: quantity(c, "lbf/mph²"),
    conditions: { testMass: quantity(testWeight, "lb"), airDensity: referenceAir.us.density },
  });
}

/** Certified force at a speed in mph, in lbf. */
export function forceAt({ coefficients: [a, b, c] }: CertifiedRow, speed: number): number {
  return a + b * speed + c * speed ** 2;
}
