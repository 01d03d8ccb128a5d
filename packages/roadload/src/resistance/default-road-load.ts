import {
  type Force,
  type ForcePerSpeedSquared,
  type Length,
  type Mass,
  type Quantity,
  quantity,
  type Relation,
  readOptions,
  relation,
} from "@tarewatt/units";
import { referenceAir } from "../air/reference-air.js";
import { certifiedFromParts, certifiedRoadLoad } from "./certified-road-load.js";
import type { CertifiedRoadLoad } from "./road-load.js";

const source = {
  document: "UN GTR No. 15",
  section: "annex 4, 5.2 (0.140 and 0.0170 from memory, the rest seen)",
  status: "memory",
} as const;

/** Inputs of {@link defaultConstantTerm}. */
export interface DefaultConstantTermInputs {
  /** Test mass. */
  readonly testMass: Quantity<Mass>;
}

/**
 * Constant term of the regulatory default road load for a vehicle whose road load is unknown.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * defaultConstantTerm({ testMass: q("2000 kg") }); // 280 N
 */
export const defaultConstantTerm: Relation<DefaultConstantTermInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "constant term of the default road load",
  inputs: { testMass: { symbol: "TM", unit: "kg", meaning: "test mass", above: 0 } },
  result: { symbol: "f_0", unit: "N" },
  expression: "0.140·TM",
  source,
  evaluate: ({ testMass }) => 0.14 * testMass,
});

/** Inputs of {@link defaultQuadraticTerm} and options of {@link defaultRoadLoad}. */
export interface DefaultRoadLoadOptions {
  /** Test mass. */
  readonly testMass: Quantity<Mass>;
  /** Overall width, as ISO 612:1978, 6.2. */
  readonly width: Quantity<Length>;
  /** Overall height, as ISO 612:1978, 6.3. */
  readonly height: Quantity<Length>;
}

/**
 * Quadratic term of the regulatory default road load for a vehicle whose road load is unknown.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * defaultQuadraticTerm({ testMass: q("2000 kg"), width: q("1.9 m"), height: q("1.6 m") }); // 0.05728 N/(km/h)²
 */
export const defaultQuadraticTerm: Relation<
  DefaultRoadLoadOptions,
  Quantity<ForcePerSpeedSquared>
> = /* @__PURE__ */ relation({
  name: "quadratic term of the default road load",
  inputs: {
    testMass: { symbol: "TM", unit: "kg", meaning: "test mass", above: 0 },
    width: { symbol: "w", unit: "m", meaning: "overall width", above: 0 },
    height: { symbol: "h", unit: "m", meaning: "overall height", above: 0 },
  },
  result: { symbol: "f_2", unit: "N/(km/h)²" },
  expression: "0.0000028·TM + 0.0170·w·h",
  source,
  evaluate: ({ testMass, width, height }) => 0.0000028 * testMass + 0.017 * width * height,
});

/**
 * The regulatory default road load for a vehicle whose road load is unknown.
 *
 * Deliberately pessimistic: an upper bound, not an estimate. Its numbers 0.140 and 0.0170 are remembered, not checked.
 *
 * @param options - test mass, overall width and height
 * @returns a certified road load, with the reference air of the procedure, and warnings that say so
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, and what `readOptions` throws
 * @example
 * defaultRoadLoad({ testMass: q("2000 kg"), width: q("1.9 m"), height: q("1.6 m") }).at(q("100 km/h")).total; // 852.8 N
 */
export function defaultRoadLoad(options: DefaultRoadLoadOptions): CertifiedRoadLoad {
  readOptions("defaultRoadLoad", options, {
    testMass: { unit: "kg", above: 0 },
    width: { unit: "m", above: 0 },
    height: { unit: "m", above: 0 },
  });
  const { testMass } = options;
  const { density, temperature } = referenceAir.wltp;
  const load = certifiedRoadLoad({
    constant: defaultConstantTerm({ testMass }),
    linear: quantity(0, "N/(km/h)"),
    quadratic: defaultQuadraticTerm(options),
    conditions: {
      testMass,
      airDensity: density,
      temperature,
      standard: "UN GTR No. 15 annex 4, default for an unknown road load",
    },
  });
  const doubts = [
    "the default road load is an upper bound by design, and no estimate of this vehicle",
    "its numbers 0.140 and 0.0170 are from memory: check them in UN GTR No. 15, annex 4, 5.2",
  ];
  return certifiedFromParts({ ...load, warnings: Object.freeze([...load.warnings, ...doubts]) });
}
