import { boxCell } from "./box-cell.js";
import type { PouchCell } from "./cell.js";
import type { BoxCellOptions } from "./cell-options.js";

/**
 * A pouch cell (soft laminate) from its data sheet, with its volume, energy, specific energy and energy density.
 *
 * The sizes are those of the body, without the tabs; a rim counts as far as the sizes include it.
 *
 * @param options - sizes, capacity, nominal voltage and mass of one cell, and what else is known
 * @returns the cell; figures that no cell on sale has are kept, with a warning
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `MISSING_OPTION` for the options;
 *   `INCONSISTENT` when the voltages are out of order, or the energy contradicts capacity × voltage by more than 3 %
 * @example
 * const cell = pouchCell({
 *   thickness: q("12 mm"),
 *   width: q("100 mm"),
 *   height: q("350 mm"),
 *   capacity: q("78 Ah"),
 *   nominalVoltage: q("3.65 V"),
 *   mass: q("1.07 kg"),
 * });
 * cell.volume; // 420 mL
 */
export function pouchCell(options: BoxCellOptions): PouchCell {
  return boxCell("pouchCell", "pouch", options);
}
