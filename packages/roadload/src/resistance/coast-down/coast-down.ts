import {
  type Density,
  describeGiven,
  InputError,
  type Mass,
  type Quantity,
  quantity,
  readNumber,
  readOptions,
  type Speed,
  type Temperature,
} from "@tarewatt/units";
import type { AirDensityOptions } from "../../air/air-density.js";
import { referenceAir } from "../../air/reference-air.js";
import type { TimeUnit } from "../../cycle/read-table.js";
import type { SpeedUnit } from "../../cycle/speed-unit.js";
import type { Fraction } from "../../fraction.js";
import { certifiedRoadLoad } from "../certified-road-load.js";
import { effectiveMass } from "../effective-mass.js";
import { gradeResistance } from "../grade-resistance.js";
import type { RoadLoadCoefficients } from "../road-load.js";
import { cosineOf } from "../rolling-resistance.js";
import { defaultRotatingMassFraction } from "../rotating-mass.js";
import {
  readTemperatureRule,
  type TyreTemperatureRule,
  type TyreTemperatureRuleName,
  tyreTemperatureFactor,
} from "../tyre-temperature.js";
import { type CoastDownResult, residualsOf, runResult } from "./coast-down-result.js";
import { explain } from "./explain.js";
import { type CoastDownFit, fitCoastDown } from "./fit.js";
import { forceDeviation } from "./force-deviation.js";
import { notCorrected } from "./not-corrected.js";
import { type CoastDownRun, type RunRead, readRuns } from "./read-runs.js";
import type { PreparedRun } from "./simulate.js";
import { coastDownWarnings } from "./warnings.js";

/** Options of {@link coastDown}. */
export interface CoastDownOptions {
  /** The runs, 1 to 200. */
  readonly runs: readonly CoastDownRun[];
  /** Unit of the speeds. */
  readonly speedUnit: SpeedUnit;
  /** Unit of the times; s when left out. */
  readonly timeUnit?: TimeUnit | undefined;
  /** Mass as tested, with driver and instruments. */
  readonly testMass: Quantity<Mass>;
  /** Equivalent mass of the rotating parts as part of the mass, 0 to 0.5; {@link defaultRotatingMassFraction} when left out. */
  readonly rotatingMassFraction?: Fraction | undefined;
  /** Air during the test, for all runs that do not say their own. */
  readonly air: AirDensityOptions;
  /** Which coefficients are fitted, the others being zero: all when left out. 40 CFR 1066.310 fits A and C. */
  readonly terms?: "A, B, C" | "A, C" | undefined;
  /** Density of the air that the coefficients shall refer to; that of UN GTR No. 15 when left out. */
  readonly referenceDensity?: Quantity<Density> | undefined;
  /** Temperature that they shall refer to; 20 °C when left out. */
  readonly referenceTemperature?: Quantity<Temperature> | undefined;
  /** How tyres change with temperature, a key of {@link tyreTemperatureRules}; `"gtr15"` when left out. */
  readonly temperatureRule?: TyreTemperatureRuleName | undefined;
  /** Whether rows that no noise explains are left out, by a Hampel filter; they are when left out. */
  readonly outliers?: "leave out" | "keep" | undefined;
}

/**
 * Road load A + B·v + C·v² from logged coast-downs, at reference conditions.
 *
 * The equation of motion, M_e·dv/dt = −(A·cos α + B·v)·f_T − C·(ρ/ρ_ref)·v_air·|v_air| − M·g·sin α, is integrated for
 * every run with the run's own wind, grade, temperature and air, and fitted to all speeds by least squares. Nothing is
 * differentiated, so the errors of the speeds stay independent of each other.
 *
 * B and C are those of all runs. A is the mean of one constant force a run, both directions counting alike, and the directions may
 * differ by a force that grows with speed: so a grade that was not given cancels, and a steady wind leaves C·w² in A. With three
 * runs and more each way, how they scatter is in the standard errors: see `runs[].offset`, too. With fewer they are those of the
 * speeds' noise alone, far too small when the directions disagree, which a warning says with both numbers.
 *
 * The tyre temperature rule is applied to A and B, the density of the air to C, as UN GTR No. 15 annex 4 does (from memory). Yaw is
 * not corrected, and `notCorrected` says why; a `crossWind` beyond what SAE J1263 allows gives a warning. Rows beyond three robust standard deviations are left out (Hampel filter of 40 CFR 1037.528 (g), here over the
 * residuals of all rows).
 *
 * @param options - runs, units, mass, air, and what the coefficients shall refer to
 * @returns the road load with its errors, residuals, and what to doubt
 * @throws InputError `EMPTY`, `TOO_LONG`, `TIME_NOT_INCREASING`, `NOT_A_NUMBER`, `OUT_OF_RANGE` (every bad row of a run stands in
 *   `details.rows`), `INCONSISTENT`, `WRONG_CHOICE`, `NOT_VALID_HERE` when no coefficients explain the speeds, and what
 *   `readOptions` and `airDensity` throw
 * @example
 * const load = roadLoad({ mass: q("2000 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.01, airDensity: q("1.189 kg/m³") });
 * const { time, speed } = simulateCoastDown({ load, from: q("120 km/h"), to: q("20 km/h"), step: q("1 s") });
 * const found = coastDown({
 *   runs: [{ direction: "out", time, speed }, { direction: "back", time, speed }], speedUnit: "m/s",
 *   testMass: q("2000 kg"), air: { temperature: q("20 °C"), pressure: q("100.05 kPa") },
 * });
 * found.load.coefficients.constant; // 196 N
 * @example
 * // A log kept as CSV: speedTraceFromCsv reads it into s and m/s, one text a run.
 * const load = roadLoad({ mass: q("2000 kg"), dragArea: q("0.7 m²"), rollingResistanceCoefficient: 0.01, airDensity: q("1.189 kg/m³") });
 * const logged = simulateCoastDown({ load, from: q("120 km/h"), to: q("20 km/h"), step: q("1 s") });
 * const rows = logged.time.map((time, row) => `${time},${3.6 * (logged.speed[row] ?? 0)}`);
 * const text = ["time (s),speed (km/h)", ...rows].join("\n");
 * const { time, speed } = speedTraceFromCsv({ name: "run 1", text });
 * const air = { temperature: q("20 °C"), pressure: q("100.05 kPa") };
 * const found = coastDown({ runs: [{ direction: "out", time, speed }], speedUnit: "m/s", testMass: q("2000 kg"), air });
 * found.load.coefficients.constant; // 196 N
 */
export function coastDown(options: CoastDownOptions): CoastDownResult {
  const read = readOptions(
    "coastDown",
    options,
    {
      testMass: { unit: "kg", above: 0, atMost: 100_000 },
      rotatingMassFraction: { unit: "1", atLeast: 0, atMost: 0.5, optional: true },
      referenceDensity: { unit: "kg/m³", above: 0.1, atMost: 2, optional: true },
      referenceTemperature: { unit: "°C", atLeast: 15, atMost: 30, optional: true },
    },
    ["runs", "speedUnit", "timeUnit?", "air", "terms?", "temperatureRule?", "outliers?"],
  );
  const { timeUnit = "s", speedUnit, terms = "A, B, C", outliers = "leave out" } = options;
  choice("speedUnit", speedUnit, ["m/s", "km/h", "mph"]);
  choice("timeUnit", timeUnit, ["s", "min", "h"]);
  choice("terms", terms, ["A, B, C", "A, C"]);
  choice("outliers", outliers, ["leave out", "keep"]);
  const rule = readTemperatureRule(options.temperatureRule);
  const reference = {
    density: options.referenceDensity ?? referenceAir.wltp.density,
    temperature: options.referenceTemperature ?? quantity(20, "°C"),
  };
  const runs = readRuns(options.runs, { time: timeUnit, speed: speedUnit }, options.air);
  const mass = read.testMass;
  const rotatingMassFraction = read.rotatingMassFraction ?? defaultRotatingMassFraction.value;
  const prepared = runs.map((run) => prepare(run, mass, reference, rule));
  const me = effectiveMass.of({ mass, rotatingMassFraction });
  const fit = fitCoastDown(prepared, me, terms === "A, B, C", outliers === "leave out");
  assertPlausible(fit);
  const load = certifiedRoadLoad({
    ...coefficientsOf(fit.coefficients),
    conditions: {
      testMass: options.testMass,
      airDensity: reference.density,
      temperature: reference.temperature,
      standard: `coast-down of ${runs.length} runs, tyres after ${rule.name}`,
    },
    rotatingMassFraction,
  });
  const deviations = [0, 1, 2].map((k) => Math.sqrt(Math.max(0, fit.covariance[k]?.[k] as number)));
  const pairs = Math.min(
    ...(["out", "back"] as const).map((way) => runs.filter(({ direction }) => direction === way).length),
  );
  return Object.freeze({
    load,
    standardErrors: coefficientsOf(deviations as unknown as readonly [number, number, number]),
    covariance: Object.freeze(fit.covariance.map((row) => Object.freeze([...row]))),
    forceAt: (at: Quantity<Speed>) => {
      const speed = readNumber("speed", at, { unit: "m/s", atLeast: 0, atMost: 150 });
      const standardError = quantity(forceDeviation(fit.covariance, speed), "N");
      return Object.freeze({ force: load.at(at).total, standardError });
    },
    pairs,
    runs: Object.freeze(runs.map(({ direction }, i) => runResult(direction, fit, i))),
    speedDeviation: quantity(fit.speedDeviation, "m/s"),
    residuals: Object.freeze(residualsOf(runs, fit)),
    notCorrected: Object.freeze(notCorrected(runs)),
    warnings: Object.freeze([
      ...load.warnings,
      ...coastDownWarnings({ runs, fit, rule, pairs, reference: reference.temperature.in("°C") }),
    ]),
    working: () =>
      explain(runs[0] as RunRead, { mass, rotatingMassFraction, rule, reference: reference.temperature, load }),
  });
}

function choice(name: string, given: unknown, allowed: readonly string[]): void {
  if ((allowed as readonly unknown[]).includes(given)) return;
  const listed = allowed.map((each) => `"${each}"`).join(" or ");
  throw new InputError("WRONG_CHOICE", `${name} must be ${listed}: got ${describeGiven(given)}`, { name, allowed });
}

/** Refuses coefficients that no vehicle has before the road load does, with what to do about the log. */
function assertPlausible({ coefficients, covariance }: CoastDownFit): void {
  const [constant, , quadratic] = coefficients;
  if (constant >= 0 && quadratic >= 0) return;
  const said = (value: number, k: number) =>
    `${value.toPrecision(4)} ± ${Math.sqrt(covariance[k]?.[k] ?? 0).toPrecision(2)}`;
  throw new InputError(
    "NOT_VALID_HERE",
    `coastDown: the fit gives A = ${said(constant, 0)} N and C = ${said(quadratic, 2)} N/(m/s)², and neither can be negative: ` +
      'log a wider span of speeds, fit "A, C", or check grade, wind and units',
    { constant, quadratic },
  );
}

interface Reference {
  readonly density: Quantity<Density>;
  readonly temperature: Quantity<Temperature>;
}

function prepare(run: RunRead, mass: number, reference: Reference, rule: TyreTemperatureRule): PreparedRun {
  const { direction, time, speed, headWind, grade, density, temperature } = run;
  const from = reference.temperature.in("°C");
  return {
    ...{ direction, time, speed, headWind },
    tyreFactor: tyreTemperatureFactor.of({ slope: rule.slope, reference: rule.reference, from, to: temperature }),
    airFactor: density / reference.density.in("kg/m³"),
    gradeForce: gradeResistance.of({ mass, grade }),
    cosine: cosineOf(grade),
  };
}

function coefficientsOf([constant, linear, quadratic]: readonly [number, number, number]): RoadLoadCoefficients {
  return Object.freeze({
    constant: quantity(constant, "N"),
    linear: quantity(linear, "N/(m/s)"),
    quadratic: quantity(quadratic, "N/(m/s)²"),
  });
}
