import { type Quantity, q, type Source, type Voltage } from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import { arrangePack, type Cell, composePack, cylindricalCell, type Pack, type Rounding } from "../src/index.js";

/** Values that a program knows or does not know. */
const voltage = undefined as Quantity<Voltage> | undefined;
const text = undefined as string | undefined;
const fraction = undefined as number | undefined;

test("an optional option may be given as undefined", () => {
  const cell = {} as Cell;
  cylindricalCell({
    diameter: q("46 mm"),
    height: q("80 mm"),
    capacity: q("23 Ah"),
    nominalVoltage: q("3.7 V"),
    mass: q("355 g"),
    maximumVoltage: voltage,
    minimumVoltage: voltage,
    energy: undefined,
    chemistry: text,
    designation: text,
    source: undefined as Source | undefined,
  });
  const wanted = { cell, energy: q("98 kWh"), nominalVoltage: q("350 V"), rounding: undefined as Rounding | undefined };
  arrangePack(wanted);
  const pack = composePack({
    ...wanted,
    cellMassFraction: 0.74,
    usableFraction: fraction,
    cellVolumeFraction: fraction,
    construction: text,
  });
  expectTypeOf(pack).toEqualTypeOf<Pack>();
});
