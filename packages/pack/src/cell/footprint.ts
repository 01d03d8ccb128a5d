import {
  type Area,
  type Energy,
  type EnergyPerDistance,
  type Length,
  type Quantity,
  type Quotient,
  quantity,
  type Relation,
  relation,
} from "@tarewatt/units";
import type { Cell } from "./cell.js";
import { readCell } from "./read-cell.js";
import { sizesOf } from "./sizes-of.js";

/** Inputs of {@link energyPerArea}. */
export interface EnergyPerAreaInputs {
  /** Energy of what stands on the area. Not negative. */
  readonly energy: Quantity<Energy>;
  /** Area that it stands on. Greater than zero. */
  readonly area: Quantity<Area>;
}

/**
 * Energy per area of the floor that a cell or a pack covers: what a flat pack under a cabin is short of.
 *
 * Returns Wh/m², on the same basis (total or usable) as the energy given. Source: definition.
 *
 * @throws InputError `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`, `NOT_VALID_HERE`
 * @example
 * energyPerArea({ energy: q("98 kWh"), area: q("2.5 m²") }).in("kWh/m²"); // 39.2
 */
export const energyPerArea: Relation<EnergyPerAreaInputs, Quantity<Quotient<Energy, Area>>> = /* @__PURE__ */ relation({
  name: "energy per area of the floor",
  inputs: {
    energy: { symbol: "E", unit: "Wh", meaning: "energy", atLeast: 0 },
    area: { symbol: "A", unit: "m²", meaning: "area that it stands on", above: 0 },
  },
  result: { symbol: "e_A", unit: "Wh/m²" },
  expression: "E/A",
  source: { document: "definition of the energy per area", status: "definition" },
  evaluate: ({ energy, area }) => energy / area,
});

/** Which way a cell stands: by the size that points up; of a cylinder that lies, by the direction of its axis in the vehicle. */
export type CellStanding = "height up" | "width up" | "thickness up" | "axis along" | "axis across";

/** A cell on its footprint, standing one way. */
export interface CellFootprint {
  /** Which size points up. */
  readonly standing: CellStanding;
  /** How much floor the cell itself covers: the circle of a cylinder, without the corners that its neighbours leave free. */
  readonly area: Quantity<Area>;
  /** How high it stands. */
  readonly height: Quantity<Length>;
  /** Energy per area of its own footprint, without gaps. */
  readonly energyPerArea: Quantity<Quotient<Energy, Area>>;
  /**
   * Energy per length of a stack of such cells, face on face along the size that points up. It has the dimension of a
   * consumption and is none.
   */
  readonly energyPerStackLength: Quantity<EnergyPerDistance>;
}

/**
 * A cell's energy per area of floor and per length of stack, for each way that it can stand.
 *
 * A cylinder stands on its end; a box on any of three sides. Gaps, cooling and housing come on top: {@link fillSpace} counts
 * with them.
 *
 * @param cell - the cell
 * @returns one entry for each way, a cylinder has one
 * @throws InputError `NOT_AN_OBJECT`, and what `readNumber` throws for a cell changed by hand
 * @example
 * const cell = prismaticCell({
 *   ...{ thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm"), mass: q("2.03 kg") },
 *   ...{ capacity: q("140 Ah"), nominalVoltage: q("3.65 V") },
 * });
 * cellFootprints(cell).map(({ energyPerArea }) => energyPerArea.format({ unit: "kWh/m²" })); // ["66.4 kWh/m²", "96.3 kWh/m²", "33.9 kWh/m²"]
 */
export function cellFootprints(cell: Cell): readonly CellFootprint[] {
  const known = readCell(cell);
  const { width, thickness, height, cylindrical } = sizesOf(known);
  const energy = known.energy.in("Wh");
  const entry = (standing: CellStanding, up: number, a: number, b: number): CellFootprint => {
    const area = quantity(cylindrical ? (Math.PI / 4) * a * b : a * b, "mm²");
    return Object.freeze({
      standing,
      area,
      height: quantity(up, "mm"),
      energyPerArea: energyPerArea({ energy: known.energy, area }),
      energyPerStackLength: quantity(energy / up, "Wh/mm"),
    });
  };
  const upright = entry("height up", height, thickness, width);
  if (cylindrical) return Object.freeze([upright]);
  return Object.freeze([
    upright,
    entry("width up", width, thickness, height),
    entry("thickness up", thickness, width, height),
  ]);
}
