import { type Energy, InputError, type Mass, type Quantity } from "@tarewatt/units";
import { cellMassFractionPrior } from "./cell-mass-fraction-prior.js";

/** Figures of a pack that were computed, and those that were stated elsewhere. */
interface StatedFigures {
  readonly cellMassFraction: number;
  readonly cells: Quantity<Mass>;
  readonly mass: Quantity<Mass>;
  readonly total: Quantity<Energy>;
  readonly stated: {
    readonly statedMass?: Quantity<Mass> | undefined;
    readonly statedEnergy?: Quantity<Energy> | undefined;
  };
}

/** Shares beyond which two figures of one pack contradict each other: published ones are rounded. */
const APART = { mass: 0.05, energy: 0.03 } as const;

/** Usable over total energy of 19 published packs lies between these, so a stated energy may be the usable one. */
const USABLE = { from: 0.81, to: 0.97 } as const;

/** @internal Sets what was stated beside what was computed; refuses a pack lighter than its cells. */
export function statedFigures({ cellMassFraction, cells, mass, total, stated }: StatedFigures): string[] {
  const { statedMass, statedEnergy } = stated;
  if (statedMass !== undefined && statedMass.compareTo(cells) < 0) {
    throw new InputError(
      "INCONSISTENT",
      `a pack of ${statedMass} cannot hold cells of ${cells.to(statedMass.unit)}: correct statedMass, the cell or the number of cells`,
      { statedMass, cells },
    );
  }
  return [
    ...incomplete(cellMassFraction),
    ...(statedMass ? contradiction("mass", statedMass, mass, statedMass.ratioTo(mass), APART.mass) : []),
    ...(statedEnergy ? energyContradiction(statedEnergy, total) : []),
  ];
}

function incomplete(cellMassFraction: number): string[] {
  const { high } = cellMassFractionPrior.cellToPack;
  if (cellMassFraction <= high) return [];
  const shown = Number(cellMassFraction.toPrecision(3));
  return [
    `the parts leave a cell mass fraction of ${shown}, above the published ${high}: is something missing from the parts?`,
  ];
}

function energyContradiction(stated: Quantity<Energy>, computed: Quantity<Energy>): string[] {
  const ratio = stated.ratioTo(computed);
  const hint = ratio >= USABLE.from && ratio <= USABLE.to ? "; the stated one may be the usable energy" : "";
  return contradiction("energy", stated, computed, ratio, APART.energy).map((warning) => warning + hint);
}

function contradiction(
  what: string,
  stated: { toString(): string },
  computed: { toString(): string },
  ratio: number,
  apart: number,
): string[] {
  const share = ratio - 1;
  if (Math.abs(share) <= apart) return [];
  const percent = Number((Math.abs(share) * 100).toPrecision(2));
  return [
    `the stated ${what}, ${stated}, is ${percent} % ${share > 0 ? "above" : "below"} the ${computed} of cells and parts`,
  ];
}
