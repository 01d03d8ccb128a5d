import { type Area, type Length, type Quantity, type Relation, relation, type Source } from "@tarewatt/units";
import type { Fraction } from "../fraction.js";

const source: Source = /* @__PURE__ */ Object.freeze({
  document: "common practice, no source",
  status: "common practice",
});

const endsSource: Source = /* @__PURE__ */ Object.freeze({
  document: "Theory of Ground Vehicles",
  section: "aerodynamic forces: 79 to 84 % of overall width × height",
  status: "memory",
});

/**
 * How much of overall width × height the frontal area of a passenger car fills: a little over four fifths (common practice,
 * no source). The ends are from memory of a textbook.
 */
export const frontalAreaFill = /* @__PURE__ */ Object.freeze({
  /** Low end. */
  low: 0.79,
  /** Most likely value. */
  likely: 0.81,
  /** High end. */
  high: 0.84,
  /** Where the most likely value is from. */
  source,
  /** Where the two ends are from. */
  endsSource,
} as const);

/** Inputs of {@link frontalAreaFromSize}. */
export interface FrontalAreaFromSizeInputs {
  /** Overall width, without mirrors; at most 5 m, which only a wrong unit exceeds. */
  readonly width: Quantity<Length>;
  /** Overall height, at the load that is meant; at most 5 m. */
  readonly height: Quantity<Length>;
  /** Frontal area as part of width × height, 0 to 1: see {@link frontalAreaFill}. */
  readonly fill: Fraction;
}

/**
 * Frontal area estimated from overall width and height.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * frontalAreaFromSize({ width: q("2.00 m"), height: q("1.90 m"), fill: frontalAreaFill.likely }); // 3.078 m²
 */
export const frontalAreaFromSize: Relation<FrontalAreaFromSizeInputs, Quantity<Area>> = /* @__PURE__ */ relation({
  name: "frontal area from width and height",
  inputs: {
    width: { symbol: "w", unit: "m", meaning: "overall width without mirrors", above: 0, atMost: 5 },
    height: { symbol: "h", unit: "m", meaning: "overall height", above: 0, atMost: 5 },
    fill: { symbol: "k", unit: "1", meaning: "part of width × height that is filled", above: 0, atMost: 1 },
  },
  result: { symbol: "A_f", unit: "m²" },
  expression: "k·w·h",
  source,
  validity: "passenger cars and vans with a closed body",
  evaluate: ({ width, height, fill }) => fill * width * height,
});
