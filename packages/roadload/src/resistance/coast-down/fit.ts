import { dot, type LinearFit, leastSquares } from "../least-squares.js";
import { firstGuess } from "./first-guess.js";
import { hampelOutliers } from "./hampel.js";
import { refuse } from "./refuse.js";
import { type PreparedRun, type Simulated, simulate } from "./simulate.js";
import { spreadOf } from "./spread.js";

/** What a fit found, in SI units. @internal */
export interface CoastDownFit {
  /** A, B and C; B is zero when it was not fitted. */
  readonly coefficients: readonly [number, number, number];
  /** Of A, B and C; zero where one was not fitted. */
  readonly covariance: readonly (readonly number[])[];
  /** Standard deviation of the speeds about the fit. */
  readonly speedDeviation: number;
  /** Speed measured less speed fitted, by run and row. */
  readonly residuals: readonly Float64Array[];
  /** Rows left out, by run. */
  readonly rejected: readonly (readonly boolean[])[];
  /** Constant force of each run less that of all, and its standard deviation from the noise of speeds. */
  readonly offsets: readonly { readonly force: number; readonly deviation: number }[];
  /** How much more than noise the runs of a direction scatter, as a ratio; undefined for fewer than two runs each way. */
  readonly scatter: number | undefined;
  /** Force per speed that runs out have more, and runs back less, than the coefficients say: a wind. */
  readonly directional: number;
}

/** The coefficients that all runs share, by the names of what changes with them. @internal */
export type SharedTerm = "linear" | "quadratic" | "directional";

const MOST_ITERATIONS = 30;
/** Change of all speeds together, in m/s, below which a fit has settled: nothing that could be measured. */
const SETTLED = 1e-9;
const MOST_ROUNDS = 5;
/** In m/s, a twentieth of what speed is measured to (0.2 km/h, Regulation (EU) 2017/1151): closer rows are no outliers. */
const RESOLUTION = 0.003;

/**
 * Coefficients that explain all speeds best, in the sense of least squares on the speeds: Gauss-Newton steps on the equation of
 * motion. Errors of the speeds are taken as independent of each other, which those of differences of speeds would not be.
 *
 * Every run has a speed at the start and a constant force of its own, and runs of opposite directions may differ by a force that
 * grows with speed: an unknown grade or wind would else bend the coefficients that all share, as it moves the speeds of a whole
 * run. A is the mean of the constant forces, both directions counting alike, so that grade cancels.
 * @internal
 */
export function fitCoastDown(
  runs: readonly PreparedRun[],
  effectiveMass: number,
  withLinear: boolean,
  filter: boolean,
): CoastDownFit {
  const bothWays = new Set(runs.map(({ direction }) => direction)).size === 2;
  const shared: SharedTerm[] = [
    ...(withLinear ? (["linear"] as const) : []),
    "quadratic",
    ...(bothWays ? (["directional"] as const) : []),
  ];
  let rejected = runs.map(({ time }) => new Array<boolean>(time.length).fill(false));
  for (let round = 1; ; round++) {
    const fit = iterate(runs, effectiveMass, shared, rejected);
    if (!filter || round === MOST_ROUNDS) return { ...fit, rejected };
    const outliers = hampelOutliers(
      fit.residuals.flatMap((run) => [...run]),
      RESOLUTION,
    );
    let next = 0;
    const found = runs.map(({ time }) => Array.from(time, () => outliers[next++] === true));
    if (found.every((run, i) => run.every((out, row) => out === rejected[i]?.[row]))) return { ...fit, rejected };
    rejected = found;
  }
}

function iterate(
  runs: readonly PreparedRun[],
  effectiveMass: number,
  shared: readonly SharedTerm[],
  rejected: readonly (readonly boolean[])[],
): Omit<CoastDownFit, "rejected"> {
  const guess = firstGuess(runs, effectiveMass, shared.includes("linear"));
  const common = { linear: guess.linear, quadratic: guess.quadratic, directional: 0 };
  const own = runs.map(({ speed }) => ({ constant: guess.constant, start: speed[0] as number }));
  for (let iteration = 1; ; iteration++) {
    const blocks = runs.map((run, i) => {
      const { constant, start } = own[i] as (typeof own)[number];
      const directional = signOf(run) * common.directional;
      const simulated = simulate(run, { ...common, constant, directional }, start, effectiveMass);
      return blockOf(run, simulated, shared, rejected[i] as readonly boolean[]);
    });
    const columns = shared.map((_, k) => joined(blocks.map((block) => block.columns[k] as Float64Array)));
    const rows = joined(blocks.map((block) => block.rows));
    const step = leastSquares(columns, rows);
    if (step === undefined) refuse('the speeds do not tell the coefficients apart: log a wider span, or fit "A, C"');
    let change = 0;
    for (const [k, term] of shared.entries()) {
      const by = step.solution[k] as number;
      common[term] += by;
      const column = columns[k] as Float64Array;
      change = Math.max(change, Math.abs(by) * Math.sqrt(dot(column, column)));
    }
    for (const [i, block] of blocks.entries()) {
      const by = ownStep(block, step);
      const mine = own[i] as (typeof own)[number];
      own[i] = { constant: mine.constant + by.constant, start: mine.start + by.start };
      change = Math.max(change, Math.abs(by.constant) * block.constantLength);
    }
    if (!Number.isFinite(change)) refuse("the fit does not settle: the log is no coast-down, or a unit is wrong");
    if (change < SETTLED) {
      const constants = own.map(({ constant }) => constant);
      const found = { ...common, constants, rows, inverse: step.inverse };
      return { ...spreadOf(runs, blocks, shared, found), residuals: blocks.map(({ residual }) => residual) };
    }
    if (iteration === MOST_ITERATIONS) refuse("the fit does not settle: the log is no coast-down, or a unit is wrong");
  }
}

/** The rows of a run that are kept, with what is its own taken out of them. @internal */
export interface Block {
  /** One column a shared term. */
  readonly columns: readonly Float64Array[];
  readonly rows: Float64Array;
  /** What was taken out of the columns, then of the rows, in the direction of the speed at the start, and of the constant. */
  readonly alongStart: readonly number[];
  readonly alongConstant: readonly number[];
  readonly startLength: number;
  readonly constantLength: number;
  /** How much of the constant's column lies along that of the start. */
  readonly overlap: number;
  /** All rows, those left out as well. */
  readonly residual: Float64Array;
}

function blockOf(
  run: PreparedRun,
  { speed, byConstant, byLinear, byQuadratic, byStart }: Simulated,
  shared: readonly SharedTerm[],
  rejected: readonly boolean[],
): Block {
  const residual = run.speed.map((value, row) => value - (speed[row] as number));
  const kept = (column: Float64Array): Float64Array => column.filter((_, row) => rejected[row] !== true);
  const changes = {
    linear: byLinear,
    quadratic: byQuadratic,
    // The same force as the linear one's, but not of the tyres.
    directional: byLinear.map((value) => (signOf(run) * value) / run.tyreFactor),
  };
  const start = kept(byStart);
  const startLength = Math.sqrt(dot(start, start));
  const alongStartUnit = start.map((value) => value / startLength);
  const constant = kept(byConstant);
  const overlap = dot(constant, alongStartUnit);
  const rest = less(constant, overlap, alongStartUnit);
  const constantLength = Math.sqrt(dot(rest, rest));
  if (!(startLength > 0 && constantLength > 0))
    refuse("a run has too few rows left: it does not fit the others at all");
  const alongConstantUnit = rest.map((value) => value / constantLength);
  const given = [...shared.map((term) => changes[term]), residual].map(kept);
  const alongStart = given.map((column) => dot(column, alongStartUnit));
  const alongConstant = given.map((column) => dot(column, alongConstantUnit));
  const free = given.map((column, k) =>
    less(less(column, alongStart[k] as number, alongStartUnit), alongConstant[k] as number, alongConstantUnit),
  );
  const rows = free.pop() as Float64Array;
  return { columns: free, rows, alongStart, alongConstant, startLength, constantLength, overlap, residual };
}

/** The step of a run's own constant force and speed at the start that goes with a step of what is shared. */
function ownStep(block: Block, { solution }: LinearFit): { readonly constant: number; readonly start: number } {
  const { alongStart, alongConstant, startLength, constantLength, overlap } = block;
  const left = (along: readonly number[]): number =>
    solution.reduce((sum, by, k) => sum - by * (along[k] as number), along[solution.length] as number);
  const constant = left(alongConstant) / constantLength;
  return { constant, start: (left(alongStart) - constant * overlap) / startLength };
}

function signOf({ direction }: PreparedRun): 1 | -1 {
  return direction === "out" ? 1 : -1;
}

function less(column: Float64Array, part: number, unit: Float64Array): Float64Array {
  return column.map((value, row) => value - part * (unit[row] as number));
}

function joined(parts: readonly Float64Array[]): Float64Array {
  const whole = new Float64Array(parts.reduce((sum, { length }) => sum + length, 0));
  let from = 0;
  for (const part of parts) {
    whole.set(part, from);
    from += part.length;
  }
  return whole;
}
