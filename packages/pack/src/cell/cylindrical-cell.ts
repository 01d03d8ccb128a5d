import { readOptions } from "@tarewatt/units";
import type { CylindricalCell } from "./cell.js";
import { type CylindricalCellOptions, cellRules, cellTexts, LENGTH } from "./cell-options.js";
import { cellProperties } from "./cell-properties.js";
import { cylinderVolume } from "./cylinder-volume.js";

/**
 * A cylindrical cell from its data sheet, with its volume, energy, specific energy and energy density.
 *
 * @param options - sizes, capacity, nominal voltage and mass of one cell, and what else is known
 * @returns the cell; figures that no cell on sale has are kept, with a warning
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION` for the options;
 *   `INCONSISTENT` when the voltages are out of order, or the energy contradicts capacity × voltage by more than 3 %
 * @example
 * const cell = cylindricalCell({
 *   diameter: q("46 mm"),
 *   height: q("80 mm"),
 *   capacity: q("23.125 Ah"),
 *   nominalVoltage: q("3.7 V"),
 *   mass: q("355 g"),
 * });
 * cell.specificEnergy; // 241.021 Wh/kg
 */
export function cylindricalCell(options: CylindricalCellOptions): CylindricalCell {
  readOptions("cylindricalCell", options, { diameter: LENGTH, height: LENGTH, ...cellRules }, cellTexts);
  const { diameter, height } = options;
  const dimensions = Object.freeze({ diameter, height });
  const form = "cylindrical";
  return Object.freeze({
    form,
    dimensions,
    ...cellProperties(options, {
      form,
      sizes: [diameter, height],
      volume: cylinderVolume(dimensions),
      volumeStep: () => cylinderVolume.explain(dimensions),
    }),
  });
}
