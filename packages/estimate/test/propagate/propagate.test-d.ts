import { type Mass, type Quantity, q } from "@tarewatt/units";
import { describe, expectTypeOf, it } from "vitest";
import { model, propagate, type Spread, solveFor } from "../../src/index.js";

const cube = model({
  name: "mass of a cube",
  inputs: { edge: { unit: "m", meaning: "edge", above: 0 }, fill: { unit: "1", meaning: "filled share" } },
  outputs: { mass: { unit: "kg", meaning: "mass" }, share: { unit: "1", meaning: "share" } },
  evaluate: ({ edge, fill }) => ({ mass: fill * edge ** 3, share: fill }),
});

describe("types of a model", () => {
  it("follow from the units said once", () => {
    const { spread } = propagate({
      model: cube,
      evidence: { edge: q("1 m"), fill: { low: 0.1, likely: 0.2, high: 0.3 } },
    });
    expectTypeOf(spread.mass).toEqualTypeOf<Spread<Quantity<Mass>>>();
    expectTypeOf(spread.share).toEqualTypeOf<Spread<number>>();
  });

  it("refuse what does not fit", () => {
    // @ts-expect-error an edge is a length
    propagate({ model: cube, evidence: { edge: q("1 kg"), fill: 0.2 } });
    // @ts-expect-error the evidence for an input is missing
    propagate({ model: cube, evidence: { edge: q("1 m") } });
    const target = { unknown: "edge", between: [q("1 m"), q("2 m")], target: q("1 kg") } as const;
    // @ts-expect-error there is no such output
    solveFor({ model: cube, evidence: { edge: q("1 m"), fill: 0.2 }, ...target, output: "weight" });
    // @ts-expect-error the calculation must give every output
    model({ ...cube, evaluate: () => ({ mass: 1 }) });
  });
});
