import { type Energy, type EnergyDensity, type Length, type Quantity, q, type SpecificEnergy } from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import {
  type Cell,
  cylindricalCell,
  energyDensity,
  pouchCell,
  prismaticCell,
  specificEnergy,
} from "../../src/index.js";

const common = { capacity: q("140 Ah"), nominalVoltage: q("3.65 V"), mass: q("2.03 kg") };
const box = { thickness: q("52 mm"), width: q("148 mm"), height: q("102 mm") };

test("cells have typed figures", () => {
  const cell = prismaticCell({ ...box, ...common });
  expectTypeOf(cell.energy).toEqualTypeOf<Quantity<Energy>>();
  expectTypeOf(cell.specificEnergy).toEqualTypeOf<Quantity<SpecificEnergy>>();
  expectTypeOf(cell.energyDensity).toEqualTypeOf<Quantity<EnergyDensity>>();
  expectTypeOf(cell.form).toEqualTypeOf<"prismatic">();
  expectTypeOf(pouchCell({ ...box, ...common }).form).toEqualTypeOf<"pouch">();
});

test("the form tells which sizes there are", () => {
  const sizeOf = (cell: Cell) =>
    // @ts-expect-error not every cell has a diameter
    cell.dimensions.diameter;
  const diameterOf = (cell: Cell) =>
    cell.form === "cylindrical" ? cell.dimensions.diameter : cell.dimensions.thickness;
  expectTypeOf(diameterOf).returns.toEqualTypeOf<Quantity<Length>>();
  expectTypeOf(sizeOf).toBeFunction();
});

test("what is not a cell does not compile", () => {
  // @ts-expect-error a cylinder has a diameter
  cylindricalCell({ ...box, ...common });
  // @ts-expect-error a capacity is not an energy
  prismaticCell({ ...box, ...common, capacity: q("511 Wh") });
  // @ts-expect-error a mass needs a unit
  prismaticCell({ ...box, ...common, mass: 2.03 });
  // @ts-expect-error no such option
  prismaticCell({ ...box, ...common, colour: "blue" });
  // @ts-expect-error the mass is missing
  prismaticCell({ ...box, capacity: q("140 Ah"), nominalVoltage: q("3.65 V") });
  // @ts-expect-error a cell is read, not written
  prismaticCell({ ...box, ...common }).label = "other";
});

test("densities are not what shares their dimension", () => {
  const perMass = specificEnergy({ energy: q("1 Wh"), mass: q("1 kg") });
  // @ts-expect-error m²/s² measures speed squared
  perMass.in("m²/s²");
  const perVolume = energyDensity({ energy: q("1 Wh"), volume: q("1 L") });
  // @ts-expect-error a pressure has the dimension of an energy density, but is none
  perVolume.in("Pa");
});
