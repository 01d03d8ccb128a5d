import {
  type Density,
  describeGiven,
  type Force,
  type ForcePerSpeed,
  type ForcePerSpeedSquared,
  InputError,
  type Mass,
  type Quantity,
  quantity,
  readOptions,
  type Speed,
  type Temperature,
} from "@tarewatt/units";
import { readWordsIfGiven } from "../check/read-words.js";
import { unusual } from "../check/unusual.js";
import { unusualCoefficients } from "../check/unusual-coefficients.js";
import type { Fraction } from "../fraction.js";
import { forcesAt, readPlace } from "./forces-at.js";
import { gradeResistance } from "./grade-resistance.js";
import { type Loss, readLosses } from "./loss.js";
import type { CertifiedConditions, CertifiedRoadLoad, CertifiedRoadLoadAt, RoadOptions } from "./road-load.js";
import { cosineOf } from "./rolling-resistance.js";
import { defaultRotatingMassFraction } from "./rotating-mass.js";
import { certifiedResistance } from "./total-resistance.js";

/** The losses that a coast-down in neutral holds: common practice, no source. */
export const coastDownLosses = /* @__PURE__ */ Object.freeze([
  "air",
  "tyres",
  "wheel bearings",
  "driveline spin",
] as const satisfies readonly Loss[]);

/** What has to be accelerated. */
export type InertiaBasis = "test mass and rotating parts" | "test mass";

/** Options of {@link certifiedRoadLoad}. */
export interface CertifiedRoadLoadOptions {
  /** Constant coefficient (A, f0), of the target, not of a dynamometer's setting. */
  readonly constant: Quantity<Force>;
  /** Linear coefficient (B, f1); may be negative. */
  readonly linear: Quantity<ForcePerSpeed>;
  /** Quadratic coefficient (C, f2). */
  readonly quadratic: Quantity<ForcePerSpeedSquared>;
  /** What the coefficients refer to. */
  readonly conditions: {
    /** Test mass, or equivalent test weight. */
    readonly testMass: Quantity<Mass>;
    /** Density of the reference air. */
    readonly airDensity?: Quantity<Density> | undefined;
    /** Reference temperature. */
    readonly temperature?: Quantity<Temperature> | undefined;
    /** Procedure that they come from, in words. */
    readonly standard?: string | undefined;
  };
  /** The losses that the coefficients hold; {@link coastDownLosses} when left out. */
  readonly holds?: readonly Loss[] | undefined;
  /** What has to be accelerated; test mass and rotating parts, as on the road, when left out. */
  readonly inertia?: InertiaBasis | undefined;
  /** Equivalent mass of the rotating parts as part of the test mass, 0 to 0.5; {@link defaultRotatingMassFraction} when left out. */
  readonly rotatingMassFraction?: Fraction | undefined;
}

/** Speed up to which a road load must not be negative, in m/s (130 km/h). */
const HIGHEST_CHECKED_SPEED = 36;

/**
 * Road load from certified coefficients F = A + B·v + C·v², in SI or US customary units. Coefficients that imply tyres or a drag
 * area outside what is usual of passenger cars and vans are kept, with a warning: it is most often a wrong unit.
 *
 * @param options - coefficients, their conditions, what they hold
 * @returns the road load; ask it `at(speed)`
 * @throws InputError `INCONSISTENT` when the force is negative at a road speed or the inertia is said twice differently,
 *   `WRONG_CHOICE`, `EMPTY`, `OUT_OF_RANGE`, `NEGATIVE`, and what `readOptions` throws
 * @example
 * const load = certifiedRoadLoad({
 *   constant: q("30 lbf"), linear: q("0.2 lbf/mph"), quadratic: q("0.018 lbf/mph²"),
 *   conditions: { testMass: q("4000 lb"), airDensity: referenceAir.us.density, standard: "SAE J2263" },
 * });
 * load.at(q("60 mph")).total.in("lbf"); // 106.8
 */
export function certifiedRoadLoad(options: CertifiedRoadLoadOptions): CertifiedRoadLoad {
  const { rotatingMassFraction } = readOptions(
    "certifiedRoadLoad",
    options,
    {
      constant: { unit: "N" },
      linear: { unit: "N/(m/s)" },
      quadratic: { unit: "N/(m/s)²" },
      rotatingMassFraction: { unit: "1", atLeast: 0, atMost: 0.5, optional: true },
    },
    ["conditions", "holds?", "inertia?"],
  );
  const { testMass: mass, airDensity } = readOptions(
    "certifiedRoadLoad conditions",
    options.conditions,
    {
      testMass: { unit: "kg", above: 0 },
      airDensity: { unit: "kg/m³", above: 0, atMost: 2, optional: true },
      temperature: { unit: "°C", atLeast: -45, atMost: 60, optional: true },
    },
    ["standard?"],
  );
  const { constant, linear, quadratic, inertia } = options;
  const numbers = {
    constant: constant.in("N"),
    linear: linear.in("N/(m/s)"),
    quadratic: quadratic.in("N/(m/s)²"),
  };
  assertNotNegative(numbers);
  const holds = readLosses("holds", options.holds ?? coastDownLosses);
  return certifiedFromParts({
    coefficients: Object.freeze({ constant, linear, quadratic }),
    conditions: conditionsOf(options.conditions),
    holds,
    rotatingMassFraction: fractionOf(inertia, rotatingMassFraction),
    warnings: Object.freeze([
      ...unusual({ mass, airDensity }),
      ...unusualCoefficients({ ...numbers, mass, airDensity, holds }),
    ]),
  });
}

/** What was not given is left out, so that a condition is either there or not. */
function conditionsOf(given: CertifiedRoadLoadOptions["conditions"]): CertifiedConditions {
  const { testMass, airDensity, temperature } = given;
  const standard = readWordsIfGiven("standard", given.standard);
  return Object.freeze({
    testMass,
    ...(airDensity && { airDensity }),
    ...(temperature && { temperature }),
    ...(standard !== undefined && { standard }),
  });
}

type CertifiedParts = Pick<
  CertifiedRoadLoad,
  "coefficients" | "conditions" | "holds" | "rotatingMassFraction" | "warnings" | "headWind" | "towedMass" | "cautions"
>;

/** Builds the result from checked parts. @internal */
export function certifiedFromParts(parts: CertifiedParts): CertifiedRoadLoad {
  const mass = parts.conditions.testMass;
  const kilograms = mass.in("kg");
  const constant = parts.coefficients.constant.in("N");
  const linear = parts.coefficients.linear.in("N/(m/s)");
  const quadratic = parts.coefficients.quadratic.in("N/(m/s)²");
  return Object.freeze({
    form: "certified",
    mass,
    inertiaMass: mass.times(1 + parts.rotatingMassFraction),
    ...parts,
    at: (at: Quantity<Speed>, options: RoadOptions = {}): CertifiedRoadLoadAt => {
      const { speed, grade } = readPlace(at, options);
      const terms = {
        form: "certified",
        constant: quantity(constant * cosineOf(grade), "N"),
        linear: quantity(linear * speed, "N"),
        quadratic: quantity(quadratic * speed ** 2, "N"),
      } as const;
      return forcesAt(terms, speed, (working) => {
        const slope = gradeResistance.of({ mass: kilograms, grade }, grade === 0 ? undefined : working);
        const numbers = { constant, linear, quadratic, speed, grade, gradeForce: slope };
        return { slope, total: certifiedResistance.of(numbers, working) };
      });
    },
  } as const);
}

function fractionOf(inertia: unknown, fraction: number | undefined): number {
  if (inertia === undefined || inertia === "test mass and rotating parts") {
    return fraction ?? defaultRotatingMassFraction.value;
  }
  if (inertia !== "test mass") {
    throw new InputError(
      "WRONG_CHOICE",
      `inertia must be "test mass" or "test mass and rotating parts": got ${describeGiven(inertia)}`,
      { name: "inertia" },
    );
  }
  if (fraction === undefined || fraction === 0) return 0;
  throw new InputError(
    "INCONSISTENT",
    `inertia "test mass" has no rotating parts: leave out rotatingMassFraction ${fraction} or the inertia`,
    { options: ["inertia", "rotatingMassFraction"] },
  );
}

function assertNotNegative(numbers: {
  readonly constant: number;
  readonly linear: number;
  readonly quadratic: number;
}) {
  const { constant, linear, quadratic } = numbers;
  const force = (speed: number): number => constant + (linear + quadratic * speed) * speed;
  const turn = quadratic === 0 ? 0 : -linear / (2 * quadratic);
  const lowest = [0, HIGHEST_CHECKED_SPEED, Math.min(Math.max(turn, 0), HIGHEST_CHECKED_SPEED)]
    .map((speed) => ({ speed, force: force(speed) }))
    .reduce((a, b) => (b.force < a.force ? b : a));
  if (lowest.force >= 0) return;
  throw new InputError(
    "INCONSISTENT",
    `the road load must not be negative at a road speed: got ${lowest.force.toPrecision(4)} N at ` +
      `${(lowest.speed * 3.6).toPrecision(3)} km/h; check the units, and give target coefficients, not those set on a dynamometer`,
    { ...lowest },
  );
}
