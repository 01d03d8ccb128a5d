import { frozen } from "../check/frozen.js";
import type { FractionPrior } from "./fraction-prior.js";

const meaning = "volume of the cells over volume of the pack";

/**
 * Cell volume fractions to expect, by construction of the pack: dimensionless, 0 to 1.
 *
 * Second hand, from trade articles and the constants of one study, and few: give them a wide spread. Choose one, and say which.
 *
 * @example
 * cellVolumeFractionPrior.cellToPack.likely; // 0.6
 */
export const cellVolumeFractionPrior: {
  /** Cells in modules, modules in a housing. */
  readonly moduleBased: FractionPrior;
  /** Cells straight in the housing. */
  readonly cellToPack: FractionPrior;
} = /* @__PURE__ */ frozen({
  moduleBased: {
    meaning,
    low: 0.39,
    likely: 0.43,
    high: 0.55,
    extent: "published ends",
    points: [
      { value: 0.39, of: "nickel-rich pack of a study" },
      { value: 0.4, of: "low end of a class average for nickel-rich packs with modules" },
      { value: 0.45, of: "high end of a class average for nickel-rich packs with modules" },
      { value: 0.55, of: "LFP pack of the same study" },
    ],
    source: { document: "trade articles, and constants of an open study of truck costs", status: "quoted" },
    likelySource: { document: "about the middle of the class average, an assumption", status: "common practice" },
    note: "Whether the LFP pack of the study has modules is not said; its cell mass fraction, 0.71, lies among those that do.",
  },
  cellToPack: {
    meaning,
    low: 0.55,
    likely: 0.6,
    high: 0.624,
    extent: "published ends, low end widened",
    points: [
      { value: 0.6, of: "class average for LFP packs" },
      { value: 0.624, of: "claim of the maker of an LFP pack" },
    ],
    source: { document: "trade articles on cell-to-pack LFP batteries", status: "quoted" },
    lowSource: { document: "an LFP pack of a study, 0.55, as claims tend to be optimistic", status: "common practice" },
    likelySource: { document: "trade articles on cell-to-pack LFP batteries", status: "quoted" },
    note: "All are prismatic LFP cells; round cells leave gaps, see the packing fractions.",
  },
});
