import {
  type EnergyPerDistance,
  type Force,
  type Mass,
  type Power,
  type Quantity,
  type Relation,
  relation,
} from "@tarewatt/units";
import { withinMaker } from "./within-maker.js";

/** Inputs of {@link certifiedOverExpected}. */
export interface CertifiedOverExpectedInputs {
  /** Unadjusted consumption of the certificate, at the wall. */
  readonly certified: Quantity<EnergyPerDistance>;
  /** What was to be expected of it, maker unknown. */
  readonly expected: Quantity<EnergyPerDistance>;
}

/**
 * How much more a certificate says than was to be expected, as a logarithm: positive for more.
 *
 * @example
 * certifiedOverExpected({ certified: q("231 Wh/mi"), expected: q("220 Wh/mi") }); // 0.0488
 */
export const certifiedOverExpected: Relation<CertifiedOverExpectedInputs, number> = /* @__PURE__ */ relation({
  name: "certified over expected, logarithm",
  inputs: {
    certified: { symbol: "e_c", unit: "Wh/mi", meaning: "certified consumption", above: 0 },
    expected: { symbol: "e_x", unit: "Wh/mi", meaning: "expected consumption, maker unknown", above: 0 },
  },
  result: { symbol: "r", unit: "1" },
  expression: "ln(e_c/e_x)",
  source: { document: "definition of a relative difference that adds up", status: "definition" },
  evaluate: ({ certified, expected }) => Math.log(certified / expected),
});

/** Inputs of {@link memoryOfYears}. */
export interface MemoryOfYearsInputs {
  /** Model years between two vehicles of one maker. */
  readonly years: number;
  /** Model years after which it is 1/e. */
  readonly memory: number;
}

/**
 * Correlation of what two vehicles of one maker share, by the model years between them.
 *
 * @example
 * memoryOfYears({ years: 3, memory: 6 }); // 0.607
 */
export const memoryOfYears: Relation<MemoryOfYearsInputs, number> = /* @__PURE__ */ relation({
  name: "correlation over model years",
  inputs: {
    years: { symbol: "Δy", unit: "1", meaning: "model years between the two", atLeast: 0 },
    memory: { symbol: "τ", unit: "1", meaning: "model years after which it is 1/e", above: 0 },
  },
  result: { symbol: "g", unit: "1" },
  expression: "exp(−Δy/τ)",
  source: {
    document: "Gaussian Processes for Machine Learning (MIT Press, 2006)",
    section: "4.2.1, exponential covariance: a quantity that drifts back to its mean",
    status: "memory",
  },
  evaluate: ({ years, memory }) => Math.exp(-years / memory),
});

/** Inputs of {@link likenessOfInstallations}. */
export interface LikenessOfInstallationsInputs {
  /** Mass of the vehicle, with the rotating parts. */
  readonly mass: Quantity<Mass>;
  /** Mass of the comparator, with the rotating parts. */
  readonly comparatorMass: Quantity<Mass>;
  /** Road load of the vehicle at 50 mph. */
  readonly force: Quantity<Force>;
  /** Road load of the comparator at 50 mph. */
  readonly comparatorForce: Quantity<Force>;
  /** Rated power of the vehicle. */
  readonly power: Quantity<Power>;
  /** Rated power of the comparator. */
  readonly comparatorPower: Quantity<Power>;
}

/**
 * How much alike the installations of two vehicles of one maker are: 1 for alike in mass, road load and rated power, towards 0.
 *
 * @example
 * likenessOfInstallations({
 *   ...{ mass: q("2000 kg"), comparatorMass: q("2200 kg"), force: q("400 N"), comparatorForce: q("400 N") },
 *   ...{ power: q("150 kW"), comparatorPower: q("200 kW") },
 * }); // 0.693
 */
export const likenessOfInstallations: Relation<LikenessOfInstallationsInputs, number> = /* @__PURE__ */ relation({
  name: "likeness of installations",
  inputs: {
    mass: { symbol: "m", unit: "kg", meaning: "mass with the rotating parts", above: 0 },
    comparatorMass: { symbol: "m_c", unit: "kg", meaning: "mass of the comparator with the rotating parts", above: 0 },
    force: { symbol: "F", unit: "N", meaning: "road load at 50 mph", above: 0 },
    comparatorForce: { symbol: "F_c", unit: "N", meaning: "road load of the comparator at 50 mph", above: 0 },
    power: { symbol: "P", unit: "kW", meaning: "rated power", above: 0 },
    comparatorPower: { symbol: "P_c", unit: "kW", meaning: "rated power of the comparator", above: 0 },
  },
  result: { symbol: "s", unit: "1" },
  // Written out, so that a bundler may leave the relation out; that the figures are those of `withinMaker` is tested.
  expression: "exp(−½·((ln(m/m_c)/0.15)² + (ln(F/F_c)/0.15)² + (ln(P/P_c)/0.5)²))",
  source: {
    document: "Gaussian Processes for Machine Learning (MIT Press, 2006)",
    section: "4.2.1, squared exponential covariance",
    status: "memory",
  },
  evaluate: ({ mass, comparatorMass, force, comparatorForce, power, comparatorPower }) =>
    Math.exp(
      -0.5 *
        ((Math.log(mass / comparatorMass) / withinMaker.likeBody) ** 2 +
          (Math.log(force / comparatorForce) / withinMaker.likeBody) ** 2 +
          (Math.log(power / comparatorPower) / withinMaker.likePower) ** 2),
    ),
});

/** Inputs of {@link pullOfComparator}. */
export interface PullOfComparatorInputs {
  /** What one unit of the comparator's city result counts for. */
  readonly cityShare: number;
  /** How much more the comparator's city result is than expected, as a logarithm. */
  readonly cityMore: number;
  /** What one unit of the comparator's highway result counts for. */
  readonly highwayShare: number;
  /** How much more the comparator's highway result is than expected, as a logarithm. */
  readonly highwayMore: number;
}

/**
 * What one comparator adds to the logarithm of a consumption. The shares come from the covariances of all of them.
 *
 * @example
 * pullOfComparator({ cityShare: 0.4, cityMore: 0.05, highwayShare: 0.2, highwayMore: 0.03 }); // 0.026
 */
export const pullOfComparator: Relation<PullOfComparatorInputs, number> = /* @__PURE__ */ relation({
  name: "pull of a comparator, logarithm",
  inputs: {
    cityShare: { symbol: "λ_c", unit: "1", meaning: "what its city result counts for" },
    cityMore: { symbol: "r_c", unit: "1", meaning: "its city result over expected, logarithm" },
    highwayShare: { symbol: "λ_h", unit: "1", meaning: "what its highway result counts for" },
    highwayMore: { symbol: "r_h", unit: "1", meaning: "its highway result over expected, logarithm" },
  },
  result: { symbol: "p", unit: "1" },
  expression: "λ_c·r_c + λ_h·r_h",
  source: {
    document: "Gaussian Processes for Machine Learning (MIT Press, 2006)",
    section: "2.2, linear predictor",
    status: "memory",
  },
  evaluate: ({ cityShare, cityMore, highwayShare, highwayMore }) => cityShare * cityMore + highwayShare * highwayMore,
});

/** Inputs of {@link calibratedConsumption}. */
export interface CalibratedConsumptionInputs {
  /** What is to be expected, maker unknown. */
  readonly expected: Quantity<EnergyPerDistance>;
  /** What the comparators say, as a logarithm: positive for more. */
  readonly pull: number;
}

/**
 * Consumption that is likely after the comparators have had their say.
 *
 * @example
 * calibratedConsumption({ expected: q("220 Wh/mi"), pull: 0.05 }); // 231.3 Wh/mi
 */
export const calibratedConsumption: Relation<
  CalibratedConsumptionInputs,
  Quantity<EnergyPerDistance>
> = /* @__PURE__ */ relation({
  name: "likely consumption, maker known",
  inputs: {
    expected: { symbol: "e_x", unit: "Wh/mi", meaning: "expected consumption, maker unknown", above: 0 },
    pull: { symbol: "p", unit: "1", meaning: "what the comparators say, logarithm" },
  },
  result: { symbol: "e", unit: "Wh/mi" },
  expression: "e_x·exp(p)",
  source: { document: "definition of the logarithm", status: "definition" },
  evaluate: ({ expected, pull }) => expected * Math.exp(pull),
});

/** Inputs of {@link narrowedInterval}. */
export interface NarrowedIntervalInputs {
  /** End of the interval over its middle, maker unknown. */
  readonly factor: number;
  /** Standard deviation that the comparators leave, per the one without them. */
  readonly left: number;
}

/**
 * End of an interval over its middle after the comparators have had their say: the logarithm shrinks with the deviation.
 *
 * @example
 * narrowedInterval({ factor: 1.16, left: 0.5 }); // 1.077
 */
export const narrowedInterval: Relation<NarrowedIntervalInputs, number> = /* @__PURE__ */ relation({
  name: "end of the interval over its middle, maker known",
  inputs: {
    factor: { symbol: "x", unit: "1", meaning: "end of the interval over its middle, maker unknown", atLeast: 1 },
    left: {
      symbol: "q",
      unit: "1",
      meaning: "deviation left, per deviation without comparators",
      atLeast: 0,
      atMost: 1,
    },
  },
  result: { symbol: "x_m", unit: "1" },
  expression: "x^q",
  source: { document: "scaling of a normal distribution of logarithms", status: "definition" },
  evaluate: ({ factor, left }) => factor ** left,
});
