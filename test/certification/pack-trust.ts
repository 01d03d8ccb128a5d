import {
  cellMassFractionPrior,
  chemistries,
  publishedCells,
  usableFractionPrior,
  voltageClasses,
} from "@tarewatt/pack";
import type { PackRow } from "./packs.js";

/** Two filed figures of one pack and one year further apart than rounding contradict each other. */
const SAME = 0.02;

/** Why rows are not to be trusted, by their ids; a row without a reason is not in it. No reason looks at what is predicted. */
export function doubtsOf(rows: readonly PackRow[]): ReadonlyMap<string, readonly string[]> {
  return new Map(
    rows.flatMap((row) => {
      const reasons = reasonsOf(row, rows);
      return reasons.length === 0 ? [] : [[row.id, reasons] as const];
    }),
  );
}

/** The best published cells in the lightest published pack, in Wh/kg: more is a figure of the cells. */
const best =
  Math.max(...publishedCells.map(({ specificEnergy = 0 }) => specificEnergy)) * cellMassFractionPrior.cellToPack.high;
/** What the wall gives is at least the usable energy, of which the least published fraction of a pack's energy is known. */
const leastUsable = Math.min(...usableFractionPrior.points.map(({ value }) => value));
/** Highest nominal voltage of the highest class: of nickel-rich cells that are full at 4.2 V (common practice, no source). */
const highest = voltageClasses["800 V"].chargedAtMost * (chemistries.NMC.nominalVoltage.high / 4.2);

function reasonsOf(row: PackRow, rows: readonly PackRow[]): string[] {
  const { voltage, capacity, specificEnergy, fullCharge, match } = row;
  const twins = rows.filter(
    (other) =>
      other.maker === row.maker &&
      other.modelYear === row.modelYear &&
      other.voltage === voltage &&
      other.capacity === capacity &&
      Math.abs(other.specificEnergy / specificEnergy - 1) > SAME,
  );
  return [
    ...(match === "testgroup" ? ["the pack is that of the test group, which may hold others"] : []),
    ...(voltage > highest
      ? [`${voltage} V is above the nominal voltages of the 800 V class: the highest voltage is filed`]
      : []),
    ...(specificEnergy > best
      ? [`${specificEnergy} Wh/kg is above the best cells in the lightest pack: a figure of the cells`]
      : []),
    ...(twins.length > 0
      ? ["the same voltage and capacity are filed with another energy per mass in the same year"]
      : []),
    ...(fullCharge < leastUsable * ((voltage * capacity) / 1000)
      ? ["a full charge takes less from the wall than the least usable fraction of V×Ah"]
      : []),
  ];
}
