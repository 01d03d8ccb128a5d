import {
  type Power,
  type Quantity,
  type Relation,
  relation,
  type Temperature,
  type ThermalConductance,
  type UnitDimension,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";

/** Inputs of {@link cabinEnvelopeHeat}. */
export interface CabinEnvelopeHeatInputs {
  /** Heat flow through body and glass per kelvin: see {@link cabinPriors}. */
  readonly envelope: Quantity<ThermalConductance>;
  /** Temperature inside. */
  readonly target: Quantity<Temperature>;
  /** Temperature outside. */
  readonly ambient: Quantity<Temperature>;
}

const target = { symbol: "T_in", unit: "°C", meaning: "temperature inside", atLeast: 0, atMost: 40 } as const;
const ambient = { symbol: "T_out", unit: "°C", meaning: "temperature outside", atLeast: -40, atMost: 60 } as const;

/**
 * Heat that leaves a cabin through body and glass; negative when it enters.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * cabinEnvelopeHeat({ envelope: q("54 W/K"), target: q("22 °C"), ambient: q("-15 °C") }); // 1998 W
 */
export const cabinEnvelopeHeat: Relation<CabinEnvelopeHeatInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "heat through body and glass",
  inputs: {
    envelope: { symbol: "UA", unit: "W/K", meaning: "heat flow per kelvin", atLeast: 0, atMost: 1000 },
    target,
    ambient,
  },
  result: { symbol: "Q_e", unit: "W" },
  expression: "UA·(T_in − T_out)",
  source: { document: "heat transmission", status: "definition" },
  evaluate: ({ envelope, target, ambient }) => envelope * (target - ambient),
});

/** Inputs of {@link cabinFreshAirHeat}. */
export interface CabinFreshAirHeatInputs {
  /** Air that the fans move, all of it fresh: see {@link cabinPriors}. */
  readonly freshAir: Quantity<UnitDimension<"kg/s">>;
  /** Part of it that is fresh, 0 to 1; the rest is taken from the cabin. */
  readonly freshAirShare: Fraction;
  /** Temperature inside. */
  readonly target: Quantity<Temperature>;
  /** Temperature outside. */
  readonly ambient: Quantity<Temperature>;
}

/**
 * Heat that leaves a cabin with its air; negative when warm air enters. Vapour is not counted.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`; otherwise as every relation
 * @example
 * const freshAir = q("0.067 kg/s");
 * cabinFreshAirHeat({ freshAir, freshAirShare: 1, target: q("22 °C"), ambient: q("-15 °C") }); // 2494 W
 */
export const cabinFreshAirHeat: Relation<CabinFreshAirHeatInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "heat that leaves with the air",
  inputs: {
    freshAir: { symbol: "ṁ", unit: "kg/s", meaning: "air moved by the fans", atLeast: 0, atMost: 2 },
    freshAirShare: { symbol: "s", unit: "1", meaning: "part of it that is fresh", atLeast: 0, atMost: 1 },
    target,
    ambient,
  },
  result: { symbol: "Q_a", unit: "W" },
  expression: "1006·ṁ·s·(T_in − T_out)",
  source: { document: "enthalpy of dry air, 1006 J/(kg·K)", section: "handbook value", status: "memory" },
  validity: "no vapour condenses",
  evaluate: ({ freshAir, freshAirShare, target, ambient }) => 1006 * freshAir * freshAirShare * (target - ambient),
});

/** Inputs of {@link cabinGains}. */
export interface CabinGainsInputs {
  /** Heat of the sun in the cabin. */
  readonly solarGain: Quantity<Power>;
  /** Number of people. */
  readonly occupants: number;
  /** Heat of a person: see {@link cabinPriors}. */
  readonly heatPerOccupant: Quantity<Power>;
}

/**
 * Heat that sun and people give to a cabin.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * cabinGains({ solarGain: q("500 W"), occupants: 2, heatPerOccupant: q("70 W") }); // 640 W
 */
export const cabinGains: Relation<CabinGainsInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "heat of sun and people",
  inputs: {
    solarGain: { symbol: "Q_s", unit: "W", meaning: "heat of the sun", atLeast: 0, atMost: 20_000 },
    occupants: { symbol: "n", unit: "1", meaning: "number of people", atLeast: 0, atMost: 100 },
    heatPerOccupant: { symbol: "q", unit: "W", meaning: "heat of a person", atLeast: 0, atMost: 500 },
  },
  result: { symbol: "Q_g", unit: "W" },
  expression: "Q_s + n·q",
  source: { document: "sum of the gains", status: "definition" },
  evaluate: ({ solarGain, occupants, heatPerOccupant }) => solarGain + occupants * heatPerOccupant,
});
