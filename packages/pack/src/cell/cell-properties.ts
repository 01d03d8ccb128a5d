import type { Length, Quantity, Step, Volume } from "@tarewatt/units";
import { readSource } from "../check/read-source.js";
import { readText } from "../check/read-text.js";
import { voltageOfOtherChemistry } from "../chemistry/nominal-voltages.js";
import type { CellProperties } from "./cell.js";
import { cellEnergy } from "./cell-energy.js";
import type { CellOptions } from "./cell-options.js";
import { cellWarnings, checkStatedEnergy, checkVoltages } from "./check-cell.js";
import { energyDensity } from "./energy-density.js";
import { specificEnergy } from "./specific-energy.js";

/** @internal What the form of a cell contributes: its volume, how that came about, and how it is called. */
export interface CellBody {
  readonly form: string;
  readonly sizes: readonly Quantity<Length>[];
  readonly volume: Quantity<Volume>;
  readonly volumeStep: () => Step;
}

/** @internal Everything about a cell that does not depend on its form. The options have been read already. */
export function cellProperties(options: CellOptions, { form, sizes, volume, volumeStep }: CellBody): CellProperties {
  const { capacity, nominalVoltage, maximumVoltage, minimumVoltage, mass } = options;
  const chemistry = readText("chemistry", options.chemistry);
  const designation = readText("designation", options.designation);
  const source = readSource(options.source);
  checkVoltages(options);

  const charge = { capacity, nominalVoltage };
  const energy = cellEnergy(charge);
  checkStatedEnergy(options.energy, energy);
  const perMass = { energy, mass };
  const perVolume = { energy, volume };
  const densities = { specificEnergy: specificEnergy(perMass), energyDensity: energyDensity(perVolume) };

  return {
    capacity,
    nominalVoltage,
    ...(maximumVoltage && { maximumVoltage }),
    ...(minimumVoltage && { minimumVoltage }),
    mass,
    volume,
    energy,
    ...densities,
    ...(chemistry !== undefined && { chemistry }),
    ...(designation !== undefined && { designation }),
    ...(source && { source }),
    label: designation ?? inWords(form, sizes, options),
    warnings: Object.freeze([
      ...cellWarnings(densities),
      ...voltageOfOtherChemistry(chemistry, nominalVoltage.in("V")),
    ]),
    working: () => [
      volumeStep(),
      cellEnergy.explain(charge),
      specificEnergy.explain(perMass),
      energyDensity.explain(perVolume),
    ],
  };
}

function inWords(form: string, sizes: readonly Quantity<Length>[], { chemistry, capacity }: CellOptions): string {
  const kind = chemistry === undefined ? form : `${chemistry} ${form}`;
  return `${kind} cell, ${sizes.map((size) => size.to("mm")).join(" × ")}, ${capacity.to("Ah")}`;
}
