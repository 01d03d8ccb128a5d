import { frozen } from "../check/frozen.js";
import type { FractionPrior } from "./fraction-prior.js";
import { publishedPacks, publishedPacksSource } from "./published-packs.js";

/**
 * Usable over total energy to expect: dimensionless, 0 to 1. Lower quartile, median and upper quartile (the R-7 method) of 19 published packs.
 *
 * Valid for nickel-rich packs of about 2020, new; computed here from a quoted list, {@link publishedPacks}.
 *
 * @example
 * usableFractionPrior.likely; // 0.93
 */
export const usableFractionPrior: FractionPrior = /* @__PURE__ */ frozen({
  meaning: "usable energy over total energy",
  low: 0.9,
  likely: 0.93,
  high: 0.95,
  extent: "quartiles",
  points: /* @__PURE__ */ publishedPacks.map(({ chemistry, total, usable }) => ({
    value: usable / total,
    of: `${chemistry} pack of ${total} kWh`,
  })),
  source: publishedPacksSource,
  likelySource: publishedPacksSource,
  note: "Half of the packs lie outside: the least is 0.81, the greatest 0.97. Makers differ in what they call usable.",
});
