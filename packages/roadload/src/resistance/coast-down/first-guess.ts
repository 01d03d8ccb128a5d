import { leastSquares } from "../least-squares.js";
import type { PreparedRun } from "./simulate.js";

/** Into how many stretches a run is cut for the guess. */
const STRETCHES = 8;

/**
 * Where the fit starts: from the momentum lost over a few long stretches of every run, with integrals by the trapezoidal rule.
 * @internal
 */
export function firstGuess(runs: readonly PreparedRun[], effectiveMass: number, withLinear: boolean) {
  const lines = runs.flatMap((run) => {
    const { time, speed, headWind, tyreFactor, airFactor, gradeForce } = run;
    const stretch = Math.max(1, Math.floor((time.length - 1) / STRETCHES));
    const found: [constant: number, linear: number, quadratic: number, impulse: number][] = [];
    for (let from = 0; from + stretch < time.length; from += stretch) {
      const to = from + stretch;
      let [constant, linear, quadratic] = [0, 0, 0];
      for (let row = from; row < to; row++) {
        const span = (time[row + 1] as number) - (time[row] as number);
        const v = ((speed[row] as number) + (speed[row + 1] as number)) / 2;
        const air = v + ((headWind[row] as number) + (headWind[row + 1] as number)) / 2;
        constant += span * tyreFactor;
        linear += span * tyreFactor * v;
        quadratic += span * airFactor * air * Math.abs(air);
      }
      const lasted = (time[to] as number) - (time[from] as number);
      const lost = effectiveMass * ((speed[from] as number) - (speed[to] as number));
      found.push([constant, linear, quadratic, lost - lasted * gradeForce]);
    }
    return found;
  });
  const column = (k: 0 | 1 | 2 | 3) => Float64Array.from(lines, (line) => line[k]);
  const columns = withLinear ? [column(0), column(1), column(2)] : [column(0), column(2)];
  const solution = leastSquares(columns, column(3))?.solution ?? [];
  const [constant = 0, linear = 0, quadratic = 0] = withLinear ? solution : [solution[0], 0, solution[1]];
  return { constant, linear, quadratic };
}
