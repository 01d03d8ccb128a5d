import type { Source } from "@tarewatt/units";
import { frozen } from "../check/frozen.js";
import type { ChemistryName } from "./chemistries.js";

/** One published cell. */
export interface PublishedCell {
  /** What is known of it. */
  readonly of: string;
  /** Key of its chemistry. */
  readonly chemistry: ChemistryName;
  /** Specific energy in Wh/kg, where published. */
  readonly specificEnergy?: number;
  /** Energy density in Wh/L, where published. */
  readonly energyDensity?: number;
  /** Where it is from. */
  readonly source: Source;
}

const teardown: Source = { document: "teardown tables, Cell Rep. Phys. Sci. (2025)", status: "quoted" };
const study: Source = {
  document: "constants of an open study of truck costs that names a component-to-system paper",
  status: "quoted",
};
const register: Source = { document: "trade article that lists a national register of cells, 2020", status: "quoted" };
const slide: Source = { document: "maker's slide in a trade article", status: "quoted" };
const comparison: Source = { document: "trade article on sodium-ion cells", status: "quoted" };

/**
 * Cells that were published: specific energy (Wh/kg) and energy density (Wh/L) of the cell, each with its source.
 *
 * Points, not a sample: makers and authors publish what is new or good.
 *
 * @example
 * publishedCells.filter(({ chemistry }) => chemistry === "LFP").length; // 2
 */
// biome-ignore format: one cell a line
export const publishedCells: readonly PublishedCell[] = /* @__PURE__ */ frozen([
  { of: "cylinder 46 × 80 mm, 23.125 Ah, NMC811", chemistry: "NMC", specificEnergy: 241, energyDensity: 643.3, source: teardown },
  { of: "long prismatic cell, 135 Ah", chemistry: "LFP", specificEnergy: 160, energyDensity: 355.3, source: teardown },
  { of: "cell of a measured electric car", chemistry: "NMC", specificEnergy: 273, energyDensity: 685, source: study },
  { of: "cell of a measured electric car", chemistry: "LFP", specificEnergy: 176, energyDensity: 376, source: study },
  { of: "prismatic cell 173 × 125 × 45 mm, 94 Ah, NMC111", chemistry: "NMC", specificEnergy: 174, energyDensity: 352, source: slide },
  { of: "pouch cell, NMC811, 2020", chemistry: "NMC", specificEnergy: 269, source: register },
  { of: "pouch cell, NMC811, 2020, another one", chemistry: "NMC", specificEnergy: 280, source: register },
  { of: "pouch cell, NMC712, 2020", chemistry: "NMC", specificEnergy: 265, source: register },
  { of: "cylinder, NMC811, 2020", chemistry: "NMC", specificEnergy: 257, source: register },
  { of: "sodium-ion cell, layered oxide", chemistry: "sodiumIon", specificEnergy: 145, energyDensity: 330, source: comparison },
]);
