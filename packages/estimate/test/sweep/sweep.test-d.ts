import { type Length, type Mass, type Quantity, q } from "@tarewatt/units";
import { describe, expectTypeOf, it } from "vitest";
import { around, model, propagate, propagateLinearly, type Spread, solveFor, sweep } from "../../src/index.js";

const cube = model({
  name: "mass of a cube",
  inputs: { edge: { unit: "m", meaning: "edge", above: 0 }, fill: { unit: "1", meaning: "filled share" } },
  outputs: { mass: { unit: "kg", meaning: "mass" }, share: { unit: "1", meaning: "share" } },
  evaluate: ({ edge, fill }) => ({ mass: fill * edge ** 3, share: fill }),
});
const evidence = { edge: around(q("1 m"), 0.1), fill: 0.2 };

describe("types of what is asked of a model", () => {
  it("follow from the units said once", () => {
    const { rows, crossings } = sweep({ model: cube, evidence, over: { edge: [q("1 m"), q("2 m")] }, output: "mass" });
    expectTypeOf(rows[0]?.spread).toEqualTypeOf<Spread<Quantity<Mass>> | undefined>();
    expectTypeOf(crossings[0]?.at.edge).toEqualTypeOf<Quantity<Length> | undefined>();
    const linear = propagateLinearly({ model: cube, evidence });
    expectTypeOf(linear.mass.standardUncertainty).toEqualTypeOf<Quantity<Mass>>();
    expectTypeOf(linear.share.expandedUncertainty).toEqualTypeOf<number>();
    const { mean, standardError } = propagate({ model: cube, evidence });
    expectTypeOf(mean.share).toEqualTypeOf<number>();
    expectTypeOf(standardError("mass")).toEqualTypeOf<Spread<Quantity<Mass>>>();
    const between = [q("1 m"), q("2 m")] as const;
    const { lastUnit } = solveFor({
      model: cube,
      evidence,
      unknown: "edge",
      between,
      output: "mass",
      target: q("1 kg"),
    });
    expectTypeOf(lastUnit?.of).toEqualTypeOf<Quantity<Length> | undefined>();
  });

  it("refuse what does not fit", () => {
    // @ts-expect-error an edge is a length
    sweep({ model: cube, evidence, over: { edge: [q("1 kg"), q("2 kg")] }, output: "mass" });
    // @ts-expect-error there is no such input
    sweep({ model: cube, evidence, over: { length: [q("1 m"), q("2 m")] }, output: "mass" });
    // @ts-expect-error there is no such input
    propagate({ model: cube, evidence, correlations: [{ between: ["edge", "length"], rank: 0.5 }] });
    // @ts-expect-error there is no such input
    propagateLinearly({ model: cube, evidence, degreesOfFreedom: { length: 3 } });
  });
});
