import { describe, expectTypeOf, test } from "vitest";
import {
  type Energy,
  type Mass,
  type Quantity,
  q,
  type Relation,
  readOptions,
  relation,
  type Speed,
  type Step,
} from "../../src/index.js";

interface Moving {
  readonly mass: Quantity<Mass>;
  readonly speed: Quantity<Speed>;
}

const kineticEnergy = relation<Moving, Quantity<Energy>>({
  name: "kinetic energy",
  inputs: {
    mass: { symbol: "m", unit: "kg", meaning: "mass" },
    speed: { symbol: "v", unit: "m/s", meaning: "speed" },
  },
  result: { symbol: "E", unit: "J" },
  expression: "½·m·v²",
  source: { document: "classical mechanics", status: "definition" },
  evaluate: ({ mass, speed }) => 0.5 * mass * speed ** 2,
});

describe("relation", () => {
  test("has the type of the function that it is", () => {
    expectTypeOf(kineticEnergy).toEqualTypeOf<Relation<Moving, Quantity<Energy>>>();
    expectTypeOf(kineticEnergy({ mass: q("1 t"), speed: q("20 m/s") })).toEqualTypeOf<Quantity<Energy>>();
    expectTypeOf(kineticEnergy.of({ mass: 1, speed: 2 })).toEqualTypeOf<number>();
    expectTypeOf(kineticEnergy.explain).returns.toEqualTypeOf<Step>();
  });

  test("takes its named quantities and nothing else", () => {
    // @ts-expect-error a number is no mass
    kineticEnergy({ mass: 1000, speed: q("20 m/s") });
    // @ts-expect-error an energy is no mass
    kineticEnergy({ mass: q("1 kWh"), speed: q("20 m/s") });
    // @ts-expect-error the speed is missing
    kineticEnergy({ mass: q("1 t") });
    // @ts-expect-error there is no velocity
    kineticEnergy({ mass: q("1 t"), speed: q("20 m/s"), velocity: q("20 m/s") });
  });
});

describe("readOptions", () => {
  test("gives a number for each rule, and perhaps none for an optional one", () => {
    const numbers = readOptions("f", {}, { mass: { unit: "kg" }, speed: { unit: "m/s", optional: true } });
    expectTypeOf(numbers).toEqualTypeOf<{ readonly mass: number; readonly speed: number | undefined }>();
  });
});
