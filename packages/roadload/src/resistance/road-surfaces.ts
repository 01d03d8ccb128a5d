import type { Source } from "@tarewatt/units";

const tables: Source = /* @__PURE__ */ Object.freeze({
  document: "engineering tables on rolling resistance",
  section: "ordinary car tyres by surface",
  status: "seen",
});
const handbook: Source = /* @__PURE__ */ Object.freeze({
  document: "Mechanical Engineer's Data Handbook",
  section: "coefficients of rolling resistance",
  status: "quoted",
});
const marks: Source = /* @__PURE__ */ Object.freeze({
  document: "Marks' Standard Handbook",
  section: "coefficients of rolling resistance",
  status: "quoted",
});

/** Rolling resistance coefficient of car tyres on a surface. */
export interface RoadSurface {
  /** Low end, or the one value. */
  readonly low: number;
  /** High end, or the one value. */
  readonly high: number;
  /** Where it is from. */
  readonly source: Source;
}

const surface = (low: number, high: number, source: Source): RoadSurface => Object.freeze({ low, high, source });

/** A surface that {@link roadSurfaces} has a coefficient of. */
export type RoadSurfaceName =
  | "newAsphalt"
  | "hardRoad"
  | "wornAsphalt"
  | "packedGravel"
  | "rolledGravel"
  | "cobbles"
  | "looseGravel"
  | "wetLooseGravel"
  | "soil"
  | "looseSand";

/**
 * Rolling resistance coefficients of car tyres by surface, from handbooks. They are of older tyres: on asphalt a label class
 * ({@link tyreClass}) says more; off it, this is what there is.
 *
 * Of water and snow a review of some 50 papers (VTI report 971, 2018, abstract seen) says that their effect can be considerable, and
 * no number was seen: take a factor of your own, and say that it is one.
 */
export const roadSurfaces: Readonly<Record<RoadSurfaceName, RoadSurface>> = /* @__PURE__ */ Object.freeze({
  // Concrete or new asphalt.
  newAsphalt: /* @__PURE__ */ surface(0.01, 0.015, tables),
  // Hard road.
  hardRoad: /* @__PURE__ */ surface(0.008, 0.008, marks),
  // Worn asphalt.
  wornAsphalt: /* @__PURE__ */ surface(0.02, 0.02, handbook),
  // Packed gravel.
  packedGravel: /* @__PURE__ */ surface(0.012, 0.012, marks),
  // Rolled gravel.
  rolledGravel: /* @__PURE__ */ surface(0.02, 0.02, tables),
  // Large worn cobbles.
  cobbles: /* @__PURE__ */ surface(0.03, 0.03, tables),
  // Loose gravel, firm sand.
  looseGravel: /* @__PURE__ */ surface(0.04, 0.08, tables),
  // Loose gravel, wet.
  wetLooseGravel: /* @__PURE__ */ surface(0.06, 0.06, marks),
  // Soil of medium hardness.
  soil: /* @__PURE__ */ surface(0.08, 0.08, handbook),
  // Loose sand.
  looseSand: /* @__PURE__ */ surface(0.2, 0.4, tables),
});
