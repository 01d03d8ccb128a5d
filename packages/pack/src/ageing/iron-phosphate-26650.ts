import {
  type Quantity,
  type Ratio,
  type Relation,
  type RelationInput,
  relation,
  type Source,
  type Temperature,
  type Time,
} from "@tarewatt/units";
import { depth, temperature } from "./relation-inputs.js";

/** Inputs of {@link ironPhosphate26650CalendarFade} and {@link ironPhosphate26650CalendarResistance}. */
export interface IronPhosphate26650CalendarInputs {
  /** State of charge at which the cell rests, 0 to 1. */
  readonly stateOfCharge: number | Quantity<Ratio>;
  /** Temperature of the cell. */
  readonly temperature: Quantity<Temperature>;
  /** Time since it was new. Not negative. */
  readonly time: Quantity<Time>;
}

/** Inputs of {@link ironPhosphate26650CycleFade}. */
export interface IronPhosphate26650CycleFadeInputs {
  /** C-rate of the cycling, in 1/h. Not negative. */
  readonly rate: number | Quantity<Ratio>;
  /** Depth of a cycle, 0 to 1. */
  readonly depth: number | Quantity<Ratio>;
  /** Full equivalent cycles: charge discharged over capacity. Not negative. */
  readonly equivalentCycles: number | Quantity<Ratio>;
}

/** @internal */
export const ironPhosphate26650Source: Source = /* @__PURE__ */ Object.freeze({
  document: "J. Energy Storage 17 (2018) 153, as three open codes of its authors' university carry it",
  status: "quoted",
});
const validity =
  "one LFP cell 26650 of 3 Ah; tests of 29 months at 0 °C to 60 °C, cycling at 25 °C and 40 °C (from memory)";
const stateOfCharge: RelationInput = {
  symbol: "s",
  unit: "1",
  meaning: "state of charge at rest",
  atLeast: 0,
  atMost: 1,
};
const time: RelationInput = { symbol: "t", unit: "s", meaning: "time since new", atLeast: 0 };
const calendar = { stateOfCharge, temperature, time };

/**
 * Share of its capacity that one iron-phosphate cylinder 26650 of 3 Ah loses by time.
 *
 * Returns a fraction. No forecast of another cell. Source: J. Energy Storage 17 (2018) 153 as quoted.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * ironPhosphate26650CalendarFade({ stateOfCharge: 0.5, temperature: q("25 °C"), time: q("365 d") }).toFixed(4); // "0.0425"
 */
export const ironPhosphate26650CalendarFade: Relation<IronPhosphate26650CalendarInputs, number> =
  /* @__PURE__ */ relation({
    name: "capacity lost by time, iron-phosphate cell of 3 Ah",
    inputs: calendar,
    result: { symbol: "q_cal", unit: "1" },
    expression: "1.2571·10⁻⁵·exp(−17126/8.3145·(1/T − 1/298.15))·(2.8575·(s − 0.5)³ + 0.60225)·√(t)",
    source: ironPhosphate26650Source,
    validity,
    evaluate: ({ stateOfCharge: state, temperature: kelvin, time: seconds }) =>
      1.2571e-5 *
      Math.exp((-17126 / 8.3145) * (1 / kelvin - 1 / 298.15)) *
      (2.8575 * (state - 0.5) ** 3 + 0.60225) *
      Math.sqrt(seconds),
  });

/**
 * Growth of the resistance of one iron-phosphate cylinder 26650 of 3 Ah by time, as a share of that when new.
 *
 * Returns a ratio. No forecast of another cell. Source: J. Energy Storage 17 (2018) 153 as quoted; one of three codes has
 * the sign of the term in the state of charge the other way.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * ironPhosphate26650CalendarResistance({ stateOfCharge: 0.5, temperature: q("25 °C"), time: q("365 d") }).toFixed(4); // "0.0168"
 */
export const ironPhosphate26650CalendarResistance: Relation<IronPhosphate26650CalendarInputs, number> =
  /* @__PURE__ */ relation({
    name: "resistance gained by time, iron-phosphate cell of 3 Ah",
    inputs: calendar,
    result: { symbol: "r_cal", unit: "1" },
    expression: "3.419·10⁻¹⁰·exp(−71827/8.3145·(1/T − 1/298.15))·(3.3903·(s − 0.5)² + 1.5604)·t",
    source: ironPhosphate26650Source,
    validity,
    evaluate: ({ stateOfCharge: state, temperature: kelvin, time: seconds }) =>
      3.419e-10 *
      Math.exp((-71827 / 8.3145) * (1 / kelvin - 1 / 298.15)) *
      (3.3903 * (state - 0.5) ** 2 + 1.5604) *
      seconds,
  });

/**
 * Share of its capacity that one iron-phosphate cylinder 26650 of 3 Ah loses by cycling.
 *
 * Returns a fraction. No forecast of another cell. That the published figure is in percent is inferred. Source: J. Power
 * Sources (2020), the cycle part of the same study, as two open codes carry it.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * ironPhosphate26650CycleFade({ rate: 1, depth: 0.8, equivalentCycles: 1000 }).toFixed(4); // "0.0569"
 */
export const ironPhosphate26650CycleFade: Relation<IronPhosphate26650CycleFadeInputs, number> =
  /* @__PURE__ */ relation({
    name: "capacity lost by cycling, iron-phosphate cell of 3 Ah",
    inputs: {
      rate: { symbol: "C", unit: "1", meaning: "C-rate in 1/h", atLeast: 0 },
      depth,
      equivalentCycles: { symbol: "N", unit: "1", meaning: "full equivalent cycles", atLeast: 0 },
    },
    result: { symbol: "q_cyc", unit: "1" },
    expression: "(0.0630·C + 0.0971)·(4.0253·(D − 0.6)³ + 1.0923)·√(N)/100",
    source: {
      document: "J. Power Sources (2020), cycle ageing of the cell of J. Energy Storage 17 (2018) 153",
      status: "quoted",
    },
    validity,
    evaluate: ({ rate, depth, equivalentCycles }) =>
      ((0.063 * rate + 0.0971) * (4.0253 * (depth - 0.6) ** 3 + 1.0923) * Math.sqrt(equivalentCycles)) / 100,
  });
