import type { Source } from "@tarewatt/units";
import { frozen } from "../check/frozen.js";
import { nominalVoltages, type PublishedRange } from "./nominal-voltages.js";
import type { openCircuitCurves } from "./open-circuit-curves.js";
import type { electrodeMaterials } from "./theoretical-capacity.js";

/** What is published about the cells of one chemistry. */
export interface Chemistry {
  /** What it is called in the trade. */
  readonly name: string;
  /** Nominal voltage of one cell in V, as a range. */
  readonly nominalVoltage: PublishedRange;
  /** Specific energy of the cell in Wh/kg, oldest first. */
  readonly specificEnergy: readonly PublishedRange[];
  /** Energy density of the cell in Wh/L, oldest first. */
  readonly energyDensity: readonly PublishedRange[];
  /** Which of `openCircuitCurves` belong to it; empty when none was published. */
  readonly openCircuit: readonly (keyof typeof openCircuitCurves)[];
  /** Which of `electrodeMaterials` make its positive electrode; empty when none is tabled. */
  readonly positiveElectrode: readonly (keyof typeof electrodeMaterials)[];
  /** What to keep in mind. */
  readonly note: string;
}

const table: Source = { document: "public web table of lithium-ion chemistries, about 2015", status: "seen" };
const points: Source = {
  document: "teardown tables, maker slides and study constants, see publishedCells",
  status: "quoted",
};
const slideToTable: Source = {
  document: "from a maker's slide on a 94 Ah cell (low end) to a public web table of about 2015 (high end)",
  status: "quoted",
};
const recalled: Source = { document: "trade knowledge of automotive cells", status: "memory" };
const early = "cells of about 2015";
const automotive = "automotive cells of the 2020s";
// Written out, so that a bundler can drop them: a text put together counts as a side effect.
const nickelRich = "nickel-rich automotive cells of the 2020s";
const prismatic = "prismatic automotive cells of the 2020s";

const range = (era: string, low: number, high: number, source: Source): PublishedRange => ({ era, low, high, source });

/**
 * Chemistries of traction cells: nominal voltage (V), specific energy (Wh/kg) and energy density (Wh/L) of the cell as published.
 *
 * The ranges differ by era, and a chemistry improves within its era, too: take a value of your own cell when you have one. The
 * ranges of the 2020s are remembered; the cells that were published, {@link publishedCells}, lie within them.
 *
 * @example
 * chemistries.LFP.specificEnergy.at(-1)?.high; // 190
 */
export const chemistries: {
  /** Lithium cobalt oxide. */
  readonly LCO: Chemistry;
  /** Lithium manganese oxide. */
  readonly LMO: Chemistry;
  /** Lithium nickel manganese cobalt oxide, all grades. */
  readonly NMC: Chemistry;
  /** Lithium nickel cobalt aluminium oxide. */
  readonly NCA: Chemistry;
  /** Lithium iron phosphate. */
  readonly LFP: Chemistry;
  /** Lithium manganese iron phosphate. */
  readonly LMFP: Chemistry;
  /** Sodium ion with a layered oxide. */
  readonly sodiumIon: Chemistry;
} = /* @__PURE__ */ (() =>
  frozen({
    LCO: {
      name: "lithium cobalt oxide",
      nominalVoltage: nominalVoltages.LCO,
      specificEnergy: [range(early, 195, 195, table)],
      energyDensity: [range(early, 560, 560, table)],
      openCircuit: [],
      positiveElectrode: ["cobaltOxide"],
      note: "Portable cells; not used for traction.",
    },
    LMO: {
      name: "lithium manganese oxide",
      nominalVoltage: nominalVoltages.LMO,
      specificEnergy: [range(early, 150, 150, table)],
      energyDensity: [range(early, 420, 420, table)],
      openCircuit: [],
      positiveElectrode: ["manganeseOxide"],
      note: "Early traction cells, often blended with NMC.",
    },
    NMC: {
      name: "lithium nickel manganese cobalt oxide",
      nominalVoltage: nominalVoltages.NMC,
      specificEnergy: [range(early, 174, 205, slideToTable), range(nickelRich, 240, 280, recalled)],
      energyDensity: [range(early, 352, 580, slideToTable), range(nickelRich, 600, 750, recalled)],
      openCircuit: ["nmc811SiliconGraphite", "nmcPouch", "nickelRich", "nickelRichSecond"],
      positiveElectrode: ["nmc111", "nmc811"],
      note: "Low ends of about 2015 are a maker's slide on a 94 Ah cell of NMC111; 257 to 280 Wh/kg are quoted for cells of 2020.",
    },
    NCA: {
      name: "lithium nickel cobalt aluminium oxide",
      nominalVoltage: nominalVoltages.NCA,
      specificEnergy: [range(early, 220, 220, table), range(nickelRich, 240, 280, recalled)],
      energyDensity: [range(early, 600, 600, table), range(nickelRich, 600, 750, recalled)],
      openCircuit: [],
      positiveElectrode: [],
      note: "One range is given for NMC and NCA of the 2020s.",
    },
    LFP: {
      name: "lithium iron phosphate",
      nominalVoltage: nominalVoltages.LFP,
      specificEnergy: [range(early, 90, 130, table), range(prismatic, 160, 190, recalled)],
      energyDensity: [range(early, 333, 333, table), range(prismatic, 350, 430, recalled)],
      openCircuit: ["ironPhosphate"],
      positiveElectrode: ["ironPhosphate"],
      note: "Published cells of the 2020s: 160 Wh/kg and 355 Wh/L, 176 Wh/kg and 376 Wh/L.",
    },
    LMFP: {
      name: "lithium manganese iron phosphate",
      nominalVoltage: nominalVoltages.LMFP,
      specificEnergy: [range(automotive, 180, 220, recalled)],
      energyDensity: [],
      openCircuit: [],
      positiveElectrode: [],
      note: "Low confidence: no published cell was seen.",
    },
    sodiumIon: {
      name: "sodium ion, layered oxide",
      nominalVoltage: nominalVoltages.sodiumIon,
      specificEnergy: [range(automotive, 140, 160, points)],
      energyDensity: [range(automotive, 250, 330, points)],
      openCircuit: [],
      positiveElectrode: [],
      note: "Quoted are 145 Wh/kg with 330 Wh/L, and about 150 Wh/kg.",
    },
  }))();

/** Name of one of {@link chemistries}. */
export type ChemistryName = keyof typeof chemistries;
