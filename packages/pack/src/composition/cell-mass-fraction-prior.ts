import { frozen } from "../check/frozen.js";
import type { FractionPrior } from "./fraction-prior.js";

const meaning = "mass of the cells over mass of the pack";

/**
 * Cell mass fractions to expect, by construction of the pack: dimensionless, 0 to 1.
 *
 * - `moduleBased`: cells in modules, modules in a housing. About a third of such a pack's mass is not cells (common practice,
 *   no source); the ends are those of six published packs.
 * - `cellToPack`: cells straight in the housing. Published are 0.845 to 0.90; makers' claims tend to be optimistic, so the low
 *   end is widened to 0.72, computed here from the specific energies of a pack and of its likely cells. For the value to
 *   expect there is no source: it is the middle of the widened range.
 *
 * The published values come second hand, from trade articles. Choose one, and say which.
 *
 * @example
 * cellMassFractionPrior.moduleBased.likely; // 0.66
 */
export const cellMassFractionPrior: {
  /** Cells in modules, modules in a housing. */
  readonly moduleBased: FractionPrior;
  /** Cells straight in the housing. */
  readonly cellToPack: FractionPrior;
} = /* @__PURE__ */ frozen({
  moduleBased: {
    meaning,
    low: 0.58,
    likely: 0.66,
    high: 0.77,
    extent: "published ends",
    points: [
      { value: 0.58, of: "air-cooled pack of pouch cells" },
      { value: 0.61, of: "air-cooled pack of pouch cells" },
      { value: 0.63, of: "air-cooled pack of pouch cells" },
      { value: 0.64, of: "air-cooled pack of pouch cells" },
      { value: 0.75, of: "liquid-cooled pack of 96 large prismatic cells" },
      { value: 0.77, of: "liquid-cooled pack of 96 large prismatic cells" },
    ],
    source: { document: "trade article on six battery packs", status: "quoted" },
    likelySource: { document: "about a third of a module-based pack's mass is not cells", status: "common practice" },
    note: "Two kinds of pack lie behind it, about 0.62 air-cooled and 0.76 liquid-cooled; the article itself quotes 0.60 as usual.",
  },
  cellToPack: {
    meaning,
    low: 0.72,
    likely: 0.81,
    high: 0.9,
    extent: "published ends, low end widened",
    points: [
      { value: 0.845, of: "claim of the maker of an LFP pack" },
      { value: 0.85, of: "low end of a class average for LFP packs" },
      { value: 0.9, of: "high end of a class average for LFP packs" },
    ],
    source: { document: "trade articles on cell-to-pack LFP batteries", status: "quoted" },
    lowSource: {
      document: "computed, an assumption: a quoted LFP pack of 126 Wh/kg, if its cells are quoted ones of 176 Wh/kg",
      status: "common practice",
    },
    likelySource: { document: "middle of the widened range, an assumption", status: "common practice" },
    note: "Published are 0.845 to 0.90. Claims tend to be optimistic: packs of 126 and 150 Wh/kg, of cells of 160 to 176 Wh/kg, leave 0.72 to 0.94 open.",
  },
});
