import { outsideRule, type TyreTemperatureRule } from "../tyre-temperature.js";
import type { CoastDownFit } from "./fit.js";
import { forceDeviation } from "./force-deviation.js";
import { crossWindWarning } from "./not-corrected.js";
import type { RunRead } from "./read-runs.js";
import { FEWEST_RUNS } from "./spread.js";

/** What warnings are made of. @internal */
export interface Judged {
  readonly runs: readonly RunRead[];
  readonly fit: CoastDownFit;
  readonly rule: TyreTemperatureRule;
  readonly pairs: number;
  /** In °C. */
  readonly reference: number;
}

/** Limits of coast-down procedures, each with where it is from. */
const limits = {
  /** Speeds of a run in km/h: SAE J2263, seen in a summary. */
  speed: { from: 115, to: 15 },
  /** A run does not start faster, in km/h, unless its unit is wrong: common practice, no source. */
  fastest: 180,
  /** A run that covers less than this part of them is said to: common practice, no source. */
  span: 0.7,
  /** Fewest valid pairs: Regulation (EU) 2017/1151, annex XXI, sub-annex 4, for anemometry on board, seen. */
  pairs: 5,
  /** Mean wind in km/h, and grade: SAE J1263, seen in a summary. */
  wind: 16,
  grade: 0.005,
  /** Standard errors that tell a value from zero: common practice, no source. */
  significance: 2,
  /** Speed that the directions are compared at, in km/h: SAE J1263 looks at it first (seen in a summary). */
  judgedAt: 80,
  /** Part of the force there that the directions may differ by: common practice, no source. */
  disagreement: 0.05,
  /** How much more than noise runs may scatter before it is said: common practice, no source. */
  scatter: 2,
} as const;
const JUDGED_AT = /* @__PURE__ */ (() => limits.judgedAt / 3.6)();

/** What a reader of a coast-down should doubt. @internal */
export function coastDownWarnings(judged: Judged): string[] {
  const { runs, rule, pairs, reference } = judged;
  return [
    ...unitWarning(runs),
    ...spanWarning(runs),
    ...pairsWarning(pairs),
    ...linearWarning(judged.fit),
    ...directionWarning(judged),
    ...scatterWarning(judged),
    ...rejectedWarning(judged.fit),
    ...outsideRule(rule, ...runs.map(({ temperature }) => temperature), reference),
    ...windAndGrade(judged),
    ...crossWindWarning(runs),
  ];
}

function unitWarning(runs: readonly RunRead[]): string[] {
  const highest = 3.6 * Math.max(...runs.map(({ speed }) => speed[0] as number));
  if (highest <= limits.fastest) return [];
  return [
    `a run starts at ${highest.toFixed(0)} km/h, procedures start near ${limits.speed.from} km/h: is speedUnit that of the log? A wrong ` +
      "one gives coefficients that look sound",
  ];
}

function spanWarning(runs: readonly RunRead[]): string[] {
  const highest = 3.6 * Math.max(...runs.map(({ speed }) => speed[0] as number));
  const lowest = 3.6 * Math.min(...runs.map(({ speed }) => speed[speed.length - 1] as number));
  const { speed, span } = limits;
  if (highest - lowest >= span * (speed.from - speed.to)) return [];
  return [
    `the runs cover ${highest.toFixed(0)} to ${lowest.toFixed(0)} km/h only, and SAE J2263 asks for ${speed.from} to ${speed.to} km/h: outside ` +
      `${highest.toFixed(0)} to ${lowest.toFixed(0)} km/h the coefficients extrapolate, and they are hard to tell apart`,
  ];
}

function pairsWarning(pairs: number): string[] {
  if (pairs === 0) return ["all runs go the same way: grade and wind that were not given are in the coefficients"];
  if (pairs >= limits.pairs) return [];
  const few = pairs === 1 ? "one pair" : `${pairs} pairs`;
  return [`only ${few} of opposite runs: procedures ask for ${limits.pairs} and more (EU 2017/1151, sub-annex 4)`];
}

function linearWarning({ coefficients, covariance }: CoastDownFit): string[] {
  const deviation = Math.sqrt(Math.max(0, covariance[1]?.[1] as number));
  if (deviation === 0 || Math.abs(coefficients[1]) >= limits.significance * deviation) return [];
  return [
    'the linear coefficient cannot be distinguished from zero: fit terms "A, C", as 40 CFR 1066.310 does, or keep it with its error',
  ];
}

/** How far apart the two directions are at 80 km/h, where noise does not explain it and it matters; in N. */
function disagreementOf({ runs, fit }: Judged): number | undefined {
  const of = (way: "out" | "back") => fit.offsets.filter((_, i) => runs[i]?.direction === way);
  const [out, back] = [of("out"), of("back")];
  if (out.length === 0 || back.length === 0) return undefined;
  const mean = (list: typeof out) => list.reduce((sum, { force }) => sum + force, 0) / list.length;
  const variance = (list: typeof out) =>
    list.reduce((sum, { deviation }) => sum + deviation ** 2, 0) / list.length ** 2;
  const difference = mean(out) - mean(back) + 2 * fit.directional * JUDGED_AT;
  const clear = Math.abs(difference) > 3 * Math.sqrt(variance(out) + variance(back));
  return clear && Math.abs(difference) >= limits.disagreement * forceOf(fit) ? Math.abs(difference) : undefined;
}

/** The disagreement, what it may do to A, and whether the standard errors know of it. */
function directionWarning(judged: Judged): string[] {
  const difference = disagreementOf(judged);
  if (difference === undefined) return [];
  const { fit, runs } = judged;
  const quadratic = fit.coefficients[2];
  const wind = difference / (4 * quadratic * JUDGED_AT);
  const few = (["out", "back"] as const).some(
    (way) => runs.filter(({ direction }) => direction === way).length < FEWEST_RUNS,
  );
  return [
    `the directions disagree by ${difference.toFixed(0)} N (${((100 * difference) / forceOf(fit)).toFixed(0)} % of the force) at ` +
      "80 km/h: a grade or a wind that was not given. A grade cancels in A, a wind w adds C·w² to it" +
      (quadratic > 0
        ? `: were it all wind, ${wind.toFixed(1)} m/s of it, A would be ${(quadratic * wind ** 2).toFixed(1)} N too high`
        : ""),
    ...(few
      ? [
          `the standard error of ${forceDeviation(fit.covariance, JUDGED_AT).toFixed(2)} N at 80 km/h is that of the speeds' noise alone, ` +
            `while the directions disagree by ${difference.toFixed(0)} N: with fewer than ${FEWEST_RUNS} runs each way nothing says how runs ` +
            "differ, and the force is known less well",
        ]
      : []),
  ];
}

function forceOf({ coefficients: [constant, linear, quadratic] }: CoastDownFit): number {
  return constant + (linear + quadratic * JUDGED_AT) * JUDGED_AT;
}

function scatterWarning({ runs, fit }: Judged): string[] {
  const { scatter, speedDeviation } = fit;
  // Scatter below the resolution of any instrument says nothing.
  if (scatter === undefined || runs.length < 4 || speedDeviation < 1e-6 || scatter <= limits.scatter) return [];
  return [
    `runs of one direction differ ${scatter.toFixed(1)} times as much as the noise of their speeds explains (gusts, warm-up): ` +
      "with three runs and more each way this is in the standard errors, with fewer it is not",
  ];
}

function rejectedWarning({ rejected }: CoastDownFit): string[] {
  const rows = rejected.flat();
  const out = rows.filter((each) => each).length;
  // A filter at three standard deviations takes 0.3 % of noise alone.
  if (out <= 0.03 * rows.length) return [];
  return [`${out} of ${rows.length} rows were left out as outliers: look at the residuals before the coefficients`];
}

function windAndGrade(judged: Judged): string[] {
  const { runs } = judged;
  const mean = ({ headWind }: RunRead) => headWind.reduce((sum, value) => sum + value, 0) / headWind.length;
  const wind = 3.6 * Math.max(...runs.map((run) => Math.abs(mean(run))));
  const grade = Math.max(...runs.map((run) => Math.abs(run.grade)));
  return [
    ...(wind > limits.wind
      ? [`a mean wind of ${wind.toFixed(0)} km/h along the road: SAE J1263 allows ${limits.wind} km/h`]
      : []),
    ...(grade > limits.grade ? [`a grade of ${(grade * 100).toFixed(1)} %: SAE J1263 allows less than 0.5 %`] : []),
    // A disagreement of the directions says so already.
    ...(runs.some(({ windGiven }) => windGiven) || disagreementOf(judged) !== undefined
      ? []
      : ["no wind was given: a steady wind w adds about C·w² to A, which opposite runs do not cancel"]),
  ];
}
