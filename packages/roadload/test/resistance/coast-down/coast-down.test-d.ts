import { type Area, type Force, type Quantity, q, type Speed } from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import {
  type CabinClimate,
  type CertifiedRoadLoad,
  cabinClimate,
  coastDown,
  coastDownDragArea,
  type MovedRoadLoad,
  moveRoadLoad,
  type PhysicalRoadLoad,
  roadLoadOnTyres,
  type Tyres,
  withAddOns,
} from "../../../src/index.js";

test("results are what they say", () => {
  expectTypeOf(coastDown).returns.toHaveProperty("load").toEqualTypeOf<CertifiedRoadLoad>();
  expectTypeOf(coastDown).returns.toHaveProperty("speedDeviation").toEqualTypeOf<Quantity<Speed>>();
  expectTypeOf(coastDownDragArea).returns.toEqualTypeOf<Quantity<Area>>();
  expectTypeOf(moveRoadLoad).returns.toEqualTypeOf<MovedRoadLoad>();
  expectTypeOf<ReturnType<MovedRoadLoad["changesAt"]>[number]["force"]>().toEqualTypeOf<Quantity<Force>>();
  expectTypeOf(withAddOns({} as PhysicalRoadLoad, []).load).toEqualTypeOf<PhysicalRoadLoad>();
  expectTypeOf(withAddOns({} as CertifiedRoadLoad, []).load).toEqualTypeOf<CertifiedRoadLoad>();
  expectTypeOf(cabinClimate).returns.toEqualTypeOf<CabinClimate>();
});

test("what makes no sense does not compile", () => {
  const body = { mass: q("2 t"), dragArea: q("0.7 m²"), airDensity: q("1.2 kg/m³") };
  // @ts-expect-error a coefficient alone is no tyres
  roadLoadOnTyres({ ...body, tyres: 0.009 });
  // @ts-expect-error a drag coefficient is no drag area
  roadLoadOnTyres({ ...body, dragArea: 0.3, tyres: {} as Tyres });
  // @ts-expect-error a temperature difference is no temperature
  moveRoadLoad({} as CertifiedRoadLoad, { temperature: q("5 ΔK") });
  // @ts-expect-error a heat flow per kelvin is no power
  cabinClimate({ ambient: q("0 °C"), target: q("20 °C"), heater: 1, envelope: q("50 W") });
  // @ts-expect-error evidence without a source
  withAddOns({} as PhysicalRoadLoad, [{ name: "roof box", dragArea: q("0.1 m²") }]);
});

test("an optional option may be given as undefined", () => {
  moveRoadLoad({} as CertifiedRoadLoad, { mass: undefined, airDensity: undefined, temperatureRule: undefined });
  const place = { ambient: q("0 °C"), target: q("20 °C"), heater: "heat pump" } as const;
  cabinClimate({ ...place, envelope: undefined, soak: undefined, battery: undefined, occupants: undefined });
  const air = { temperature: q("20 °C"), pressure: q("1 bar") };
  const run = {
    direction: "out",
    time: [],
    speed: [],
    headWind: undefined,
    airSpeed: undefined,
    grade: undefined,
  } as const;
  coastDown({ runs: [run], speedUnit: "m/s", testMass: q("2 t"), air, terms: undefined, outliers: undefined });
});
