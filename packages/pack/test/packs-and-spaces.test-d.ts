import { type Energy, type Mass, type Quantity, q } from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import {
  type AssembledPack,
  assemblePack,
  type Cell,
  checkPackClaim,
  fillSpace,
  findArrangements,
  openCircuitCurve,
  openCircuitCurves,
  type Pack,
  readDesignation,
  weighedPart,
} from "../src/index.js";

const cell = {} as Cell;
const space = { length: q("1.7 m"), width: q("1.2 m"), height: q("0.12 m") };

test("spaces are filled with lengths, and hold energy and mass", () => {
  expectTypeOf(fillSpace({ cell, space, gap: undefined, series: undefined }).energy).toEqualTypeOf<Quantity<Energy>>();
  expectTypeOf(fillSpace({ cell, space }).cellsMass).toEqualTypeOf<Quantity<Mass>>();
  // @ts-expect-error a bare number is no length
  fillSpace({ cell, space, gap: 1 });
  // @ts-expect-error a volume is no space
  fillSpace({ cell, space: q("200 L") });
});

test("an assembled pack is a pack, also to those who know nothing of parts", () => {
  expectTypeOf<AssembledPack>().toExtend<Pack>();
  // @ts-expect-error parts are made, not written
  assemblePack({ cell, series: 1, parallel: 1, parts: [{ name: "lid", mass: q("9 kg") }] });
  // @ts-expect-error an area density is no mass
  weighedPart({ name: "lid", group: "housing", mass: q("9 kg/m²") });
});

test("choices are named", () => {
  // @ts-expect-error a class of voltage is a text of two
  findArrangements({ cell, energy: q("98 kWh"), voltageClass: "48 V" });
  // @ts-expect-error no fractions are published for a structural pack
  checkPackClaim({ packMass: q("1 kg"), energy: q("1 kWh"), construction: "structural" });
  // @ts-expect-error a published curve is read-only
  openCircuitCurves.ironPhosphate.voltage.push(4);
  openCircuitCurve(openCircuitCurves.ironPhosphate);
});

test("a designation tells its forms apart", () => {
  const { designation } = readDesignation("21700").likely;
  if (designation.form === "cylindrical") expectTypeOf(designation).toHaveProperty("diameter");
  else expectTypeOf(designation).toHaveProperty("thickness");
});
