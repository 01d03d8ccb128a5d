import { q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { around, model, rankUnknowns } from "../../src/index.js";

const sum = model({
  name: "weighted sum",
  inputs: {
    a: { unit: "kg", meaning: "first" },
    b: { unit: "kg", meaning: "second" },
    c: { unit: "kg", meaning: "third" },
  },
  outputs: { total: { unit: "kg", meaning: "total" } },
  evaluate: ({ a, b, c }) => ({ total: a - 3 * b + 2 * c }),
});

describe("rankUnknowns", () => {
  it("ranks by the size of the swing, whatever its sign, and leaves exact inputs out", () => {
    const ranked = rankUnknowns({
      model: sum,
      evidence: { a: around(q("10 kg"), 0.2), b: around(q("10 kg"), 0.2), c: q("10 kg") },
      output: "total",
    });
    expect(ranked.map(({ input, swing }) => [input, swing.in("kg")])).toEqual([
      ["b", 12],
      ["a", 4],
    ]);
    expect(ranked[0]?.atLow.in("kg")).toBe(10 - 24 + 20);
    expect(ranked[0]?.meaning).toBe("second");
  });

  it("refuses an output that the model does not give", () => {
    const evidence = { a: q("1 kg"), b: q("1 kg"), c: q("1 kg") };
    expect(() => rankUnknowns({ model: sum, evidence, output: "mass" as never })).toThrow(
      "has no output 'mass': it has total",
    );
  });
});
