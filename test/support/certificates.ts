import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { type Cycle, certifiedRoadLoad, driveCycle, efficiencyDrivetrain, referenceAir } from "@tarewatt/roadload";
import { quantity } from "@tarewatt/units";

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
export function predicted({ testWeight, coefficients: [a, b, c] }: Certificate, cycle: Cycle): number {
  const load = certifiedRoadLoad({
    constant: quantity(a, "lbf"),
    linear: quantity(b, "lbf/mph"),
    quadratic: quantity(c, "lbf/mph²"),
    conditions: { testMass: quantity(testWeight, "lb"), airDensity: referenceAir.us.density },
  });
  const { consumption } = driveCycle({ cycle, load, drivetrain, accessories, chargingEfficiency });
  return consumption.atWall?.in("Wh/mi") ?? Number.NaN;
}

/** The core rows of the open file of certificates, or undefined where the file is not at hand. */
export function certificatesOfFile(): readonly Certificate[] | undefined {
  const file = resolve(import.meta.dirname, "../../../shared/reference/certification/bev_open.csv");
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
