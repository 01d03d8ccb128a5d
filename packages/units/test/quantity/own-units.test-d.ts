import { describe, expectTypeOf, it } from "vitest";
import { type EnergyPerDistance, type Length, type Quantity, q, type Speed, unitsWith } from "../../src/index.js";

const mine = unitsWith({ furlong: "660 ft", therm: "100000 Btu" });

describe("types of units of one's own", () => {
  it("are those of their definitions", () => {
    expectTypeOf(mine.q("8 furlong")).toEqualTypeOf<Quantity<Length>>();
    expectTypeOf(mine.q("8 furlong/h")).toEqualTypeOf<Quantity<Speed>>();
    expectTypeOf(mine.quantity(3, "therm/mi")).toEqualTypeOf<Quantity<EnergyPerDistance>>();
    mine.in(q("3 m"), "furlong");
  });

  it("refuse what does not fit", () => {
    // @ts-expect-error a mass has no length
    mine.in(q("3 kg"), "furlong");
    // @ts-expect-error nobody defined it
    mine.q("3 fathom");
    // @ts-expect-error the others do not know it
    q("3 furlong");
  });
});
