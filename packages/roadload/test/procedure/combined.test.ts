import { q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { combinedConsumption, combinedFuelEconomy } from "../../src/index.js";
import { between, close, codeOf } from "../support.js";

describe("combined city and highway", () => {
  published({
    quantity: "combined fuel economy of 27.7 and 36.9 mi/gal",
    source: "40 CFR part 600, appendix II",
    status: "seen",
    published: q("31.2 MPGe"),
    computed: () => combinedFuelEconomy({ city: q("27.7 MPGe"), highway: q("36.9 MPGe") }),
    tolerance: 0.05,
    why: "last printed digit; the gallon of the example is a gallon of fuel, the mean is the same",
  });
  published({
    quantity: "combined consumption of 265 and 220 Wh/mi",
    source: "10 CFR 474, appendix A",
    status: "seen",
    published: q("244.75 Wh/mi"),
    computed: () => combinedConsumption({ city: q("265 Wh/mi"), highway: q("220 Wh/mi") }),
    tolerance: 1e-9,
    why: "exact but for binary rounding",
  });

  it("gives the same whether consumption or its reciprocal is combined", () => {
    fc.assert(
      fc.property(between(50, 1000), between(50, 1000), (a, b) => {
        const [city, highway] = [quantity(a, "Wh/mi"), quantity(b, "Wh/mi")];
        const direct = combinedConsumption({ city, highway });
        const round = combinedFuelEconomy({ city: city.inverse(), highway: highway.inverse() }).inverse();
        expect(close(direct.in("Wh/mi"), round.in("Wh/mi"))).toBe(true);
      }),
    );
  });

  it("refuses what makes no sense", () => {
    expect(codeOf(() => combinedFuelEconomy({ city: q("0 MPGe"), highway: q("1 MPGe") }))).toBe("OUT_OF_RANGE");
    expect(codeOf(() => combinedConsumption({ city: q("-1 Wh/mi"), highway: q("1 Wh/mi") }))).toBe("NEGATIVE");
    const consumption = q("265 Wh/mi") as never;
    expect(codeOf(() => combinedFuelEconomy({ city: consumption, highway: consumption }))).toBe("WRONG_DIMENSION");
  });
});
