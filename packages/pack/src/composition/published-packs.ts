import type { Source } from "@tarewatt/units";
import { frozen } from "../check/frozen.js";

/** One published pack. */
export interface PublishedPack {
  /** Cell chemistry as published. */
  readonly chemistry: string;
  /** Total energy in kWh. */
  readonly total: number;
  /** Usable energy in kWh. */
  readonly usable: number;
  /** Mass in kg. */
  readonly mass: number;
}

/** @internal */
export const publishedPacksSource: Source = /* @__PURE__ */ Object.freeze({
  document: "trade article of April 2020 on packs of electric cars, entries estimated by its author left out",
  status: "quoted",
});

// biome-ignore format: one pack a line
const rows: readonly (readonly [string, number, number, number])[] = [
  ["NMC111", 35.8, 32, 349],
  ["NMC111", 33.77, 27.2, 256],
  ["NMC523", 39.46, 36, 303],
  ["NMC523", 50, 46, 356],
  ["NMC622", 36.8, 32.3, 248],
  ["NMC622", 44.1, 41, 305],
  ["NMC622", 42.2, 37.9, 278],
  ["NMC622", 62.2, 58, 435],
  ["NMC622", 67.5, 64, 452],
  ["NMC622", 40.4, 38.3, 359],
  ["NMC622", 90, 84.7, 603],
  ["NMC622", 85, 80, 652],
  ["NMC622", 95, 86.5, 700],
  ["NMC622", 93.4, 83.7, 630],
  ["NMC712", 22, 21.3, 165],
  ["NMC712", 54.66, 52, 326],
  ["NMC712", 68, 64, 430],
  ["NCA", 102.4, 98.4, 630],
  ["NCA", 80.5, 76, 478],
];

/**
 * Total energy, usable energy (kWh) and mass (kg) of 19 car packs that were on sale by 2020.
 *
 * Quoted from one trade article; the chemistry of the packs of 50, 22 and 68 kWh is its author's guess.
 *
 * @example
 * publishedPacks.length; // 19
 */
export const publishedPacks: readonly PublishedPack[] = /* @__PURE__ */ frozen(
  /* @__PURE__ */ rows.map(([chemistry, total, usable, mass]): PublishedPack => ({ chemistry, total, usable, mass })),
);
