import {
  type Acceleration,
  type Force,
  type Length,
  type Mass,
  type Quantity,
  type Relation,
  relation,
  type Speed,
  type Time,
} from "@tarewatt/units";

/** Inputs of {@link coastDownForce}. */
export interface CoastDownForceInputs {
  /** Mass with the equivalent mass of the rotating parts. */
  readonly effectiveMass: Quantity<Mass>;
  /** Mass without it. */
  readonly mass: Quantity<Mass>;
  /** Speed at the start of the interval. */
  readonly startSpeed: Quantity<Speed>;
  /** Speed at its end. */
  readonly endSpeed: Quantity<Speed>;
  /** Length of the interval in time. */
  readonly duration: Quantity<Time>;
  /** Rise of the road over the interval; negative downhill. */
  readonly rise: Quantity<Length>;
  /** Distance travelled in the interval. */
  readonly distance: Quantity<Length>;
  /** Local acceleration of free fall. */
  readonly gravity: Quantity<Acceleration>;
}

/**
 * Mean road-load force over an interval of a coast-down, positive against the direction of travel.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * coastDownForce({
 *   effectiveMass: q("2060 kg"), mass: q("2000 kg"), startSpeed: q("30 m/s"), endSpeed: q("27 m/s"), duration: q("10 s"),
 *   rise: q("0 m"), distance: q("285 m"), gravity: q("9.81 m/s²"),
 * }); // 618 N
 */
export const coastDownForce: Relation<CoastDownForceInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "coast-down force",
  inputs: {
    effectiveMass: { symbol: "M_e", unit: "kg", meaning: "mass with rotating parts", above: 0 },
    mass: { symbol: "M", unit: "kg", meaning: "mass", above: 0 },
    startSpeed: { symbol: "v_1", unit: "m/s", meaning: "speed at the start", atLeast: 0 },
    endSpeed: { symbol: "v_2", unit: "m/s", meaning: "speed at the end", atLeast: 0 },
    duration: { symbol: "t", unit: "s", meaning: "duration", above: 0 },
    rise: { symbol: "h", unit: "m", meaning: "rise of the road" },
    distance: { symbol: "D", unit: "m", meaning: "distance", above: 0 },
    gravity: { symbol: "g", unit: "m/s²", meaning: "local acceleration of free fall", atLeast: 9.7, atMost: 9.9 },
  },
  result: { symbol: "F", unit: "N" },
  expression: "M_e·(v_1 − v_2)/t − M·g·h/D",
  source: { document: "40 CFR 1037.528", status: "seen" },
  evaluate: ({ effectiveMass, mass, startSpeed, endSpeed, duration, rise, distance, gravity }) =>
    (effectiveMass * (startSpeed - endSpeed)) / duration - (mass * gravity * rise) / distance,
});
