import {
  type ElectricResistance,
  type Quantity,
  type Relation,
  relation,
  type Source,
  type Voltage,
} from "@tarewatt/units";

/** @internal */
export const isolationSource: Source = /* @__PURE__ */ Object.freeze({
  document: "UN Regulation No. 100",
  section: "5.1.3",
  status: "quoted",
});

/**
 * Isolation resistance that UN Regulation No. 100 asks of a high-voltage bus against the body, in Ω for each volt of
 * working voltage.
 *
 * Dimension: Ω/V. Where direct and alternating buses are joined galvanically the greater figure holds for both, unless the
 * alternating side is protected twice over. Source: 5.1.3 as quoted; the regulation itself decides, in its edition in
 * force.
 *
 * @example
 * isolationPerVolt.directBus; // 100
 */
export const isolationPerVolt = /* @__PURE__ */ Object.freeze({
  /** A direct bus by itself. */
  directBus: 100,
  /** An alternating bus by itself. */
  alternatingBus: 500,
  /** Both joined. */
  joined: 500,
  /** Both joined, the alternating side with additional protection. */
  joinedWithProtection: 100,
  /** Where the figures are from. */
  source: isolationSource,
} as const);

/** Inputs of {@link isolationResistance}. */
export interface IsolationResistanceInputs {
  /** Working voltage: the highest that can occur. Not negative. */
  readonly workingVoltage: Quantity<Voltage>;
  /** Resistance asked for each volt, in Ω/V: one of {@link isolationPerVolt}. Greater than zero. */
  readonly perVolt: number;
}

/**
 * Least isolation resistance between a high-voltage bus and the body of a vehicle.
 *
 * Returns kilo-ohms. It says what a regulation asks for, not how to measure it or that a vehicle is safe. Source: UN
 * Regulation No. 100, 5.1.3 as quoted.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * isolationResistance({ workingVoltage: q("400 V"), perVolt: isolationPerVolt.directBus }); // 40 kΩ
 */
export const isolationResistance: Relation<
  IsolationResistanceInputs,
  Quantity<ElectricResistance>
> = /* @__PURE__ */ relation({
  name: "least isolation resistance",
  inputs: {
    workingVoltage: { symbol: "U_w", unit: "V", meaning: "working voltage", atLeast: 0 },
    perVolt: { symbol: "r", unit: "1", meaning: "resistance asked for each volt, in Ω/V", above: 0 },
  },
  result: { symbol: "R_iso", unit: "kΩ" },
  expression: "r·U_w/1000",
  source: isolationSource,
  evaluate: ({ workingVoltage, perVolt }) => (perVolt * workingVoltage) / 1000,
});
