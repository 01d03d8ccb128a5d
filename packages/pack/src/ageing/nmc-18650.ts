import {
  type ElectricCharge,
  type Quantity,
  type Ratio,
  type Relation,
  type RelationInput,
  relation,
  type Source,
  type Temperature,
  type Time,
  type Voltage,
} from "@tarewatt/units";
import { depth, temperature } from "./relation-inputs.js";

/** Inputs of {@link nmc18650CalendarFade} and {@link nmc18650CalendarResistance}. */
export interface Nmc18650CalendarInputs {
  /** Open-circuit voltage at which the cell rests; at least 3.15 V, where the fit reaches nothing. */
  readonly restVoltage: Quantity<Voltage>;
  /** Temperature of the cell. */
  readonly temperature: Quantity<Temperature>;
  /** Time since it was new. Not negative. */
  readonly time: Quantity<Time>;
}

/** Inputs of {@link nmc18650CycleFade} and {@link nmc18650CycleResistance}. */
export interface Nmc18650CycleInputs {
  /** Mean (root mean square) voltage while cycling. */
  readonly meanVoltage: Quantity<Voltage>;
  /** Depth of a cycle, 0 to 1. */
  readonly depth: number | Quantity<Ratio>;
  /** Charge through the cell of 2.05 Ah. Not negative. */
  readonly throughput: Quantity<ElectricCharge>;
}

/** @internal */
export const nmc18650Source: Source = /* @__PURE__ */ Object.freeze({
  document: "J. Power Sources 257 (2014) 325, as open texts carry it",
  status: "quoted",
});
const time: RelationInput = { symbol: "t", unit: "d", meaning: "time since new", atLeast: 0 };
const restVoltage: RelationInput = {
  symbol: "V",
  unit: "V",
  meaning: "open-circuit voltage at rest",
  atLeast: 3.15,
  atMost: 4.3,
};
const meanVoltage: RelationInput = {
  symbol: "V_m",
  unit: "V",
  meaning: "mean voltage while cycling",
  atLeast: 3,
  atMost: 4.3,
};
const throughput: RelationInput = { symbol: "Q", unit: "Ah", meaning: "charge through the cell", atLeast: 0 };
const calendar = { restVoltage, temperature, time };
const cycling = { meanVoltage, depth, throughput };
const validity =
  "one NMC cell 18650 of 2.05 Ah; calendar tests at 35 °C to 50 °C, cycling at 35 °C (ranges from memory)";

/**
 * Share of its capacity that one NMC cylinder 18650 of 2.05 Ah loses by time.
 *
 * Returns a fraction. No forecast of another cell. Source: J. Power Sources 257 (2014) 325 as quoted.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * nmc18650CalendarFade({ restVoltage: q("3.7 V"), temperature: q("25 °C"), time: q("365 d") }).toFixed(4); // "0.0239"
 */
export const nmc18650CalendarFade: Relation<Nmc18650CalendarInputs, number> = /* @__PURE__ */ relation({
  name: "capacity lost by time, NMC cell of 2.05 Ah",
  inputs: calendar,
  result: { symbol: "q_cal", unit: "1" },
  expression: "(7.543·V − 23.75)·10⁶·exp(−6976/T)·t^0.75",
  source: nmc18650Source,
  validity,
  evaluate: ({ restVoltage: volts, temperature: kelvin, time: days }) =>
    (7.543 * volts - 23.75) * 1e6 * Math.exp(-6976 / kelvin) * days ** 0.75,
});

/**
 * Share of its capacity that one NMC cylinder 18650 of 2.05 Ah loses by cycling.
 *
 * Returns a fraction. No forecast of another cell. Source: J. Power Sources 257 (2014) 325 as quoted.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * nmc18650CycleFade({ meanVoltage: q("3.7 V"), depth: 0.8, throughput: q("2000 Ah") }).toFixed(4); // "0.1804"
 */
export const nmc18650CycleFade: Relation<Nmc18650CycleInputs, number> = /* @__PURE__ */ relation({
  name: "capacity lost by cycling, NMC cell of 2.05 Ah",
  inputs: cycling,
  result: { symbol: "q_cyc", unit: "1" },
  expression: "(0.007348·(V_m − 3.667)² + 0.00076 + 0.004081·D)·√(Q)",
  source: nmc18650Source,
  validity,
  evaluate: ({ meanVoltage: volts, depth: share, throughput: charge }) =>
    (0.007348 * (volts - 3.667) ** 2 + 0.00076 + 0.004081 * share) * Math.sqrt(charge),
});

/**
 * Growth of the resistance of one NMC cylinder 18650 of 2.05 Ah by time, as a share of that when new.
 *
 * Returns a ratio: 0.05 is five percent more. No forecast of another cell. Source: J. Power Sources 257 (2014) 325 as quoted.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * nmc18650CalendarResistance({ restVoltage: q("3.7 V"), temperature: q("25 °C"), time: q("365 d") }).toFixed(4); // "0.0507"
 */
export const nmc18650CalendarResistance: Relation<Nmc18650CalendarInputs, number> = /* @__PURE__ */ relation({
  name: "resistance gained by time, NMC cell of 2.05 Ah",
  inputs: calendar,
  result: { symbol: "r_cal", unit: "1" },
  expression: "(5.270·V − 16.32)·10⁵·exp(−5986/T)·t^0.75",
  source: nmc18650Source,
  validity,
  evaluate: ({ restVoltage: volts, temperature: kelvin, time: days }) =>
    (5.27 * volts - 16.32) * 1e5 * Math.exp(-5986 / kelvin) * days ** 0.75,
});

/**
 * Growth of the resistance of one NMC cylinder 18650 of 2.05 Ah by cycling, as a share of that when new.
 *
 * Returns a ratio. No forecast of another cell. The fit turns negative for shallow cycles near 3.725 V; there it is 0.
 * Source: J. Power Sources 257 (2014) 325, from memory.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * nmc18650CycleResistance({ meanVoltage: q("3.7 V"), depth: 0.8, throughput: q("2000 Ah") }).toFixed(4); // "0.4175"
 */
export const nmc18650CycleResistance: Relation<Nmc18650CycleInputs, number> = /* @__PURE__ */ relation({
  name: "resistance gained by cycling, NMC cell of 2.05 Ah",
  inputs: cycling,
  result: { symbol: "r_cyc", unit: "1" },
  expression: "max(0, 0.0002153·(V_m − 3.725)² − 0.00001521 + 0.0002798·D)·Q",
  source: { document: "J. Power Sources 257 (2014) 325", status: "memory" },
  validity,
  evaluate: ({ meanVoltage: volts, depth: share, throughput: charge }) =>
    Math.max(0, 0.0002153 * (volts - 3.725) ** 2 - 0.00001521 + 0.0002798 * share) * charge,
});
