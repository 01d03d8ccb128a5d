import { type Length, type Quantity, type Relation, relation, type Speed, type Time } from "@tarewatt/units";

/** Inputs of {@link steadyDistance}. */
export interface SteadyDistanceInputs {
  /** Speed. */
  readonly speed: Quantity<Speed>;
  /** How long it is held. */
  readonly duration: Quantity<Time>;
}

/**
 * Distance at a steady speed.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * steadyDistance({ speed: q("90 km/h"), duration: q("4 h") }).in("km"); // 360
 */
export const steadyDistance: Relation<SteadyDistanceInputs, Quantity<Length>> = /* @__PURE__ */ relation({
  name: "distance at a steady speed",
  inputs: {
    speed: { symbol: "v", unit: "km/h", meaning: "speed", atLeast: 0 },
    duration: { symbol: "t", unit: "h", meaning: "how long it is held", atLeast: 0 },
  },
  result: { symbol: "s", unit: "km" },
  expression: "v·t",
  source: { document: "definition of speed", status: "definition" },
  evaluate: ({ speed, duration }) => speed * duration,
});
