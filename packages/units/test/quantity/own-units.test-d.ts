import { describe, expectTypeOf, it } from "vitest";
import {
  type Area,
  type EnergyPerDistance,
  type Force,
  type Length,
  type Mass,
  type Pressure,
  type Quantity,
  q,
  type Speed,
  unitsWith,
} from "../../src/index.js";

const mine = unitsWith({ furlong: "660 ft", therm: "100000 Btu" });

describe("types of units of one's own", () => {
  it("are those of their definitions", () => {
    expectTypeOf(mine.q("8 furlong")).toEqualTypeOf<Quantity<Length>>();
    expectTypeOf(mine.q("8 furlong/h")).toEqualTypeOf<Quantity<Speed>>();
    expectTypeOf(mine.quantity(3, "therm/mi")).toEqualTypeOf<Quantity<EnergyPerDistance>>();
    mine.in(q("3 m"), "furlong");
  });

  it("stand in powers and parentheses like the others, and may be defined by compounds", () => {
    const own = unitsWith({ chain: "22 yd", knock: "N/(100 m)", dozen: "12" });
    expectTypeOf(own.q("8 chain²")).toEqualTypeOf<Quantity<Area>>();
    expectTypeOf(own.q("8 kg/(chain·s²)")).toEqualTypeOf<Quantity<Pressure>>();
    expectTypeOf(own.q("8 knock·chain")).toEqualTypeOf<Quantity<Force>>();
    expectTypeOf(own.q("8 dozen kg")).toEqualTypeOf<Quantity<Mass>>();
  });

  it("refuse what does not fit", () => {
    // @ts-expect-error a mass has no length
    mine.in(q("3 kg"), "furlong");
    // @ts-expect-error nobody defined it
    mine.q("3 fathom");
    // @ts-expect-error it was defined by something that is no unit
    unitsWith({ span: "9 inn" }).q("3 span");
    // @ts-expect-error the others do not know it
    q("3 furlong");
  });
});
