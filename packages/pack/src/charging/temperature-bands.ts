import { type Quantity, readOptions, type Source, type Temperature } from "@tarewatt/units";
import { frozen } from "../check/frozen.js";

/** How fast one module may be charged for long within a band of temperature. */
export interface ChargeRateBand {
  /** Lower end of the band in °C, which belongs to it. */
  readonly from: number;
  /** Upper end in °C, which does not. */
  readonly below: number;
  /** C-rates that the manual allows in the band, in 1/h: from its lower to its upper figure. Both 0: no charging. */
  readonly rate: readonly [lower: number, upper: number];
}

/** What a module's manual allows, against temperature. */
export interface ChargeRateBands {
  /** What it is of, in words. */
  readonly name: string;
  /** The bands, in order of temperature, without a gap. */
  readonly bands: readonly ChargeRateBand[];
  /** Where they are from. */
  readonly source: Source;
  /** What to keep in mind. */
  readonly note: string;
}

/**
 * Continuous charging current that the manual of one iron-phosphate module allows against its temperature: an example of
 * the shape, no limit of another pack.
 *
 * Dimensions: °C, and C-rate in 1/h. Cold cells plate lithium when charged fast, warm ones age.
 *
 * @example
 * ironPhosphateChargeBands.bands[1]?.rate; // [0.1, 0.1]
 */
export const ironPhosphateChargeBands: ChargeRateBands = /* @__PURE__ */ frozen({
  name: "an iron-phosphate module, continuous charge",
  bands: [
    { from: -273.15, below: 0, rate: [0, 0] },
    { from: 0, below: 5, rate: [0.1, 0.1] },
    { from: 5, below: 10, rate: [0.1, 0.2] },
    { from: 10, below: 25, rate: [0.2, 1] },
    { from: 25, below: 50, rate: [0.5, 0.75] },
    { from: 50, below: 60, rate: [0.1, 0.1] },
    { from: 60, below: 1000, rate: [0, 0] },
  ],
  source: { document: "manual of an iron-phosphate module", section: "continuous charge", status: "seen" },
  note: "One module, continuous charge. Where the next band begins lower than the last one ended, both figures are the manual's.",
});

/** Options of {@link chargeRateBand}. */
export interface ChargeRateBandOptions {
  /** Temperature of the cells. */
  readonly temperature: Quantity<Temperature>;
}

/**
 * The band of {@link ironPhosphateChargeBands} that a temperature lies in.
 *
 * @param options - temperature of the cells, from −273.15 °C to below 1000 °C
 * @returns the band, with the C-rates allowed in 1/h; its lower figure is the careful `rateLimit` of a {@link chargeSession},
 *   which refuses the 0 of frost and heat: there the battery must be heated or cooled first
 * @throws InputError `OUT_OF_RANGE`, `WRONG_DIMENSION`, `NOT_A_QUANTITY`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * chargeRateBand({ temperature: q("-5 °C") }).rate; // [0, 0]
 */
export function chargeRateBand(options: ChargeRateBandOptions): ChargeRateBand {
  const rules = { temperature: { unit: "°C", atLeast: -273.15, atMost: 999 } } as const;
  const { temperature } = readOptions("chargeRateBand", options, rules);
  const { bands } = ironPhosphateChargeBands;
  return bands.find(({ below }) => temperature < below) as ChargeRateBand;
}
