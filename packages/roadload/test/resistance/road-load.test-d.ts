import { type Force, type Quantity, q } from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import {
  aerodynamicDrag,
  airDensity,
  certifiedRoadLoad,
  type PhysicalRoadLoad,
  type RoadLoad,
  type RoadLoadAt,
  roadLoad,
  toPhysical,
} from "../../src/index.js";

const airSpeed = q("10 m/s");
const density = q("1.2 kg/m³");
const tyres = { mass: q("2 t"), rollingResistanceCoefficient: 0.009, airDensity: density };

test("forces are forces", () => {
  expectTypeOf(aerodynamicDrag).returns.toEqualTypeOf<Quantity<Force>>();
  // @ts-expect-error a drag coefficient is not a drag area
  aerodynamicDrag({ airDensity: density, dragArea: 0.3, airSpeed });
  // @ts-expect-error energy per distance has the dimension of a force, but is not one
  const force: Quantity<Force> = q("150 Wh/km");
  expectTypeOf(force).toEqualTypeOf<Quantity<Force>>();
});

test("the drag is given once", () => {
  expectTypeOf(roadLoad({ ...tyres, dragArea: q("0.7 m²") })).toEqualTypeOf<PhysicalRoadLoad>();
  roadLoad({ ...tyres, dragCoefficient: q("28 %"), frontalArea: q("2.5 m²") });
  // @ts-expect-error no drag at all
  roadLoad(tyres);
  // @ts-expect-error a coefficient without an area
  roadLoad({ ...tyres, dragCoefficient: 0.28 });
  // @ts-expect-error both ways at once
  roadLoad({ ...tyres, dragArea: q("0.7 m²"), dragCoefficient: 0.28, frontalArea: q("2.5 m²") });
});

test("air is given by pressure or altitude", () => {
  airDensity({ temperature: q("20 °C"), altitude: q("500 ft") });
  // @ts-expect-error neither
  airDensity({ temperature: q("20 °C") });
  // @ts-expect-error both
  airDensity({ temperature: q("20 °C"), altitude: q("500 ft"), pressure: q("1 bar") });
});

test("the two forms are told apart", () => {
  const load = {} as RoadLoad;
  if (load.form === "physical") expectTypeOf(load).toEqualTypeOf<PhysicalRoadLoad>();
  // @ts-expect-error only the physical form has a drag area
  load.dragArea;
  const at = {} as RoadLoadAt;
  // @ts-expect-error only the physical form knows which force is the air's
  at.aerodynamic;
  // @ts-expect-error a physical load needs no conversion
  toPhysical({} as PhysicalRoadLoad);
});

test("coefficients have their dimensions", () => {
  const conditions = { testMass: q("4000 lb") };
  const rest = { linear: q("0.2 lbf/mph"), quadratic: q("0.018 lbf/mph²"), conditions };
  certifiedRoadLoad({ ...rest, constant: q("30 lbf") });
  // @ts-expect-error a pound is a mass
  certifiedRoadLoad({ ...rest, constant: q("30 lb") });
  // @ts-expect-error the linear and the quadratic coefficient are exchanged
  certifiedRoadLoad({ constant: q("30 lbf"), linear: rest.quadratic, quadratic: rest.linear, conditions });
  // @ts-expect-error no such loss
  certifiedRoadLoad({ ...rest, constant: q("30 lbf"), holds: ["tires"] });
});
