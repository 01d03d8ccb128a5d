import { wltc3b } from "@tarewatt/roadload";
import { type Energy, type Length, type Mass, type Quantity, q } from "@tarewatt/units";
import { describe, expectTypeOf, it } from "vitest";
import { around, estimateVehicle, type Spread, type VehicleOptions } from "../../src/index.js";

declare const known: VehicleOptions;
const estimate = estimateVehicle(known);

describe("types of an estimate", () => {
  it("says what every number is", () => {
    expectTypeOf(estimate.mass.curb).toEqualTypeOf<Spread<Quantity<Mass>>>();
    expectTypeOf(estimate.on(wltc3b).range.p50).toEqualTypeOf<Quantity<Length>>();
    const solution = estimate.packFor({ range: q("500 km"), on: wltc3b });
    expectTypeOf(solution.needed.p50).toEqualTypeOf<Quantity<Energy> | undefined>();
    if (solution.likely.outcome === "reached") expectTypeOf(solution.likely.value).toEqualTypeOf<Quantity<Energy>>();
    if (solution.likely.outcome === "not reached") expectTypeOf(solution.likely.best).toEqualTypeOf<Quantity<Length>>();
  });

  it("widens a literal number that gets a spread", () => {
    expectTypeOf(around(0.29, 0.05).low).toEqualTypeOf<number>();
    expectTypeOf(around(q("3 m²"), 0.05).low).toEqualTypeOf(q("3 m²"));
  });

  it("refuses what makes no sense", () => {
    // @ts-expect-error a frontal area is no length
    estimateVehicle({ ...known, frontalArea: q("3 m") });
    // @ts-expect-error a drag coefficient is no mass
    estimateVehicle({ ...known, dragCoefficient: q("3 kg") });
    // @ts-expect-error a range is no energy
    estimate.packFor({ range: q("98 kWh"), on: wltc3b });
    // @ts-expect-error low/likely/high needs all three
    estimateVehicle({ ...known, payload: { low: q("100 kg"), likely: q("150 kg") } });
  });
});
