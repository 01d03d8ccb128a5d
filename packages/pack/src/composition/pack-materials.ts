import type { Source } from "@tarewatt/units";
import { frozen } from "../check/frozen.js";

/** Density of a material. */
export interface PackMaterial {
  /** Density in kg/m³, near room temperature. */
  readonly density: number;
  /** Where it is from. */
  readonly source: Source;
}

const handbook: Source = { document: "handbook values near 20 °C", status: "memory" };

/**
 * Densities (kg/m³) of what packs are made of, beside their cells.
 *
 * @example
 * packMaterials.aluminium.density; // 2700
 */
export const packMaterials: {
  /** Aluminium and its wrought alloys. */
  readonly aluminium: PackMaterial;
  /** Steel. */
  readonly steel: PackMaterial;
  /** Copper. */
  readonly copper: PackMaterial;
  /** Half water, half ethylene glycol by volume. */
  readonly waterGlycol: PackMaterial;
} = /* @__PURE__ */ frozen({
  aluminium: { density: 2700, source: handbook },
  steel: { density: 7850, source: handbook },
  copper: { density: 8960, source: handbook },
  waterGlycol: { density: 1070, source: handbook },
});
