import type { Source } from "@tarewatt/units";
import { frozen } from "../check/frozen.js";

/** One of the tests that a type of lithium battery passes before it may be carried. */
export interface TransportTest {
  /** Its number in the manual. */
  readonly number: string;
  /** What it is about. */
  readonly subject: string;
  /** Its conditions in short; editions differ. */
  readonly conditions: string;
  /** Whether rechargeable batteries need it; cells need more. */
  readonly batteries: boolean;
}

/**
 * The tests of UN 38.3 in short: what "tested for transport" means. T.1 to T.5 are done on the same samples, one after another.
 *
 * Quoted from three test houses; limits vary between editions, and the manual in force decides.
 *
 * @example
 * transportTests.tests.filter(({ batteries }) => batteries).length; // 6
 */
export const transportTests: {
  /** The tests, in the order of their numbers. */
  readonly tests: readonly TransportTest[];
  /** Where they are from. */
  readonly source: Source;
  /** What to keep in mind. */
  readonly note: string;
} = /* @__PURE__ */ frozen({
  tests: [
    { number: "T.1", subject: "altitude", conditions: "11.6 kPa, 6 h", batteries: true },
    {
      number: "T.2",
      subject: "thermal",
      conditions: "75 °C and −40 °C, ten times, 6 h each, 12 h for large ones",
      batteries: true,
    },
    {
      number: "T.3",
      subject: "vibration",
      conditions: "7 Hz to 200 Hz and back in 15 min, 12 times along three axes",
      batteries: true,
    },
    { number: "T.4", subject: "shock", conditions: "150 g for 6 ms, large ones 50 g for 11 ms", batteries: true },
    {
      number: "T.5",
      subject: "external short circuit",
      conditions: "below 0.1 Ω at 55 °C, case at most 170 °C",
      batteries: true,
    },
    { number: "T.6", subject: "impact or crush", conditions: "of the cell", batteries: false },
    { number: "T.7", subject: "overcharge", conditions: "of the battery", batteries: true },
    { number: "T.8", subject: "forced discharge", conditions: "of the cell", batteries: false },
  ],
  source: { document: "UN Manual of Tests and Criteria, 38.3, as three test houses give it", status: "quoted" },
  note: "Half the number of samples is enough for batteries above 12 kg. Limits vary between editions.",
});
