import {
  type ElectricCharge,
  type Quantity,
  type Ratio,
  type Relation,
  relation,
  type Source,
  type Temperature,
} from "@tarewatt/units";
import { temperature } from "./relation-inputs.js";

/** @internal */
export const ironPhosphate2200Source: Source = /* @__PURE__ */ Object.freeze({
  document: "J. Power Sources 196 (2011) 3942, as a thesis carries it",
  status: "quoted",
});

/** Inputs of {@link ironPhosphate2200CycleFade}. */
export interface IronPhosphate2200CycleFadeInputs {
  /** C-rate of the cycling, in 1/h. Fitted from 0.5 to 10. */
  readonly rate: number | Quantity<Ratio>;
  /** Temperature of the cell. Fitted from −30 °C to 60 °C (range from memory). */
  readonly temperature: Quantity<Temperature>;
  /** Charge that the cell of 2.2 Ah has discharged. Not negative. */
  readonly throughput: Quantity<ElectricCharge>;
}

/**
 * Share of its capacity that one iron-phosphate cylinder of 2.2 Ah loses by cycling; no loss by mere time is in it.
 *
 * Returns a fraction. No forecast of another cell: the throughput is that of this one, so scale it by capacity, and newer
 * cells last longer. At equal throughput the fit loses less at 2C than at C/2, which is its own odd feature. Source: J.
 * Power Sources 196 (2011) 3942 as quoted by a thesis; the cubic for the factor gives its four published values.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * ironPhosphate2200CycleFade({ rate: 0.5, temperature: q("60 °C"), throughput: q("1000 Ah") }).toFixed(4); // "0.1617"
 */
export const ironPhosphate2200CycleFade: Relation<IronPhosphate2200CycleFadeInputs, number> = /* @__PURE__ */ relation({
  name: "capacity lost by cycling, iron-phosphate cell of 2.2 Ah",
  inputs: {
    rate: { symbol: "C", unit: "1", meaning: "C-rate in 1/h", above: 0, atMost: 12 },
    temperature,
    throughput: { symbol: "Q", unit: "Ah", meaning: "charge discharged by the cell", atLeast: 0 },
  },
  result: { symbol: "q_loss", unit: "1" },
  expression: "(36041.6979 − 9418.914·C + 1214.955·C² − 47.836·C³)·exp((370.3·C − 31700)/(8.314·T))·Q^0.55/100",
  source: ironPhosphate2200Source,
  validity: "one LFP cell of 2.2 Ah, C/2 to 10C, −30 °C to 60 °C",
  evaluate: ({ rate, temperature, throughput }) =>
    ((36041.6979 - 9418.914 * rate + 1214.955 * rate ** 2 - 47.836 * rate ** 3) *
      Math.exp((370.3 * rate - 31700) / (8.314 * temperature)) *
      throughput ** 0.55) /
    100,
});
