import { boxCell } from "./box-cell.js";
import type { PrismaticCell } from "./cell.js";
import type { BoxCellOptions } from "./cell-options.js";

/**
 * A prismatic cell (hard case) from its data sheet, with its volume, energy, specific energy and energy density.
 *
 * @param options - sizes, capacity, nominal voltage and mass of one cell, and what else is known
 * @returns the cell; figures that no cell on sale has are kept, with a warning
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION` for the options;
 *   `INCONSISTENT` when the voltages are out of order, or the energy contradicts capacity × voltage by more than 3 %
 * @example
 * const cell = prismaticCell({
 *   thickness: q("52 mm"),
 *   width: q("148 mm"),
 *   height: q("102 mm"),
 *   capacity: q("140 Ah"),
 *   nominalVoltage: q("3.65 V"),
 *   mass: q("2.03 kg"),
 * });
 * cell.energy; // 511 Wh
 */
export function prismaticCell(options: BoxCellOptions): PrismaticCell {
  return boxCell("prismaticCell", "prismatic", options);
}
