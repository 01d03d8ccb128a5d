import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { quantileOfSorted } from "@tarewatt/estimate";
import {
  type Cycle,
  certifiedRoadLoad,
  driveCycle,
  efficiencyDrivetrain,
  referenceAir,
  udds,
} from "@tarewatt/roadload";
import { quantity } from "@tarewatt/units";
import { certificateRows } from "./certificate-rows.js";

const BESIDE_THE_PROJECT = "shared/reference/certification/bev_open.csv";

/** One certified configuration: what is given to the model, and the wall consumption that the certificate states. */
export interface Certificate {
  readonly id: string;
  /** Equivalent test weight, lb. */
  readonly testWeight: number;
  /** Certified road load: lbf, lbf/mph, lbf/mph². */
  readonly coefficients: readonly [a: number, b: number, c: number];
  /** Unadjusted consumption at the wall, Wh/mi. */
  readonly udds: number;
  readonly hwfet: number;
}

/**
 * One set of figures for all makers and years, so that the error shows what is not known of a single vehicle: drivetrain as a mean
 * of the cycle (common practice, no source), base load 300 W (from memory), charging 0.89 (touring club, 26 cars at 11 kW, seen).
 */
const drivetrain = efficiencyDrivetrain({
  efficiency: 0.88,
  regeneration: { share: 0.9 },
  contains: ["gears", "motor", "inverter"],
});
const accessories = quantity(300, "W");
const chargingEfficiency = 0.89;

/** Unadjusted wall consumption from certified coefficients and test weight alone, Wh/mi. */
function predicted({ testWeight, coefficients: [a, b, c] }: Certificate, cycle: Cycle): number {
  const load = certifiedRoadLoad({
    constant: quantity(a, "lbf"),
    linear: quantity(b, "lbf/mph"),
    quadratic: quantity(c, "lbf/mph²"),
    conditions: { testMass: quantity(testWeight, "lb"), airDensity: referenceAir.us.density },
  });
  const { consumption } = driveCycle({ cycle, load, drivetrain, accessories, chargingEfficiency });
  return consumption.atWall?.in("Wh/mi") ?? Number.NaN;
}

/** The rows that are quoted here. */
export const quotedCertificates: readonly Certificate[] = certificateRows.map(
  ([id, testWeight, a, b, c, udds, hwfet]) => ({
    id,
    testWeight,
    coefficients: [a, b, c],
    udds,
    hwfet,
  }),
);

/** Predicted over certified, less one, for each row. */
export function errorsOf(rows: readonly Certificate[], cycle: Cycle, scale = 1): number[] {
  const key = cycle === udds ? "udds" : "hwfet";
  return rows.map((row) => (scale * predicted(row, cycle)) / row[key] - 1);
}

/** What the errors of many rows come to: shares, the bias with its sign. */
export function summaryOf(errors: readonly number[]): {
  readonly median: number;
  readonly p90: number;
  readonly bias: number;
} {
  const sizes = Float64Array.from(errors, Math.abs).sort();
  return {
    median: quantileOfSorted(sizes, 0.5),
    p90: quantileOfSorted(sizes, 0.9),
    bias: quantileOfSorted(Float64Array.from(errors).sort(), 0.5),
  };
}

/** The core rows of the whole open file, or undefined where it is not at hand. */
export function certificatesOfFile(): readonly Certificate[] | undefined {
  const file = process.env.TAREWATT_CERTIFICATES ?? resolve(import.meta.dirname, "../../..", BESIDE_THE_PROJECT);
  let text: string;
  try {
    text = readFileSync(file, "utf8");
  } catch {
    return undefined;
  }
  const [head = "", ...lines] = text.trim().split(/\r?\n/);
  const names = head.split(",");
  return lines
    .map((line) => {
      const cells = line.split(",");
      return (name: string): string => cells[names.indexOf(name)] ?? "";
    })
    .filter((cell) => cell("quality") === "ok" && cell("label_match") === "exact")
    .map((cell) => ({
      id: cell("id"),
      testWeight: Number(cell("test_weight_lb")),
      coefficients: [
        Number(cell("target_a_lbf")),
        Number(cell("target_b_lbf_per_mph")),
        Number(cell("target_c_lbf_per_mph2")),
      ],
      udds: Number(cell("udds_wall_wh_per_mi")),
      hwfet: Number(cell("hwfet_wall_wh_per_mi")),
    }));
}
