import {
  type Area,
  type Density,
  type Force,
  type Quantity,
  type Relation,
  relation,
  type Speed,
} from "@tarewatt/units";

/** Inputs of {@link aerodynamicDrag}. */
export interface AerodynamicDragInputs {
  /** Density of the air that the vehicle moves through. */
  readonly airDensity: Quantity<Density>;
  /** Drag area C_dA: drag coefficient times frontal area, both of the same yaw angle. */
  readonly dragArea: Quantity<Area>;
  /** Speed of the vehicle relative to the air along its path; negative when the air overtakes it. */
  readonly airSpeed: Quantity<Speed>;
}

/**
 * Aerodynamic drag force on a vehicle, positive against the direction of travel.
 *
 * Valid at road speeds (Mach number below 0.3), for the yaw angle that the drag area was measured at.
 *
 * @throws InputError `NEGATIVE` when the density or the drag area is negative; otherwise as every relation
 * @example
 * aerodynamicDrag({ airDensity: q("1.2 kg/m³"), dragArea: q("0.75 m²"), airSpeed: q("80 km/h") }); // 222.2 N
 */
export const aerodynamicDrag: Relation<AerodynamicDragInputs, Quantity<Force>> = /* @__PURE__ */ relation({
  name: "aerodynamic drag force",
  inputs: {
    airDensity: { symbol: "ρ", unit: "kg/m³", meaning: "density of the air", atLeast: 0 },
    dragArea: { symbol: "C_dA", unit: "m²", meaning: "drag area", atLeast: 0 },
    airSpeed: { symbol: "v", unit: "m/s", meaning: "speed relative to the air", atLeast: -150, atMost: 150 },
  },
  result: { symbol: "F_a", unit: "N" },
  expression: "½·ρ·C_dA·v·|v|",
  source: { document: "Theory of Ground Vehicles (Wiley)", section: "chapter 3", status: "memory" },
  validity: "Mach number below 0.3, at the yaw angle of the drag area",
  evaluate: ({ airDensity, dragArea, airSpeed }) => 0.5 * airDensity * dragArea * airSpeed * Math.abs(airSpeed),
});
