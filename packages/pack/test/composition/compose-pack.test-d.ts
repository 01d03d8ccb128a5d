import { type Energy, type Mass, type Quantity, q, type Voltage, type Volume } from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import {
  type Arrangement,
  arrangePack,
  type Caution,
  type Cell,
  composePack,
  highVoltageCaution,
  type Pack,
  type PackOptions,
  packMassOf,
} from "../../src/index.js";

declare const cell: Cell;
declare const anyOptions: PackOptions;
const options = { cell, energy: q("98 kWh"), nominalVoltage: q("350 V"), cellMassFraction: 0.74 } as const;

test("a pack knows its usable energy only when it was given a fraction for it", () => {
  expectTypeOf(composePack(options)).toEqualTypeOf<Pack>();
  expectTypeOf(composePack(anyOptions).energy.usable).toEqualTypeOf<Quantity<Energy> | undefined>();
  const usable = composePack({ ...options, usableFraction: q("93 %") }).energy.usable;
  expectTypeOf(usable).toEqualTypeOf<Quantity<Energy>>();
  // @ts-expect-error possibly undefined
  composePack(options).energy.usable.in("kWh");
});

test("a pack has typed figures", () => {
  const pack = composePack(options);
  expectTypeOf(pack.mass.total).toEqualTypeOf<Quantity<Mass>>();
  expectTypeOf(pack.volume.total).toEqualTypeOf<Quantity<Volume> | undefined>();
  expectTypeOf(pack.maximumVoltage).toEqualTypeOf<Quantity<Voltage> | undefined>();
  expectTypeOf(pack.arrangement).toEqualTypeOf<Arrangement>();
  expectTypeOf(pack.cautions).toEqualTypeOf<readonly Caution[]>();
  expectTypeOf(highVoltageCaution).returns.toEqualTypeOf<Caution | undefined>();
  expectTypeOf(packMassOf).returns.toEqualTypeOf<Quantity<Mass>>();
});

test("what is not a pack does not compile", () => {
  // @ts-expect-error the cell mass fraction is missing
  composePack({ cell, energy: q("98 kWh"), nominalVoltage: q("350 V") });
  // @ts-expect-error a voltage is not an energy
  composePack({ ...options, energy: q("98 V") });
  // @ts-expect-error a torque has the dimension of an energy, but is none
  arrangePack({ cell, energy: q("98 N m"), nominalVoltage: q("350 V") });
  // @ts-expect-error no such rounding
  arrangePack({ cell, energy: q("98 kWh"), nominalVoltage: q("350 V"), rounding: "up" });
  // @ts-expect-error a fraction has no unit of mass
  packMassOf({ energy: q("98 kWh"), cellSpecificEnergy: q("255 Wh/kg"), cellMassFraction: q("74 kg") });
  // @ts-expect-error warnings are read, not written
  composePack(options).warnings.push("mine");
  // @ts-expect-error a voltage needs a unit
  highVoltageCaution(400);
});
