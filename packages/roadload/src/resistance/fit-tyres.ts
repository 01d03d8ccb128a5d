import { describeGiven, InputError, readOptions, type Source, sourceLine } from "@tarewatt/units";
import { readWords } from "../check/read-words.js";
import { leastSquares } from "./least-squares.js";
import { HIGHEST_COEFFICIENT, madeTyres, parabola, type TyreFit, type Tyres } from "./tyres.js";

/** Options of {@link fitTyres}. */
export interface FitTyresOptions {
  /** What they are, in words. */
  readonly name: string;
  /**
   * Rolling resistance coefficient at a speed.
   * @param speed - speed in m/s
   */
  readonly coefficientAt: (speed: number) => number;
  /** Speed up to which the fit shall hold, in m/s, 5 to 100; 40 when left out. */
  readonly upToSpeed?: number | undefined;
  /** Where they are from. */
  readonly source: Source;
}

/** Into how many equal parts the speeds of a fit are cut. */
const FIT_STEPS = 100;

/** A fit that is worse than this somewhere is said to be: common practice, no source. */
const POOR_FIT = 0.02;

/**
 * Tyres from any curve of c_rr over speed: the parabola nearest to it, with the largest error of the fit.
 *
 * @param options - name, curve, range of speeds, source
 * @returns tyres with `fit`; with a warning where the parabola is more than 2 % off
 * @throws InputError `NOT_A_NUMBER` when the curve gives no finite number, `OUT_OF_RANGE`, `WRONG_CHOICE`, and what `readOptions`
 *   throws
 * @example
 * const source = { document: "invented", status: "definition" } as const;
 * const own = fitTyres({ name: "steep", coefficientAt: (v) => 0.008 + 1e-7 * v ** 2.5, source });
 * own.fit?.largestError; // 0.003...
 */
export function fitTyres(options: FitTyresOptions): Tyres {
  const { upToSpeed = 40 } = readOptions(
    "fitTyres",
    options,
    { upToSpeed: { unit: "1", atLeast: 5, atMost: 100, optional: true } },
    ["name", "coefficientAt", "source"],
  );
  const { coefficientAt, source } = options;
  const name = readWords("name", options.name);
  sourceLine(source);
  if (typeof coefficientAt !== "function") {
    throw new InputError("WRONG_CHOICE", `coefficientAt must be a function: got ${describeGiven(coefficientAt)}`, {
      name: "coefficientAt",
    });
  }
  const speeds = Float64Array.from({ length: FIT_STEPS + 1 }, (_, i) => (upToSpeed * i) / FIT_STEPS);
  const wanted = speeds.map((speed) => asked(coefficientAt, speed));
  const columns = [0, 1, 2].map((power) => speeds.map((speed) => speed ** power));
  const [constant = 0, linear = 0, quadratic = 0] = leastSquares(columns, wanted)?.solution ?? [];
  const three = [constant, linear, quadratic] as const;
  const fit = Array.from(speeds, (atSpeed, i): TyreFit => {
    const truth = wanted[i] as number;
    return { largestError: Math.abs(parabola(three, atSpeed) / truth - 1), atSpeed, upToSpeed };
  }).reduce((a, b) => (b.largestError > a.largestError ? b : a));
  const poor = `the parabola for '${name}' is up to ${(100 * fit.largestError).toFixed(1)} % off below ${upToSpeed} m/s`;
  return Object.freeze({
    ...madeTyres(name, three, source),
    fit: Object.freeze(fit),
    warnings: Object.freeze(fit.largestError > POOR_FIT ? [poor] : []),
  });
}

function asked(coefficientAt: FitTyresOptions["coefficientAt"], speed: number): number {
  let given: unknown;
  try {
    given = coefficientAt(speed);
  } catch (reason) {
    const why = reason instanceof Error ? reason.message : describeGiven(reason);
    throw new InputError("WRONG_CHOICE", `coefficientAt failed at ${speed} m/s: ${why}`, { speed });
  }

  if (typeof given === "number" && given > 0 && given <= HIGHEST_COEFFICIENT) return given;
  throw new InputError(
    typeof given === "number" && Number.isFinite(given) ? "OUT_OF_RANGE" : "NOT_A_NUMBER",
    `coefficientAt must give a coefficient above 0 and at most ${HIGHEST_COEFFICIENT}: got ${describeGiven(given)} at ${speed} m/s`,
    { speed },
  );
}
