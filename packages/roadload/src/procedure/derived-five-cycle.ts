import {
  type DistancePerEnergy,
  InputError,
  type Quantity,
  type Relation,
  relation,
  type Source,
} from "@tarewatt/units";

/** Coefficients of one curve of {@link derivedFiveCycle}. */
export interface DerivedFiveCycleCurve {
  /** Intercept, in gal/mi. */
  readonly intercept: number;
  /** Slope. */
  readonly slope: number;
}

/** Coefficients of {@link derivedFiveCycle} for city and highway. */
export interface DerivedFiveCycleSet {
  /** For the fuel economy of the city. */
  readonly city: DerivedFiveCycleCurve;
  /** For the fuel economy of the highway. */
  readonly highway: DerivedFiveCycleCurve;
  /** Model years that it was made for. */
  readonly modelYears: string;
  /** Where the values are from. */
  readonly source: Source;
}

/**
 * Published sets of derived 5-cycle coefficients, fuel economies in mi/gal (MPGe). Neither was made for battery-electric
 * vehicles, and the intercept weighs most on those that use little.
 *
 * @example
 * derivedFiveCycleSets["2006"].city.slope; // 1.1805
 */
export const derivedFiveCycleSets: Readonly<Record<"2006" | "2015", DerivedFiveCycleSet>> =
  /* @__PURE__ */ Object.freeze({
    "2006": /* @__PURE__ */ Object.freeze({
      city: /* @__PURE__ */ Object.freeze({ intercept: 0.003259, slope: 1.1805 }),
      highway: /* @__PURE__ */ Object.freeze({ intercept: 0.001376, slope: 1.3466 }),
      modelYears: "2008 and later, until replaced",
      source: /* @__PURE__ */ Object.freeze({
        document: "40 CFR 600.210, rule of 2006",
        section: "as two unrelated open data preparations have it",
        status: "quoted",
      }),
    }),
    "2015": /* @__PURE__ */ Object.freeze({
      city: /* @__PURE__ */ Object.freeze({ intercept: 0.004091, slope: 1.1601 }),
      highway: /* @__PURE__ */ Object.freeze({ intercept: 0.003191, slope: 1.2945 }),
      modelYears: "2017 and later",
      source: /* @__PURE__ */ Object.freeze({
        document: "40 CFR 600.210, letter of the Administrator of 2015",
        section: "as one open script has it; the letter was not seen",
        status: "quoted",
      }),
    }),
  });

/** Inputs of {@link derivedFiveCycle}. */
export interface DerivedFiveCycleInputs {
  /** Unadjusted fuel economy on UDDS or HWFET. */
  readonly economy: Quantity<DistancePerEnergy>;
  /** Intercept of the set, in gal/mi. */
  readonly intercept: number;
  /** Slope of the set. */
  readonly slope: number;
}

/**
 * Derived 5-cycle fuel economy from an unadjusted one: what a vehicle of its economy typically has over five cycles.
 *
 * The form was seen in 40 CFR 600.210-12; for coefficients see {@link derivedFiveCycleSets}.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`; otherwise as every relation
 * @example
 * derivedFiveCycle({ economy: q("150 MPGe"), ...derivedFiveCycleSets["2006"].city }).in("MPGe"); // 89.86
 */
export const derivedFiveCycle: Relation<DerivedFiveCycleInputs, Quantity<DistancePerEnergy>> = /* @__PURE__ */ relation(
  {
    name: "derived 5-cycle fuel economy",
    inputs: {
      economy: { symbol: "FE_2", unit: "MPGe", meaning: "unadjusted fuel economy", above: 0 },
      intercept: { symbol: "i", unit: "1", meaning: "intercept, gal/mi", atLeast: 0, atMost: 0.1 },
      slope: { symbol: "k", unit: "1", meaning: "slope", above: 0, atMost: 10 },
    },
    result: { symbol: "FE_5", unit: "MPGe" },
    expression: "1/(i + k/FE_2)",
    source: { document: "40 CFR 600.210-12", status: "seen" },
    evaluate: ({ economy, intercept, slope }) => 1 / (intercept + slope / economy),
  },
);

/** The set of this name. @internal */
export function derivedSet(name: unknown): DerivedFiveCycleSet {
  if (name === "2006" || name === "2015") return derivedFiveCycleSets[name];
  throw new InputError("WRONG_CHOICE", 'set must be "2006" or "2015"', { name: "set" });
}
