import { type Angle, type NumbersOf, type Quantity, type Relation, relation, type Speed } from "@tarewatt/units";

/** Inputs of {@link relativeAirSpeed} and {@link yawAngle}. */
export interface WindInputs {
  /** Speed of the wind over the ground. */
  readonly windSpeed: Quantity<Speed>;
  /** Speed of the vehicle over the ground. */
  readonly vehicleSpeed: Quantity<Speed>;
  /** Angle between the wind and the path of the vehicle, −180 to 180°: 0° is a head wind, 180° a tail wind. */
  readonly windAngle: Quantity<Angle>;
}

// A function, so that a bundler can drop it: reading Math.PI counts as a side effect.
const inputs = () =>
  ({
    windSpeed: { symbol: "w", unit: "m/s", meaning: "speed of the wind", atLeast: 0, atMost: 150 },
    vehicleSpeed: { symbol: "v", unit: "m/s", meaning: "speed of the vehicle", atLeast: 0, atMost: 150 },
    windAngle: { symbol: "φ", unit: "rad", meaning: "angle of the wind", atLeast: -Math.PI, atMost: Math.PI },
  }) as const;

/**
 * Speed of the air past a vehicle in wind, over all directions.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * relativeAirSpeed({ windSpeed: q("7.1 mph"), vehicleSpeed: q("64.9 mph"), windAngle: q("47°") }).in("mph"); // 69.935
 */
export const relativeAirSpeed: Relation<WindInputs, Quantity<Speed>> = /* @__PURE__ */ relation({
  name: "air speed past the vehicle",
  inputs: /* @__PURE__ */ inputs(),
  result: { symbol: "v_air", unit: "m/s" },
  expression: "sqrt(w² + v² + 2·w·v·cos(φ))",
  source: { document: "40 CFR 1037.528", status: "seen" },
  evaluate: airSpeedPast,
});

/**
 * Angle between the air past a vehicle and its path; it has the sign of the wind's angle.
 *
 * The regulation prints atan(w·sin φ/(v + w·cos φ)). The same angle is taken here by its half, which also holds when a tail
 * wind overtakes the vehicle.
 *
 * @throws InputError `NOT_VALID_HERE` when no air moves past the vehicle, `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * yawAngle({ windSpeed: q("7.1 mph"), vehicleSpeed: q("64.9 mph"), windAngle: q("47°") }).in("°"); // 4.258
 */
export const yawAngle: Relation<WindInputs, Quantity<Angle>> = /* @__PURE__ */ relation({
  name: "yaw angle",
  inputs: /* @__PURE__ */ inputs(),
  result: { symbol: "ψ", unit: "rad" },
  expression: "2·atan(w·sin(φ)/(sqrt(w² + v² + 2·w·v·cos(φ)) + v + w·cos(φ)))",
  source: { document: "40 CFR 1037.528", section: "by the half angle", status: "seen" },
  validity: "air moves past the vehicle, and not straight from behind",
  evaluate: (numbers) => {
    const { windSpeed, vehicleSpeed, windAngle } = numbers;
    const along = vehicleSpeed + windSpeed * Math.cos(windAngle);
    return 2 * Math.atan((windSpeed * Math.sin(windAngle)) / (airSpeedPast(numbers) + along));
  },
});

function airSpeedPast({ windSpeed, vehicleSpeed, windAngle }: NumbersOf<WindInputs>): number {
  const squared = windSpeed ** 2 + vehicleSpeed ** 2 + 2 * windSpeed * vehicleSpeed * Math.cos(windAngle);
  // Rounding can take an exact zero (a tail wind as fast as the vehicle) below zero.
  return Math.sqrt(Math.max(0, squared));
}
