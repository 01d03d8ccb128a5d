import { type Mass, type Quantity, type Relation, relation } from "@tarewatt/units";
import type { Fraction } from "../fraction.js";

/** Inputs of {@link effectiveMass}. */
export interface EffectiveMassInputs {
  /** Mass that is moved, with its load. */
  readonly mass: Quantity<Mass>;
  /** Equivalent mass of the rotating parts as part of that mass, 0 to 0.5: see {@link defaultRotatingMassFraction}. */
  readonly rotatingMassFraction: Fraction;
}

/**
 * Mass that has to be accelerated: the mass that is moved and the equivalent mass of its rotating parts.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * effectiveMass({ mass: q("2000 kg"), rotatingMassFraction: 0.03 }); // 2060 kg
 */
export const effectiveMass: Relation<EffectiveMassInputs, Quantity<Mass>> = /* @__PURE__ */ relation({
  name: "effective mass",
  inputs: {
    mass: { symbol: "m", unit: "kg", meaning: "mass that is moved", atLeast: 0 },
    rotatingMassFraction: {
      symbol: "ε",
      unit: "1",
      meaning: "equivalent mass of the rotating parts as part of the mass",
      atLeast: 0,
      atMost: 0.5,
    },
  },
  result: { symbol: "m_e", unit: "kg" },
  expression: "m·(1 + ε)",
  source: { document: "kinetic energy of the wheels and of what turns with them, as a mass", status: "definition" },
  evaluate: ({ mass, rotatingMassFraction }) => mass * (1 + rotatingMassFraction),
});
