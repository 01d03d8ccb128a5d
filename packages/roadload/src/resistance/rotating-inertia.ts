import {
  type Length,
  type Mass,
  type Quantity,
  type Relation,
  relation,
  type Source,
  type UnitDimension,
} from "@tarewatt/units";

/** Inputs of {@link rotatingMass}. */
export interface RotatingMassInputs {
  /** Number of wheels. */
  readonly wheels: number;
  /** Moment of inertia of one wheel with tyre and brake. */
  readonly wheelInertia: Quantity<UnitDimension<"kg·m²">>;
  /** Moment of inertia of the rotors of all motors, with what turns at their speed. */
  readonly motorInertia: Quantity<UnitDimension<"kg·m²">>;
  /** Turns of a motor per turn of a wheel. */
  readonly gearRatio: number;
  /** Rolling radius of the tyres. */
  readonly radius: Quantity<Length>;
}

/**
 * Equivalent mass of the rotating parts, from their moments of inertia.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * rotatingMass({
 *   wheels: 4, wheelInertia: q("1.2 kg·m²"), motorInertia: q("0.05 kg·m²"), gearRatio: 9, radius: q("0.34 m"),
 * }); // 76.6 kg
 */
export const rotatingMass: Relation<RotatingMassInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "equivalent mass of the rotating parts",
  inputs: {
    wheels: { symbol: "n", unit: "1", meaning: "number of wheels", atLeast: 0, atMost: 50 },
    wheelInertia: { symbol: "J_w", unit: "kg·m²", meaning: "moment of inertia of a wheel", atLeast: 0, atMost: 1000 },
    motorInertia: { symbol: "J_m", unit: "kg·m²", meaning: "moment of inertia of the motors", atLeast: 0, atMost: 100 },
    gearRatio: { symbol: "i", unit: "1", meaning: "turns of a motor per turn of a wheel", atLeast: 0, atMost: 50 },
    radius: { symbol: "r", unit: "m", meaning: "rolling radius", above: 0.1, atMost: 2 },
  },
  result: { symbol: "m_r", unit: "kg" },
  expression: "(n·J_w + J_m·i²)/r²",
  source: { document: "Vehicle Propulsion Systems, sheet of formulae", status: "seen" },
  evaluate: ({ wheels, wheelInertia, motorInertia, gearRatio, radius }) =>
    (wheels * wheelInertia + motorInertia * gearRatio ** 2) / radius ** 2,
});

/** Inputs of {@link heavyEffectiveMass}. */
export interface HeavyEffectiveMassInputs {
  /** Mass of the vehicle as tested. */
  readonly mass: Quantity<Mass>;
  /** Number of tyres on the road. */
  readonly tyres: number;
}

/**
 * Effective mass of a heavy vehicle that coasts: 56.7 kg more for every tyre on the road.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * heavyEffectiveMass({ mass: q("16108 kg"), tyres: 18 }); // 17129 kg
 */
export const heavyEffectiveMass: Relation<HeavyEffectiveMassInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "effective mass of a heavy vehicle",
  inputs: {
    mass: { symbol: "M", unit: "kg", meaning: "mass", above: 0 },
    tyres: { symbol: "n", unit: "1", meaning: "number of tyres on the road", atLeast: 0, atMost: 100 },
  },
  result: { symbol: "M_e", unit: "kg" },
  expression: "M + 56.7·n",
  source: { document: "40 CFR 1037.528", section: "(h)(1)", status: "seen" },
  validity: "heavy-duty vehicles",
  evaluate: ({ mass, tyres }) => mass + 56.7 * tyres,
});

/** Inputs of {@link rotatingFractionByRatio}. */
export interface RotatingFractionByRatioInputs {
  /** Turns of the engine per turn of a wheel. */
  readonly overallRatio: number;
}

/**
 * Rotating parts as part of the mass by the overall gear ratio: an old rule for cars with piston engines, whose flywheels it holds.
 * A battery-electric car at its one ratio of 9 would get 24 %, which is far too much: use {@link rotatingMass} or a rule for it.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * rotatingFractionByRatio({ overallRatio: 4 }); // 0.08
 */
export const rotatingFractionByRatio: Relation<RotatingFractionByRatioInputs, number> = /* @__PURE__ */ relation({
  name: "rotating parts by gear ratio, piston engine",
  inputs: {
    overallRatio: {
      symbol: "N",
      unit: "1",
      meaning: "turns of the engine per turn of a wheel",
      atLeast: 0,
      atMost: 20,
    },
  },
  result: { symbol: "ε", unit: "1" },
  expression: "0.04 + 0.0025·N²",
  source: { document: "Fundamentals of Vehicle Dynamics (SAE)", status: "memory" },
  validity: "passenger cars with piston engines",
  evaluate: ({ overallRatio }) => 0.04 + 0.0025 * overallRatio ** 2,
});

/** A rule for the rotating parts of a vehicle. */
export interface RotatingMassRule {
  /** Their equivalent mass as part of the mass that the rule takes. */
  readonly value: number;
  /** Where the rule is from. */
  readonly source: Source;
}

/**
 * Rules for the rotating parts of a vehicle of which nothing is known, as part of the mass. They differ: 3 to 5 %.
 *
 * - `coastDown`: of the mass in running order plus 25 kg (seen);
 * - `cycle`: of the test mass (from memory);
 * - `textbook`: of the mass, for electric vehicles (seen quoted).
 */
export const rotatingMassRules: Readonly<Record<"coastDown" | "cycle" | "textbook", RotatingMassRule>> =
  /* @__PURE__ */ Object.freeze({
    coastDown: /* @__PURE__ */ Object.freeze({
      value: 0.03,
      source: /* @__PURE__ */ Object.freeze({
        document: "Regulation (EU) 2017/1151, annex XXI, sub-annex 4",
        section: "2.5.1",
        status: "seen",
      }),
    }),
    cycle: /* @__PURE__ */ Object.freeze({
      value: 0.03,
      source: /* @__PURE__ */ Object.freeze({
        document: "UN GTR No. 15",
        section: "annex 7, 5",
        status: "memory",
      }),
    }),
    textbook: /* @__PURE__ */ Object.freeze({
      value: 0.05,
      source: /* @__PURE__ */ Object.freeze({
        document: "Electric Vehicle Technology Explained (Wiley)",
        section: "chapter on modelling",
        status: "quoted",
      }),
    }),
  });
