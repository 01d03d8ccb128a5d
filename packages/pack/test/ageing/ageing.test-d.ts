import { type Energy, type Length, type Quantity, q } from "@tarewatt/units";
import { expectTypeOf, test } from "vitest";
import { fadeCurve, fadeOverYears, ironPhosphate26650CalendarFade } from "../../src/index.js";

test("what is left has energy and range, and a share is a number", () => {
  const vehicle = { usableEnergy: q("90 kWh"), consumption: q("200 Wh/km"), distancePerYear: q("20000 km") };
  const { tracks } = fadeOverYears({ ...vehicle, temperature: q("20 °C"), years: 3 });
  expectTypeOf(tracks[0]?.points[0]?.usableEnergy).toEqualTypeOf<Quantity<Energy> | undefined>();
  expectTypeOf(tracks[0]?.points[0]?.range).toEqualTypeOf<Quantity<Length> | undefined>();
  expectTypeOf(ironPhosphate26650CalendarFade).returns.toEqualTypeOf<number>();
});

test("what is not what it should be does not compile", () => {
  // @ts-expect-error a curve is against years or cycles
  fadeCurve({ against: "months", at: [0, 1], left: [1, 0.9] });
  // @ts-expect-error a temperature is no number
  ironPhosphate26650CalendarFade({ stateOfCharge: 0.5, temperature: 298, time: q("1 year") });
});
