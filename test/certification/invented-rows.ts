import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { type Prepared, predict, prepare } from "./fit.js";
import { type CertifiedRow, readRows } from "./rows.js";

const head =
  "id,maker,model_year,test_weight_lb,target_a_lbf,target_b_lbf_per_mph,target_c_lbf_per_mph2,rated_power_hp,udds_wall_wh_per_mi,hwfet_wall_wh_per_mi,label_match,quality";
/** Invented vehicles of invented makers. */
export const invented = readRows(
  [
    head,
    ...Array.from({ length: 24 }, (_, i) =>
      [
        ...[`X${i}`, `maker ${i % 6}`, 2015 + (i % 5), 3500 + 125 * (i % 9), 25 + 2 * (i % 7), 0.1 * (i % 4)],
        ...[0.014 + 0.001 * (i % 6), 150 + 40 * (i % 8), 1, 1, "exact", "ok"],
      ].join(","),
    ),
  ].join("\n"),
);

/** The same vehicles, certified at what the coefficients say. */
export function certifiedWith(
  coefficients: readonly number[],
  factorOf: (row: CertifiedRow) => number = () => 1,
): Prepared[] {
  return invented.map(prepare).map(({ row, parts }) => ({
    parts,
    row: {
      ...row,
      city: predict(coefficients, parts.city) * factorOf(row),
      highway: predict(coefficients, parts.highway) * factorOf(row),
    },
  }));
}

/** The text of the open file of certified vehicles, when it is beside the project. */
export const openFile = readOrUndefined(
  resolve(import.meta.dirname, "../../..", "shared/reference/certification/bev_open.csv"),
);

function readOrUndefined(file: string): string | undefined {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return undefined;
  }
}
