import { type Quantity, readOptions, type Source, type Temperature } from "@tarewatt/units";

/** A published test of a heat pump for vehicles. */
export interface HeatPumpTest {
  /** Temperature outside, in °C. */
  readonly ambient: number;
  /** Heat moved per electric energy. Whether fans and pumps are counted was not visible. */
  readonly performance: number;
  /** Heating or cooling power in W, where it was printed. */
  readonly power?: number;
  /** Where it is from. */
  readonly source: Source;
}

const test = (ambient: number, performance: number, document: string, power?: number): HeatPumpTest =>
  Object.freeze({
    ambient,
    performance,
    ...(power === undefined ? {} : { power }),
    source: Object.freeze({ document, status: "seen" }),
  });

/**
 * Published tests of heat pumps for vehicles, on benches. They conflict: fresh air, temperature of the air supplied and what is
 * counted differ, so that one gives 3.26 at −10 °C and another 1.9 at −1 °C. Use them as a range.
 */
export const heatPumpTests = /* @__PURE__ */ Object.freeze({
  /** Tests of heating. */
  heating: /* @__PURE__ */ Object.freeze([
    /* @__PURE__ */ test(-20, 1.7, "Energy Procedia (ICAE 2014), full fresh air: above 1.7"),
    /* @__PURE__ */ test(-20, 1.8, "SAE 2019-01-0912, carbon dioxide, abstract", 5600),
    /* @__PURE__ */ test(-10, 3.26, "journal abstract on steady state and start of air-source heat pumps", 3100),
    /* @__PURE__ */ test(-5, 3.2, "Energies, June 2020, R134a, abstract", 3600),
    /* @__PURE__ */ test(
      -1,
      1.9,
      "Advances in Mechanical Engineering 2019, doi 10.1177/1687814019845806, water loop",
      4200,
    ),
  ]),
  /** Tests of cooling. */
  cooling: /* @__PURE__ */ Object.freeze([
    /* @__PURE__ */ test(45.4, 1.8, "Advances in Mechanical Engineering 2019, doi 10.1177/1687814019845806", 3880),
  ]),
} as const);

/** Heat moved per electric energy, as a range. */
export interface Performance {
  /** Unfavourable end. */
  readonly low: number;
  /** Most likely value. */
  readonly likely: number;
  /** Favourable end. */
  readonly high: number;
  /** What a reader should doubt. */
  readonly warnings: readonly string[];
}

/** The ranges that the tests span. Likely values are the geometric means of their ends: an assumption. */
const ranges = [
  { ambient: -20, low: 1.7, likely: 1.75, high: 1.8 },
  { ambient: -10, low: 1.5, likely: 2.2, high: 3.3 },
] as const;

/** Nothing was seen below the first, or above 0 °C. */
const COLDEST = -20;
const WARMEST = 0;

/** Inputs of {@link heatPumpPerformance}. */
export interface HeatPumpPerformanceOptions {
  /** Temperature outside, −40 to 30 °C. */
  readonly ambient: Quantity<Temperature>;
}

/**
 * Heating performance of heat pumps for vehicles at a temperature, as the range of published tests: 1.5 to 3.3 from −10 to 0 °C, 1.7
 * to 1.8 at −20 °C, between them by straight lines. The range narrows in the cold because fewer tests were seen, not because
 * more is known.
 *
 * @param options - temperature outside
 * @returns range, with a warning where nothing was seen
 * @throws InputError `OUT_OF_RANGE`, and what `readOptions` throws
 * @example
 * heatPumpPerformance({ ambient: q("-7 °C") }).likely; // 2.2
 */
export function heatPumpPerformance(options: HeatPumpPerformanceOptions): Performance {
  const { ambient } = readOptions("heatPumpPerformance", options, {
    ambient: { unit: "°C", atLeast: -40, atMost: 30 },
  });
  const [cold, mild] = ranges;
  const share = Math.min(1, Math.max(0, (ambient - cold.ambient) / (mild.ambient - cold.ambient)));
  const between = (which: "low" | "likely" | "high") => cold[which] + share * (mild[which] - cold[which]);
  const seen = ambient >= COLDEST && ambient <= WARMEST;
  const conflict = "published tests of heat pumps conflict (1.9 at −1 °C, 3.26 at −10 °C): take the whole range";
  const parked =
    "seven parked cars at −10 °C showed no clear advantage of heat pumps (press reports of a motoring association, 2022)";
  return Object.freeze({
    // Below the coldest test it may be no better than a resistance heater.
    low: ambient < COLDEST ? 1 : between("low"),
    likely: between("likely"),
    high: between("high"),
    warnings: Object.freeze([
      conflict,
      ...(ambient <= -5 ? [parked] : []),
      ...(seen
        ? []
        : [`no test of a heat pump was seen outside ${COLDEST} to ${WARMEST} °C: the nearest range is used`]),
    ]),
  });
}

const practice: Source = /* @__PURE__ */ Object.freeze({
  document: "common practice, no source",
  status: "common practice",
});

/** Cooling performance where nothing is known: one test was seen, 1.8 at 45 °C; the rest is common practice without a source. */
export const coolingPerformancePrior = /* @__PURE__ */ Object.freeze({
  /** Unfavourable end. */
  low: 1.5,
  /** Most likely value. */
  likely: 2.2,
  /** Favourable end. */
  high: 3,
  /** Where it is from. */
  source: practice,
} as const);
