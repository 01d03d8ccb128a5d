import { type Mass, type Power, type Quantity, type Relation, relation, type Speed, type Time } from "@tarewatt/units";

/** Inputs of {@link sprintMeanPower}. */
export interface SprintMeanPowerInputs {
  /** Mass to accelerate. */
  readonly mass: Quantity<Mass>;
  /** Speed at the end of the sprint from rest. */
  readonly speed: Quantity<Speed>;
  /** Time of the sprint. */
  readonly time: Quantity<Time>;
}

/**
 * Mean net power of a sprint from rest: kinetic energy per time.
 *
 * A lower bound of the peak power at the wheels: resistance comes on top, and no sprint runs at constant power. Claimed
 * sprint times may leave out a rollout of a foot, which makes the bound too high.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * sprintMeanPower({ mass: q("2000 kg"), speed: q("100 km/h"), time: q("5 s") }).in("kW"); // 154.3
 */
export const sprintMeanPower: Relation<SprintMeanPowerInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "mean net power of a sprint",
  inputs: {
    mass: { symbol: "m", unit: "kg", meaning: "mass", above: 0 },
    speed: { symbol: "v", unit: "m/s", meaning: "speed at the end", above: 0, atMost: 150 },
    time: { symbol: "t", unit: "s", meaning: "time of the sprint", above: 0 },
  },
  result: { symbol: "P_m", unit: "W" },
  expression: "½·m·v²/t",
  source: { document: "kinetic energy per time", status: "definition" },
  validity: "from rest, on a level road",
  evaluate: ({ mass, speed, time }) => (0.5 * mass * speed ** 2) / time,
});
