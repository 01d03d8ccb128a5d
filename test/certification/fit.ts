import { typicalDrivetrainFit } from "@tarewatt/roadload";
import { Matrix, solve } from "ml-matrix";
import { type Parts, partsOf } from "./parts.js";
import type { CertifiedRow, Driving } from "./rows.js";

/**
 * Priors of the coefficients, in the order of {@link Parts}: middle and standard deviation, from outside the file.
 *
 * - driving: machine 0.93 (WLTP mean 2020, a national industry roadmap, quoted), inverter 0.98 and gears 0.98 (memory) come to 0.893,
 *   or 1.12; less what `perRatedPower` takes of it, 1.105.
 * - newcomer: half a tenth or so, or nothing: no source, so it is wide.
 * - perRatedPower: a twentieth of the 6 W/kW that a textbook set of the 1990s has (100 kW, quoted): modern machines, no source.
 * - braking: 0.893 once more, less what the friction brakes take: common practice, no source.
 * - accessories: 200 to 500 W on the road (memory), less on a roller test with everything off.
 */
const priors: readonly (readonly [middle: number, deviation: number])[] = [
  [1.105, 0.018],
  [0.045, 0.045],
  [3.0e-4, 1.5e-4],
  [0.82, 0.045],
  [180, 45],
];

/** What a maker may differ by: factor on all (logarithm), and a base load in W at the battery. Common practice, no source. */
const makerSpread = { factor: 0.02, power: 90 };
/** What one result may differ by beyond that (logarithm). Repeat tests alone differ by 0.020 and 0.011. */
const rowSpread: Readonly<Record<Driving, number>> = { city: 0.035, highway: 0.022 };
const drivings = ["city", "highway"] as const;
const { chargingEfficiency } = typicalDrivetrainFit;
const ROUNDS = 30;

/** Rows with what the coefficients multiply. */
export interface Prepared {
  readonly row: CertifiedRow;
  readonly parts: Readonly<Record<Driving, Parts>>;
}

export const prepare = (row: CertifiedRow): Prepared => ({
  row,
  parts: { city: partsOf(row, "city"), highway: partsOf(row, "highway") },
});

/** Consumption at the wall, Wh/mi. */
export function predict(coefficients: readonly number[], parts: Parts): number {
  const atBattery = parts.reduce((sum, part, i) => sum + part * (coefficients[i] as number), 0);
  return atBattery / chargingEfficiency;
}

/**
 * Coefficients from certified rows: posterior mode with the priors above, makers as random effects with heavy tails (a maker that
 * stands apart is believed to stand apart), results with a Huber-like loss. Gauss-Newton, weights renewed each round.
 */
export function fitCoefficients(rows: readonly Prepared[]): number[] {
  const makers = [...new Set(rows.map(({ row }) => row.maker))].sort();
  const count = priors.length;
  const size = count + 2 * makers.length;
  const unknowns = new Float64Array(size); // in units of their deviations, from their middles
  const makerWeights = new Float64Array(makers.length).fill(1);
  const coefficientsOf = (): number[] => priors.map(([middle, sd], i) => middle + sd * (unknowns[i] as number));
  for (let round = 0; round < ROUNDS; round++) {
    const normal = Matrix.eye(size);
    const right = Matrix.zeros(size, 1);
    unknowns.forEach((value, i) => {
      right.set(i, 0, -value);
    });
    const coefficients = coefficientsOf();
    for (const { row, parts } of rows) {
      const maker = makers.indexOf(row.maker);
      const slack = 1 / Math.sqrt(makerWeights[maker] as number);
      const [atFactor, atPower] = [count + 2 * maker, count + 2 * maker + 1];
      for (const driving of drivings) {
        const share = parts[driving];
        const hours = share[count - 1] as number;
        const ofMaker = (makerSpread.power * slack * (unknowns[atPower] as number) * hours) / chargingEfficiency;
        const linear = Math.max(predict(coefficients, share) + ofMaker, 1);
        const spread = rowSpread[driving];
        const factor = makerSpread.factor * slack;
        const residual = (Math.log(row[driving] / linear) - factor * (unknowns[atFactor] as number)) / spread;
        const weight = 1 / Math.sqrt(1 + residual ** 2 / 4);
        // Sensitivity of the modelled logarithm to each unknown that this result knows of.
        const touched: [number, number][] = share.map((part, i) => [
          i,
          (part * (priors[i]?.[1] ?? 0)) / chargingEfficiency / linear,
        ]);
        touched.push([atPower, (makerSpread.power * slack * hours) / chargingEfficiency / linear], [atFactor, factor]);
        for (const [i, a] of touched) {
          right.set(i, 0, right.get(i, 0) + (weight * residual * a) / spread);
          for (const [j, b] of touched) normal.set(i, j, normal.get(i, j) + (weight * a * b) / spread ** 2);
        }
      }
    }
    const change = solve(normal, right);
    for (let i = 0; i < size; i++) unknowns[i] = (unknowns[i] as number) + change.get(i, 0);
    // Student's t with one degree of freedom over the two effects of a maker.
    makerWeights.forEach((weight, maker) => {
      const at = count + 2 * maker;
      const squared = ((unknowns[at] as number) ** 2 + (unknowns[at + 1] as number) ** 2) / weight;
      const renewed = (1 + 2) / (1 + squared);
      // The effects themselves stay; they are counted in units of the new deviation.
      const rescale = Math.sqrt(renewed / weight);
      unknowns[at] = (unknowns[at] as number) * rescale;
      unknowns[at + 1] = (unknowns[at + 1] as number) * rescale;
      makerWeights[maker] = renewed;
    });
  }
  return coefficientsOf();
}
