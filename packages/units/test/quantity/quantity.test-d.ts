import { describe, expectTypeOf, test } from "vitest";
import {
  type AngularVelocity,
  type AnyQuantity,
  type Area,
  converter,
  type Density,
  type Dimension,
  type DistancePerEnergy,
  type ElectricCharge,
  type Energy,
  type EnergyDensity,
  type EnergyPerDistance,
  type Force,
  type Length,
  type Mass,
  type Power,
  parseQuantity,
  type Quantity,
  q,
  quantity,
  quantityFromJSON,
  type SpecificEnergy,
  type Speed,
  type Temperature,
  type TemperatureDifference,
  type Time,
  type Torque,
  type Voltage,
} from "../../src/index.js";

describe("arithmetic", () => {
  test("names what comes out", () => {
    expectTypeOf(q("255 Wh/kg").times(q("400 kg"))).toEqualTypeOf<Quantity<Energy>>();
    expectTypeOf(q("98 kWh").per(q("500 kg"))).toEqualTypeOf<Quantity<SpecificEnergy>>();
    expectTypeOf(q("98 kWh").per(q("400 L"))).toEqualTypeOf<Quantity<EnergyDensity>>();
    expectTypeOf(q("98 kWh").per(q("400 km"))).toEqualTypeOf<Quantity<EnergyPerDistance>>();
    expectTypeOf(q("98 kWh").per(q("2 h"))).toEqualTypeOf<Quantity<Power>>();
    expectTypeOf(q("98 kWh").per(q("15 kWh/100 km"))).toEqualTypeOf<Quantity<Length>>();
    expectTypeOf(q("15 kWh/100 km").times(q("400 km"))).toEqualTypeOf<Quantity<Energy>>();
    expectTypeOf(q("500 N").times(q("30 m/s"))).toEqualTypeOf<Quantity<Power>>();
    expectTypeOf(q("500 N").times(q("3 m"))).toEqualTypeOf<Quantity<Energy>>();
    expectTypeOf(q("500 N·m").times(q("900 rpm"))).toEqualTypeOf<Quantity<Power>>();
    expectTypeOf(q("60 km").per(q("1 h"))).toEqualTypeOf<Quantity<Speed>>();
    expectTypeOf(q("60 km").per(q("60 km/h"))).toEqualTypeOf<Quantity<Time>>();
    expectTypeOf(q("3 rad").per(q("1 s"))).toEqualTypeOf<Quantity<AngularVelocity>>();
    expectTypeOf(q("3.65 V").times(q("140 A h"))).toEqualTypeOf<Quantity<Energy>>();
    expectTypeOf(q("98 kWh").per(q("350 V"))).toEqualTypeOf<Quantity<ElectricCharge>>();
    expectTypeOf(q("2 m").times(q("3 m"))).toEqualTypeOf<Quantity<Area>>();
    expectTypeOf(q("2 kg").per(q("3 L"))).toEqualTypeOf<Quantity<Density>>();
    expectTypeOf(q("250 kW").per(q("600 A"))).toEqualTypeOf<Quantity<Voltage>>();
    expectTypeOf(q("60 W/K").times(q("Δ10 K"))).toEqualTypeOf<Quantity<Power>>();
    expectTypeOf(q("600 W").per(q("60 W/K"))).toEqualTypeOf<Quantity<TemperatureDifference>>();
  });

  test("with numbers and pure quantities leaves dimension and kind", () => {
    expectTypeOf(q("5 N·m").times(2)).toEqualTypeOf<Quantity<Torque>>();
    expectTypeOf(q("5 N·m").per(2)).toEqualTypeOf<Quantity<Torque>>();
    expectTypeOf(q("5 N·m").times(q("50 %"))).toEqualTypeOf<Quantity<Torque>>();
    expectTypeOf(q("50 %").times(q("5 N·m"))).toEqualTypeOf<Quantity<Torque>>();
    expectTypeOf(q("5 N·m").per(q("50 %"))).toEqualTypeOf<Quantity<Torque>>();
  });

  test("adds like to like", () => {
    expectTypeOf(q("5 kg").plus(q("3 lb"))).toEqualTypeOf<Quantity<Mass>>();
    // @ts-expect-error a mass and an energy
    q("5 kg").plus(q("3 kWh"));
    // @ts-expect-error a torque and an energy
    q("5 N·m").plus(q("3 J"));
    // @ts-expect-error an energy and a torque
    q("3 J").minus(q("5 N·m"));
    // @ts-expect-error an energy per distance and a force
    q("150 Wh/km").plus(q("3 N"));
    // @ts-expect-error a pressure and an energy density
    q("3 Pa").plus(q("3 J/m³"));
    // @ts-expect-error a frequency and an angular velocity
    q("3 Hz").plus(q("3 rpm"));
    // @ts-expect-error a number is no mass
    q("5 kg").plus(3);
  });

  test("compares like with like", () => {
    expectTypeOf(q("5 kg").ratioTo(q("3 lb"))).toEqualTypeOf<number>();
    // @ts-expect-error a torque and an energy
    q("5 N·m").compareTo(q("3 J"));
    // @ts-expect-error a mass and a length
    q("5 kg").ratioTo(q("3 m"));
  });

  test("turns over only when asked", () => {
    expectTypeOf(q("250 Wh/mi").inverse()).toEqualTypeOf<Quantity<DistancePerEnergy>>();
    expectTypeOf(q("4 mi/kWh").inverse()).toEqualTypeOf<Quantity<EnergyPerDistance>>();
    expectTypeOf(q("112 MPGe").inverse().inverse()).toEqualTypeOf<Quantity<DistancePerEnergy>>();
    // @ts-expect-error consumption is not asked for in miles per kWh
    q("250 Wh/mi").in("mi/kWh");
  });
});

describe("temperatures", () => {
  test("are points", () => {
    expectTypeOf(q("20 °C").minus(q("10 °C"))).toEqualTypeOf<Quantity<TemperatureDifference>>();
    expectTypeOf(q("20 °C").plus(q("Δ10 K"))).toEqualTypeOf<Quantity<Temperature>>();
    expectTypeOf(q("20 °C").minus(q("Δ10 K"))).toEqualTypeOf<Quantity<Temperature>>();
    expectTypeOf(q("Δ20 K").plus(q("Δ10 °C"))).toEqualTypeOf<Quantity<TemperatureDifference>>();
    // @ts-expect-error two points do not add
    q("20 °C").plus(q("10 °C"));
    // @ts-expect-error a difference does not take a point
    q("Δ10 K").plus(q("20 °C"));
    // @ts-expect-error a point does not multiply
    q("60 W/K").times(q("20 °C"));
    // @ts-expect-error a point does not multiply, from this side either
    q("20 °C").times(q("60 W/K"));
    // @ts-expect-error a point is not a difference
    q("20 °C").in("ΔK");
    // @ts-expect-error a difference is not a point
    q("Δ20 K").in("°C");
  });
});

describe("units", () => {
  test("are asked for by what they measure", () => {
    expectTypeOf(q("5 kg").in("lb")).toEqualTypeOf<number>();
    expectTypeOf(q("5 kg").to("lb")).toEqualTypeOf<Quantity<Mass>>();
    // @ts-expect-error 'kWh' measures energy, not mass
    q("5 kg").in("kWh");
    // @ts-expect-error 'N' measures force, not energy per distance
    q("150 Wh/km").to("N");
    // @ts-expect-error no unit
    q("5 kg").in("kgg");
    // @ts-expect-error no unit in the literal
    q("5 kgg");
    // @ts-expect-error a second slash
    q("5 W/m²/K");
    // @ts-expect-error no unit
    quantity(5, "kgg");
    expectTypeOf(q("5 kg").in("lb" as string)).toEqualTypeOf<number>();
  });

  test("convert between each other when they measure the same", () => {
    expectTypeOf(converter("mph", "m/s")(5)).toEqualTypeOf<number>();
    expectTypeOf(converter("mph", "m/s").array([5])).toEqualTypeOf<Float64Array>();
    // @ts-expect-error a speed is no mass
    converter("mph", "kg");
    // @ts-expect-error a point is no difference
    converter("°C", "ΔK");
    // @ts-expect-error a force is no energy per distance
    converter("N", "Wh/km");
  });
});

describe("kinds", () => {
  test("are stated by name", () => {
    expectTypeOf(q("5 J").as("torque")).toEqualTypeOf<Quantity<Torque>>();
    expectTypeOf(q("5 N·m").as("energy")).toEqualTypeOf<Quantity<Energy>>();
    expectTypeOf(q("5 Wh/km").as("force")).toEqualTypeOf<Quantity<Force>>();
    // @ts-expect-error an energy is no force
    q("5 J").as("force");
    // @ts-expect-error a mass is a mass only
    q("5 kg").as("weight");
    // @ts-expect-error a point on a scale is no difference from another
    q("20 °C").as("temperature difference");
  });
});

describe("types of quantities", () => {
  test("are not mixed up when they are assigned", () => {
    // @ts-expect-error energy per distance has the dimension of a force, but is not one
    const force: Quantity<Force> = q("150 Wh/km");
    // @ts-expect-error a torque is no energy
    const energy: Quantity<Energy> = q("5 N·m");
    // @ts-expect-error a known mass is not a quantity of any dimension: it could not be added to one
    const open: Quantity<Dimension> = q("5 kg");
    const any: AnyQuantity = q("5 kg");
    expectTypeOf([force, energy, open, any]).not.toBeAny();
  });

  test("come from texts and JSON by example", () => {
    expectTypeOf(parseQuantity("5 lb" as string, "kg")).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(quantityFromJSON({}, "Wh/km")).toEqualTypeOf<Quantity<EnergyPerDistance>>();
    // @ts-expect-error no unit
    parseQuantity("5 lb", "kgg");
  });

  test("cannot be changed", () => {
    // @ts-expect-error read-only
    q("5 kg").value = 7;
    // @ts-expect-error read-only
    q("5 kg").unit = "lb";
  });
});
