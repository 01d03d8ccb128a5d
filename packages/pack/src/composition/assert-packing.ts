import { InputError } from "@tarewatt/units";
import type { Cell } from "../cell/cell.js";
import { hexagonalPackingFraction } from "../geometry/packing-fraction.js";

/** @internal Refuses a volume fraction of upright or lying cylinders that no order of circles reaches, not even without a housing. */
export function assertPacking({ form }: Cell, cellVolumeFraction: number | undefined): void {
  if (form !== "cylindrical" || cellVolumeFraction === undefined) return;
  if (cellVolumeFraction <= hexagonalPackingFraction) return;
  throw new InputError(
    "INCONSISTENT",
    `round cells fill at most π/(2√3) = ${hexagonalPackingFraction.toFixed(4)} of any space, without housing and gaps: got a cell ` +
      `volume fraction of ${Number(cellVolumeFraction.toPrecision(4))}; published packs have 0.39 to 0.62`,
    { cellVolumeFraction, most: hexagonalPackingFraction },
  );
}
