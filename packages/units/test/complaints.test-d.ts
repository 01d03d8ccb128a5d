import { describe, expectTypeOf, test } from "vitest";
import {
  type Energy,
  type Mass,
  type Quantity,
  q,
  quantityFromJSON,
  type TemperatureDifference,
} from "../src/index.js";

/** The compiler's half of complaints.test.ts. */

describe("1: a torque passes for an energy, an angle for a ratio", () => {
  test("does not compile", () => {
    // @ts-expect-error a torque is no energy
    q("5 N·m").in("J");
    // @ts-expect-error nor is it added to one
    q("5 J").plus(q("5 N·m"));
    // @ts-expect-error an angle is no ratio
    q("5°").in("%");
  });
});

describe("2: temperatures go wrong", () => {
  test("points and differences are two types", () => {
    expectTypeOf(q("20 °C").minus(q("10 °C"))).toEqualTypeOf<Quantity<TemperatureDifference>>();
    // @ts-expect-error a difference is no point
    q("20 °C").minus(q("10 °C")).in("°C");
    // @ts-expect-error points do not add
    q("20 °C").plus(q("10 °C"));
  });
});

describe("3: reciprocal consumption is refused, or inverted without a word", () => {
  test("has to be said", () => {
    // @ts-expect-error no conversion inverts
    q("4 mi/kWh").in("Wh/mi");
    expectTypeOf(q("4 mi/kWh").inverse().in("Wh/mi")).toEqualTypeOf<number>();
  });
});

describe("6: type errors cannot be read, and types are slow", () => {
  test("types carry names, through products, too", () => {
    expectTypeOf(q("255 Wh/kg").times(q("400 kg"))).toEqualTypeOf<Quantity<Energy>>();
    expectTypeOf(q("98 kWh").per(q("255 Wh/kg"))).toEqualTypeOf<Quantity<Mass>>();
  });
});

describe("9: JSON does not come back, or drags the insides along", () => {
  test("comes back with its type", () => {
    expectTypeOf(quantityFromJSON({}, "kWh")).toEqualTypeOf<Quantity<Energy>>();
  });
});
