import {
  type Energy,
  type Force,
  type ForcePerSpeed,
  type ForcePerSpeedSquared,
  type Length,
  type Mass,
  type Quantity,
  type Relation,
  relation,
  type SpeedSquared,
  type UnitDimension,
} from "@tarewatt/units";

/** Inputs of {@link netWheelEnergy}. */
export interface NetWheelEnergyInputs {
  /** Constant term of the road load, on the grade. */
  readonly constant: Quantity<Force>;
  /** Part of the weight along the road, negative downhill. */
  readonly gradeForce: Quantity<Force>;
  /** Linear coefficient. */
  readonly linear: Quantity<ForcePerSpeed>;
  /** Quadratic coefficient. */
  readonly quadratic: Quantity<ForcePerSpeedSquared>;
  /** Mass with its rotating parts. */
  readonly inertiaMass: Quantity<Mass>;
  /** Distance of the cycle. */
  readonly distance: Quantity<Length>;
  /** ∫v² dt over the cycle. */
  readonly speedSquaredIntegral: Quantity<UnitDimension<"m²/s">>;
  /** ∫v³ dt over the cycle. */
  readonly speedCubedIntegral: Quantity<UnitDimension<"m³/s²">>;
  /** Change of v²/2 from the first row to the last; zero when the cycle starts and ends at rest. */
  readonly kineticChange: Quantity<SpeedSquared>;
}

/**
 * Energy at the wheels over a cycle, driving and braking together: what a full recovery without loss would need.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * netWheelEnergy({
 *   constant: q("200 N"), gradeForce: q("0 N"), linear: q("0 N/(m/s)"), quadratic: q("0.5 N/(m/s)²"), inertiaMass: q("2060 kg"),
 *   distance: q("1000 m"), speedSquaredIntegral: q("20000 m²/s"), speedCubedIntegral: q("400000 m³/s²"), kineticChange: q("0 m²/s²"),
 * }).in("kJ"); // 400
 */
export const netWheelEnergy: Relation<NetWheelEnergyInputs, Quantity<Energy>> = /* @__PURE__ */ relation({
  name: "net energy at the wheels over the cycle",
  inputs: {
    constant: { symbol: "A", unit: "N", meaning: "constant term on this grade" },
    gradeForce: { symbol: "F_g", unit: "N", meaning: "grade resistance" },
    linear: { symbol: "B", unit: "N/(m/s)", meaning: "linear coefficient" },
    quadratic: { symbol: "C", unit: "N/(m/s)²", meaning: "quadratic coefficient" },
    inertiaMass: { symbol: "m_e", unit: "kg", meaning: "mass with rotating parts", atLeast: 0 },
    distance: { symbol: "s", unit: "m", meaning: "distance", atLeast: 0 },
    speedSquaredIntegral: { symbol: "I_2", unit: "m²/s", meaning: "∫v² dt over the cycle", atLeast: 0 },
    speedCubedIntegral: { symbol: "I_3", unit: "m³/s²", meaning: "∫v³ dt over the cycle", atLeast: 0 },
    kineticChange: { symbol: "K", unit: "m²/s²", meaning: "change of v²/2" },
  },
  result: { symbol: "E_net", unit: "J" },
  expression: "(A + F_g)·s + B·I_2 + C·I_3 + m_e·K",
  source: { document: "integral of force over distance", status: "definition" },
  evaluate: (n) =>
    (n.constant + n.gradeForce) * n.distance +
    n.linear * n.speedSquaredIntegral +
    n.quadratic * n.speedCubedIntegral +
    n.inertiaMass * n.kineticChange,
});

/** Inputs of {@link drivingEnergy}. */
export interface DrivingEnergyInputs {
  /** Net energy at the wheels. */
  readonly net: Quantity<Energy>;
  /** Energy at the wheels in the parts of the cycle that brake; not positive. */
  readonly braking: Quantity<Energy>;
}

/**
 * Energy that the wheels must be given: the net energy, and what is given back in braking.
 *
 * @throws InputError `OUT_OF_RANGE` when the braking energy is positive; otherwise as every relation
 * @example
 * drivingEnergy({ net: q("9 MJ"), braking: q("-3 MJ") }).in("MJ"); // 12
 */
export const drivingEnergy: Relation<DrivingEnergyInputs, Quantity<Energy>> = /* @__PURE__ */ relation({
  name: "driving energy at the wheels",
  inputs: {
    net: { symbol: "E_net", unit: "J", meaning: "net energy at the wheels" },
    braking: { symbol: "E_brake", unit: "J", meaning: "sum over the pieces that brake", atMost: 0 },
  },
  result: { symbol: "E_drive", unit: "J" },
  expression: "E_net − E_brake",
  source: { document: "sum of driving and braking", status: "definition" },
  evaluate: ({ net, braking }) => net - braking,
});
