import {
  describeGiven,
  InputError,
  type Quantity,
  type Relation,
  relation,
  type Source,
  type Temperature,
  type UnitDimension,
} from "@tarewatt/units";

/** How the rolling resistance of tyres changes with the temperature of the air: a line through a reference. */
export interface TyreTemperatureRule {
  /** What it is called in results. */
  readonly name: string;
  /** Share of the resistance lost per kelvin, in 1/K. */
  readonly slope: number;
  /** Temperature that the rule corrects to, in °C. */
  readonly reference: number;
  /** Lowest temperature that the procedure of the rule allows, in °C. */
  readonly from: number;
  /** Highest temperature that the procedure of the rule allows, in °C. */
  readonly to: number;
  /** Where the slope is from. */
  readonly source: Source;
}

const seenRange = "UN R117 annex 6 as proposed in ECE/TRANS/WP.29/GRB, 2012; ISO 28580";
const iso = (slope: number, name: string): TyreTemperatureRule =>
  Object.freeze({
    ...{ name, slope, reference: 25, from: 20, to: 30 },
    source: Object.freeze({ document: seenRange, section: "temperature correction", status: "seen" }),
  });

/**
 * Published rules for the temperature of tyres. All correct a measured force to a reference: F_ref = F·(1 + K·(T − T_ref)).
 *
 * - `gtr15`: UN GTR No. 15 annex 4, 4.5.5 (from memory), 8.6e-3 per K to 20 °C. SAE J1263 has 4.8e-3 per °F, the same slope.
 *   Its range, 5 to 35 °C, is that of the test (SAE J1263, seen in a summary);
 * - `c1`, `c2c3`, `c3Heavy`: ISO 28580 and UN R117 annex 6 (seen), for passenger tyres, for van and truck tyres of load index
 *   up to 121, and above it, to 25 °C.
 *
 * The two rules for passenger tyres differ little in slope, and much in reference and range.
 */
export const tyreTemperatureRules: Readonly<Record<"gtr15" | "c1" | "c2c3" | "c3Heavy", TyreTemperatureRule>> =
  /* @__PURE__ */ Object.freeze({
    gtr15: /* @__PURE__ */ Object.freeze({
      name: "UN GTR No. 15",
      slope: 8.6e-3,
      reference: 20,
      from: 5,
      to: 35,
      source: /* @__PURE__ */ Object.freeze({ document: "UN GTR No. 15", section: "annex 4, 4.5.5", status: "memory" }),
    }),
    c1: /* @__PURE__ */ iso(0.008, "ISO 28580, C1"),
    c2c3: /* @__PURE__ */ iso(0.01, "ISO 28580, C2, and C3 to load index 121"),
    c3Heavy: /* @__PURE__ */ iso(0.006, "ISO 28580, C3 above load index 121"),
  });

/** Name of a published rule, a key of {@link tyreTemperatureRules}. */
export type TyreTemperatureRuleName = keyof typeof tyreTemperatureRules;

/** Inputs of {@link tyreTemperatureFactor}. */
export interface TyreTemperatureFactorInputs {
  /** Slope of the rule, 0 to 0.012 1/K: see {@link tyreTemperatureRules}. */
  readonly slope: Quantity<UnitDimension<"1/K">>;
  /** Temperature that the rule corrects to, 15 to 30 °C. */
  readonly reference: Quantity<Temperature>;
  /** Temperature that the resistance is known at, −40 to 50 °C. */
  readonly from: Quantity<Temperature>;
  /** Temperature that it is wanted at, −40 to 50 °C. */
  readonly to: Quantity<Temperature>;
}

/**
 * Rolling resistance at one temperature per that at another: above 1 when it gets colder.
 *
 * The correction of the procedures to their reference is applied forwards, then backwards. They were made for 5 to 35 °C or less;
 * what they give in frost is an extrapolation.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * const slope = quantity(0.0086, "1/K");
 * tyreTemperatureFactor({ slope, reference: q("20 °C"), from: q("20 °C"), to: q("5 °C") }); // 1.148
 */
export const tyreTemperatureFactor: Relation<TyreTemperatureFactorInputs, number> = /* @__PURE__ */ relation({
  name: "tyres, change with temperature",
  inputs: {
    slope: { symbol: "K_0", unit: "1/K", meaning: "share per kelvin", atLeast: 0, atMost: 0.012 },
    reference: { symbol: "T_0", unit: "°C", meaning: "temperature of reference of the rule", atLeast: 15, atMost: 30 },
    from: { symbol: "T_1", unit: "°C", meaning: "temperature that the force is known at", atLeast: -40, atMost: 50 },
    to: { symbol: "T_2", unit: "°C", meaning: "temperature that it is wanted at", atLeast: -40, atMost: 50 },
  },
  result: { symbol: "f_T", unit: "1" },
  expression: "(1 + K_0·(T_1 − T_0))/(1 + K_0·(T_2 − T_0))",
  source: { document: "UN GTR No. 15 annex 4, 4.5.5, and ISO 28580: the correction to a reference", status: "memory" },
  validity: "the range of the rule; an extrapolation outside it",
  evaluate: ({ slope, reference, from, to }) => (1 + slope * (from - reference)) / (1 + slope * (to - reference)),
});

/** @internal */
export function readTemperatureRule(given: unknown): TyreTemperatureRule {
  if (given === undefined) return tyreTemperatureRules.gtr15;
  if (typeof given === "string" && Object.hasOwn(tyreTemperatureRules, given)) {
    return tyreTemperatureRules[given as TyreTemperatureRuleName];
  }
  const known = Object.keys(tyreTemperatureRules);
  throw new InputError(
    "WRONG_CHOICE",
    `temperatureRule must be one of ${known.join(", ")}: got ${describeGiven(given)}`,
    { name: "temperatureRule", known },
  );
}

/** A warning for every temperature, in °C, that a rule was not made for. @internal */
export function outsideRule(rule: TyreTemperatureRule, ...temperatures: readonly number[]): string[] {
  const { name, from, to } = rule;
  return [...new Set(temperatures)]
    .filter((temperature) => temperature < from || temperature > to)
    .map(
      (temperature) =>
        `tyres at ${Number(temperature.toPrecision(4))} °C: the rule of ${name} was made for ${from} to ${to} °C, ` +
        "and is extrapolated",
    );
}
