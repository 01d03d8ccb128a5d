import {
  describeGiven,
  type Energy,
  type EnergyDensity,
  InputError,
  type Mass,
  type Quantity,
  quantity,
  readNumber,
  type SpecificEnergy,
  type Volume,
} from "@tarewatt/units";
import { energyDensity } from "../cell/energy-density.js";
import { readCell } from "../cell/read-cell.js";
import { specificEnergy } from "../cell/specific-energy.js";
import { isArray } from "../check/is-array.js";
import type { AssembledPack, AssembledPart } from "./assemble-pack.js";
import type { Pack } from "./pack.js";
import type { PartGroup } from "./pack-part.js";
import { readPart } from "./read-part.js";

/** One line of a breakdown: the cells, or a part. */
export interface BreakdownRow {
  /** What it is called. */
  readonly name: string;
  /** What it is for. */
  readonly group: "cells" | PartGroup;
  /** Its mass. */
  readonly mass: Quantity<Mass>;
  /** Its mass over the mass of the pack. */
  readonly massShare: number;
  /** Its volume, when known; of cells, without any space between them. */
  readonly volume?: Quantity<Volume>;
  /** Total energy over the mass of this line and all above it: how the figure of the cell becomes that of the pack. */
  readonly specificEnergySoFar: Quantity<SpecificEnergy>;
}

/** Energy per mass or per volume, by what it is counted for. */
export interface LevelFigures<Figure> {
  /** Of the cell, on its total energy. */
  readonly cell: Figure;
  /** Of the pack, on the total energy; absent when its volume is not known. */
  readonly packTotal?: Figure;
  /** Of the pack, on the usable energy; absent when that is not known either. */
  readonly packUsable?: Figure;
}

/** A pack line by line, in one form whether it was composed top down or assembled bottom up. */
export interface PackBreakdown {
  /** The cells first, then the parts; of a pack composed top down, one line for all of them. */
  readonly rows: readonly BreakdownRow[];
  /** Energy per mass. */
  readonly specificEnergy: LevelFigures<Quantity<SpecificEnergy>>;
  /** Energy per volume. */
  readonly energyDensity: LevelFigures<Quantity<EnergyDensity>>;
  /** Volume of the pack that neither cells nor known parts fill; absent when the outer volume is not known. */
  readonly volumeLeft?: Quantity<Volume>;
}

/**
 * A pack line by line: mass, share and volume of the cells and of each part, and how the specific energy falls from that of the
 * cell to that of the pack; figures on total and usable energy side by side.
 *
 * @param pack - a pack of {@link composePack} or {@link assemblePack}
 * @returns the lines and the figures
 * @throws InputError `NOT_AN_OBJECT`, and what `readNumber` throws for a pack changed by hand
 * @example
 * const cell = prismaticCell({
 *   ...{ thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm"), mass: q("2.03 kg") },
 *   ...{ capacity: q("140 Ah"), nominalVoltage: q("3.65 V") },
 * });
 * const pack = composePack({ cell, energy: q("98 kWh"), nominalVoltage: q("350 V"), cellMassFraction: 0.74 });
 * packBreakdown(pack).rows.map(({ name, mass }) => `${name} ${mass.format()}`); // ["cells 390 kg", "all other parts 137 kg"]
 */
export function packBreakdown(pack: Pack | AssembledPack): PackBreakdown {
  const { cell, energy, mass, volume, parts } = readPack(pack);
  const entries: Omit<BreakdownRow, "massShare" | "specificEnergySoFar">[] = [
    { name: "cells", group: "cells", mass: mass.cells, volume: volume.cells },
    ...(parts === undefined
      ? [{ name: "all other parts", group: "other" as const, mass: mass.other }]
      : parts.map(({ part, mass: inPack, volume: filled }) => ({
          ...{ name: part.name, group: part.group, mass: inPack },
          ...(filled && { volume: filled }),
        }))),
  ];
  let soFar = 0;
  const rows = entries.map((entry): BreakdownRow => {
    soFar += entry.mass.in("kg");
    return Object.freeze({
      ...entry,
      massShare: entry.mass.ratioTo(mass.total),
      specificEnergySoFar: specificEnergy({ energy: energy.total, mass: quantity(soFar, "kg") }),
    });
  });
  const known = parts?.reduce((sum, part) => sum + (part.volume?.in("L") ?? 0), 0) ?? 0;
  return Object.freeze({
    rows: Object.freeze(rows),
    specificEnergy: figures(cell.specificEnergy, energy, (each) => specificEnergy({ energy: each, mass: mass.total })),
    energyDensity: figures(
      energyDensity({ energy: cell.energy, volume: cell.volume }),
      energy,
      volume.total && ((each) => energyDensity({ energy: each, volume: volume.total as Quantity<Volume> })),
    ),
    ...(volume.total && {
      volumeLeft: quantity(volume.total.in("L") - volume.cells.in("L") - known, "L"),
    }),
  });
}

function figures<Figure>(
  cell: Figure,
  { total, usable }: Pack["energy"],
  of: ((energy: Quantity<Energy>) => Figure) | undefined,
): LevelFigures<Figure> {
  return Object.freeze({
    cell,
    ...(of && { packTotal: of(total) }),
    ...(of && usable && { packUsable: of(usable) }),
  });
}

type Held = Pack & { readonly parts?: readonly AssembledPart[] };

function readPack(pack: unknown): Held {
  const held = (typeof pack === "object" && pack !== null ? pack : {}) as Held;
  const { energy, mass, volume, working } = held;
  if (typeof working !== "function" || !isObject(energy) || !isObject(mass) || !isObject(volume)) {
    throw new InputError("NOT_AN_OBJECT", "pack must be made with composePack or assemblePack", { name: "pack" });
  }
  readCell(held.cell);
  readNumber("pack.energy.total", energy.total, { unit: "kWh", above: 0 });
  if (energy.usable !== undefined) readNumber("pack.energy.usable", energy.usable, { unit: "kWh", above: 0 });
  readNumber("pack.mass.total", mass.total, { unit: "kg", above: 0 });
  readNumber("pack.mass.cells", mass.cells, { unit: "kg", above: 0 });
  readNumber("pack.mass.other", mass.other, { unit: "kg" });
  readNumber("pack.volume.cells", volume.cells, { unit: "L", above: 0 });
  if (volume.total !== undefined) readNumber("pack.volume.total", volume.total, { unit: "L", above: 0 });
  if (held.parts !== undefined) readParts(held.parts);
  return held;
}

function readParts(parts: unknown): void {
  if (!isArray(parts)) {
    throw new InputError("NOT_AN_OBJECT", `pack.parts must be a list: got ${describeGiven(parts)}`, { name: "pack" });
  }
  for (const [i, entry] of Array.from(parts).entries()) {
    const { part, mass, volume } = Object(entry) as { readonly [K in keyof AssembledPart]?: unknown };
    readPart(`pack.parts[${i}].part`, part);
    readNumber(`pack.parts[${i}].mass`, mass, { unit: "kg", atLeast: 0 });
    if (volume !== undefined) readNumber(`pack.parts[${i}].volume`, volume, { unit: "L", atLeast: 0 });
  }
}

const isObject = (thing: unknown): boolean => typeof thing === "object" && thing !== null;
