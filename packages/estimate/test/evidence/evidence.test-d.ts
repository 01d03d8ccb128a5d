import { type Energy, type Mass, type Quantity, q } from "@tarewatt/units";
import { describe, expectTypeOf, it } from "vitest";
import {
  claim,
  claimEvidence,
  distributionOf,
  type Evidence,
  mergeEvidence,
  model,
  variantModel,
} from "../../src/index.js";

describe("types of evidence", () => {
  it("know the dimension of every form", () => {
    const evidence: Evidence<Quantity<Mass>>[] = [
      q("5 kg"),
      { atLeast: q("5 kg"), rarelyAbove: q("6 kg") },
      { distribution: "normal", mean: q("5 kg"), standardDeviation: q("1 kg") },
    ];
    expectTypeOf(evidence).toBeArray();
    // @ts-expect-error a distribution of masses has no ends in kWh
    const wrong: Evidence<Quantity<Mass>> = { distribution: "uniform", from: q("5 kg"), to: q("6 kWh") };
    expectTypeOf(wrong).not.toBeAny();
    expectTypeOf(distributionOf({ evidence: q("98 kWh"), unit: "kWh" }).p50).toEqualTypeOf<Quantity<Energy>>();
    expectTypeOf(mergeEvidence({ pieces: [0.9, { atMost: 1 }], unit: "1" }).likely).toEqualTypeOf<number>();
    // @ts-expect-error the pieces must be energies
    mergeEvidence({ pieces: [q("5 kg")], unit: "kWh" });
  });

  it("know what a claim is about", () => {
    const pack = claim({ quantity: "packEnergy", relation: "about", value: q("98 kWh"), status: "target" });
    expectTypeOf(pack.value).toEqualTypeOf<Quantity<Energy>>();
    expectTypeOf(claimEvidence({ claim: pack })).toExtend<Evidence<Quantity<Energy>>>();
    // @ts-expect-error a range is no energy
    claim({ quantity: "range", relation: "about", value: q("98 kWh"), status: "target" });
    // @ts-expect-error there is no such status
    claim({ quantity: "range", relation: "about", value: q("500 km"), status: "rumour" });
  });

  it("know the inputs and outputs of variants", () => {
    const range = model({
      name: "range",
      inputs: { usable: { unit: "kWh", meaning: "usable energy" }, use: { unit: "Wh/km", meaning: "consumption" } },
      outputs: { range: { unit: "km", meaning: "range" } },
      evaluate: ({ usable, use }) => ({ range: (1000 * usable) / use }),
    });
    const both = variantModel({ model: range, variants: ["short", "long"], own: ["usable"] });
    expectTypeOf<keyof typeof both.inputs>().toEqualTypeOf<"use" | "short.usable" | "long.usable">();
    expectTypeOf<keyof typeof both.outputs>().toEqualTypeOf<"short.range" | "long.range">();
  });
});
