import { type Angle, type Quantity, type Relation, relation, type Speed } from "@tarewatt/units";

/** Inputs of {@link headWind} and {@link crossWind}. */
export interface WindComponentInputs {
  /** Speed of the wind over the ground. */
  readonly windSpeed: Quantity<Speed>;
  /** Angle between the wind and the path of the vehicle, −180 to 180°: 0° is a head wind, 180° a tail wind. */
  readonly windAngle: Quantity<Angle>;
}

// A function, so that a bundler can drop it: reading Math.PI counts as a side effect.
const inputs = () =>
  ({
    windSpeed: { symbol: "w", unit: "m/s", meaning: "speed of the wind", atLeast: 0, atMost: 150 },
    windAngle: { symbol: "φ", unit: "rad", meaning: "angle of the wind", atLeast: -Math.PI, atMost: Math.PI },
  }) as const;
const source = { document: "component of a vector", status: "definition" } as const;

/**
 * Part of the wind that blows against a vehicle; negative when it comes from behind.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * headWind({ windSpeed: q("10 m/s"), windAngle: q("60°") }); // 5.0 m/s
 */
export const headWind: Relation<WindComponentInputs, Quantity<Speed>> = /* @__PURE__ */ relation({
  name: "head wind",
  inputs: /* @__PURE__ */ inputs(),
  result: { symbol: "w_h", unit: "m/s" },
  expression: "w·cos(φ)",
  source,
  evaluate: ({ windSpeed, windAngle }) => windSpeed * Math.cos(windAngle),
});

/**
 * Part of the wind that blows across the path of a vehicle; it has the sign of the wind's angle.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * crossWind({ windSpeed: q("10 m/s"), windAngle: q("30°") }); // 5.0 m/s
 */
export const crossWind: Relation<WindComponentInputs, Quantity<Speed>> = /* @__PURE__ */ relation({
  name: "cross wind",
  inputs: /* @__PURE__ */ inputs(),
  result: { symbol: "w_c", unit: "m/s" },
  expression: "w·sin(φ)",
  source,
  evaluate: ({ windSpeed, windAngle }) => windSpeed * Math.sin(windAngle),
});
