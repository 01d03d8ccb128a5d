import { type Force, type Quantity, quantity, type Speed, type Step } from "@tarewatt/units";
import type { CertifiedRoadLoad, RoadLoadCoefficients } from "../road-load.js";
import type { CoastDownFit } from "./fit.js";
import type { RunRead } from "./read-runs.js";

/** A row of a coast-down beside its fit: data of a figure. */
export interface CoastDownResidual {
  /** Run, counted from 1. */
  readonly run: number;
  /** Row of the run, counted from 1. */
  readonly row: number;
  /** Time as logged, in s. */
  readonly time: number;
  /** Speed as logged, in m/s. */
  readonly speed: number;
  /** Speed logged less speed fitted, in m/s. */
  readonly residual: number;
  /** Whether the row was left out as an outlier. */
  readonly leftOut: boolean;
}

/** A force that was fitted, and how well it is known. */
export interface FittedForce {
  /** The force. */
  readonly force: Quantity<Force>;
  /** Its standard error. */
  readonly standardError: Quantity<Force>;
}

/** What a coast-down says about a vehicle. Made by {@link coastDown}. */
export interface CoastDownResult {
  /** The road load, at the reference conditions. */
  readonly load: CertifiedRoadLoad;
  /**
   * Standard error of each coefficient, from the noise of the speeds or, with three runs and more each way, from how the runs
   * scatter, whichever is more; zero for one that was not fitted.
   */
  readonly standardErrors: RoadLoadCoefficients;
  /** Covariance of A, B and C in SI units (N, N/(m/s), N/(m/s)²): rows and columns in this order. */
  readonly covariance: readonly (readonly number[])[];
  /**
   * Force on a level road in still air at the reference conditions, with its standard error.
   * @param speed - 0 to 150 m/s
   * @throws InputError `OUT_OF_RANGE`, `NEGATIVE`, `WRONG_DIMENSION`
   */
  forceAt(speed: Quantity<Speed>): FittedForce;
  /** Number of pairs of opposite runs. */
  readonly pairs: number;
  /** Runs, in the order given. */
  readonly runs: readonly {
    /** Which way it went. */
    readonly direction: "out" | "back";
    /** Rows used. */
    readonly used: number;
    /** Rows left out as outliers, counted from 1. */
    readonly leftOut: readonly number[];
    /** Constant force that this run has more than A: grade, wind or a warm-up that nobody gave. */
    readonly offset: Quantity<Force>;
  }[];
  /** Standard deviation of the speeds about the fit. */
  readonly speedDeviation: Quantity<Speed>;
  /** Every row beside the fit. */
  readonly residuals: readonly CoastDownResidual[];
  /** What the analysis leaves in the coefficients, and why: yaw always, wind that was not given. */
  readonly notCorrected: readonly string[];
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /** How the numbers came about: the conditions of the first run, and the force at 80 km/h. */
  working(): Step[];
}

/** @internal */
export function runResult(
  direction: "out" | "back",
  { rejected, offsets }: CoastDownFit,
  run: number,
): CoastDownResult["runs"][number] {
  const flags = rejected[run] as readonly boolean[];
  const leftOut = flags.flatMap((out, row) => (out ? [row + 1] : []));
  return Object.freeze({
    direction,
    used: flags.length - leftOut.length,
    leftOut: Object.freeze(leftOut),
    offset: quantity(offsets[run]?.force as number, "N"),
  });
}

/** @internal */
export function residualsOf(runs: readonly RunRead[], { residuals, rejected }: CoastDownFit): CoastDownResidual[] {
  return runs.flatMap(({ time, speed }, run) =>
    Array.from(time, (seconds, row) =>
      Object.freeze({
        run: run + 1,
        row: row + 1,
        time: seconds,
        speed: speed[row] as number,
        residual: residuals[run]?.[row] as number,
        leftOut: rejected[run]?.[row] === true,
      }),
    ),
  );
}
