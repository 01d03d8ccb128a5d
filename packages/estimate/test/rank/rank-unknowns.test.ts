import { q } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import { around, model, propagate, rankUnknowns } from "../../src/index.js";

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

/**
 * A uniform number between 0 and 1 as a function of an input with low −1, likely 0, high 1: the share of that distribution below it.
 * The halves are triangles that end at 1/(1 − √0.2).
 */
const end = 1 / (1 - Math.sqrt(0.2));
const uniform = (z: number): number => (z < 0 ? 0.5 * (1 + z / end) ** 2 : 1 - 0.5 * (1 - z / end) ** 2);
const z = { low: -1, likely: 0, high: 1 };

const ishigami = model({
  name: "Ishigami function",
  inputs: {
    x1: { unit: "1", meaning: "first", place: 1 },
    x2: { unit: "1", meaning: "second", place: 2 },
    x3: { unit: "1", meaning: "third", place: 3 },
  },
  outputs: { f: { unit: "1", meaning: "value" } },
  evaluate: (inputs) => {
    const [a, b, c] = [inputs.x1, inputs.x2, inputs.x3].map((each) => Math.PI * (2 * uniform(each) - 1)) as [
      number,
      number,
      number,
    ];
    return { f: Math.sin(a) + 7 * Math.sin(b) ** 2 + 0.1 * c ** 4 * Math.sin(a) };
  },
});
const ishigamiEvidence = { x1: z, x2: z, x3: z };
const by = (input: string, draws: number) => {
  const ranked = rankUnknowns({ model: ishigami, evidence: ishigamiEvidence, output: "f", draws });
  return ranked.find((each) => each.input === input) as (typeof ranked)[number];
};

describe("shares of the variance", () => {
  published({
    quantity: "first-order shares of the Ishigami function, x1, x2, x3",
    source: "documentation of two open libraries for sensitivity analysis, page of the Ishigami function",
    status: "seen",
    given: "a 7, b 0.1, inputs uniform from −π to π; 65 536 rows",
    published: [0.3139, 0.4424, 0],
    computed: () => ["x1", "x2", "x3"].map((name) => by(name, 65_536).firstOrder.value),
    tolerance: 0.002,
    why: "scatter of 65 536 rows",
  });

  published({
    quantity: "total shares of the Ishigami function, x1, x2, x3",
    source:
      "variances as printed in the documentation of an open library for sensitivity analysis, page of the Ishigami function",
    status: "seen",
    given: "a 7, b 0.1, inputs uniform from −π to π; V₁ + V₁₃, V₂, V₁₃ by V; 65 536 rows",
    published: [0.557589, 0.442411, 0.243684],
    computed: () => ["x1", "x2", "x3"].map((name) => by(name, 65_536).total.value),
    tolerance: 0.002,
    why: "scatter of 65 536 rows",
  });

  it("have errors that are about what other seeds give", () => {
    const runs = Array.from({ length: 30 }, (_, seed) =>
      rankUnknowns({ model: ishigami, evidence: ishigamiEvidence, output: "f", draws: 1024, seed }).find(
        ({ input }) => input === "x1",
      ),
    );
    for (const [kind, exact] of [
      ["firstOrder", 0.313905],
      ["total", 0.557589],
    ] as const) {
      const off = runs.map((run) => (run?.[kind].value ?? Number.NaN) - exact);
      const actual = Math.sqrt(off.reduce((sum, each) => sum + each * each, 0) / off.length);
      const stated = runs.reduce((sum, run) => sum + (run?.[kind].standardError ?? Number.NaN), 0) / runs.length;
      expect(stated / actual).toBeGreaterThan(0.7);
      expect(stated / actual).toBeLessThan(4);
    }
  });

  it("show what a swing cannot: an input that acts alike on both sides, and one that acts only with another", () => {
    const [x2, x3] = [by("x2", 2048), by("x3", 2048)];
    expect(x2.swing).toBeCloseTo(0, 10);
    expect(x2.firstOrder.value).toBeGreaterThan(0.4);
    expect(x3.firstOrder.value).toBeLessThan(0.05);
    expect(x3.total.value).toBeGreaterThan(0.2);
    expect(
      rankUnknowns({ model: ishigami, evidence: ishigamiEvidence, output: "f" }).map(({ input }) => input),
    ).toEqual(["x2", "x1", "x3"]);
  });

  it("are the squares of the swings for a sum, add up to one, and say how much narrower it gets", () => {
    const evidence = { a: around(q("10 kg"), 0.2), b: around(q("10 kg"), 0.2), c: around(q("10 kg"), 0.1) };
    const ranked = rankUnknowns({ model: sum, evidence, output: "total", draws: 8192 });
    const squares = ranked.map(({ swing }) => swing.in("kg") ** 2);
    const all = squares.reduce((a, b) => a + b);
    for (const [i, { firstOrder, total, narrowing }] of ranked.entries()) {
      expect(firstOrder.standardError).toBeLessThan(0.012);
      expect(Math.abs(firstOrder.value - (squares[i] as number) / all)).toBeLessThan(4 * firstOrder.standardError);
      expect(Math.abs(total.value - (squares[i] as number) / all)).toBeLessThan(4 * total.standardError);
      expect(narrowing).toBeCloseTo(1 - Math.sqrt(1 - (squares[i] as number) / all), 1);
    }
    const together = ranked.reduce((sum, { firstOrder }) => sum + firstOrder.value, 0);
    expect(Math.abs(together - 1)).toBeLessThan(
      4 * Math.max(...ranked.map(({ firstOrder }) => firstOrder.standardError)),
    );
    const [b] = ranked;
    const width = (of: typeof evidence) => propagate({ model: sum, evidence: of }).standardDeviation.total.in("kg");
    const measured = { ...evidence, b: q("10 kg") } as unknown as typeof evidence;
    expect(1 - width(measured) / width(evidence)).toBeCloseTo(b?.narrowing ?? Number.NaN, 1);
  });

  it("leave out rows that fail, and count them", () => {
    const brittle = model({
      ...sum,
      evaluate: ({ a, b, c }) => ({ total: a > 12.5 ? Number.NaN : a - 3 * b + 2 * c }),
    });
    const evidence = { a: around(q("10 kg"), 0.2), b: around(q("10 kg"), 0.2), c: q("10 kg") };
    const [first] = rankUnknowns({ model: brittle, evidence, output: "total" });
    expect(first?.failed).toBeGreaterThan(20);
    expect(first?.draws).toBe(1024 - (first?.failed ?? 0));
  });

  it("have elasticities: powers of a product", () => {
    const power = model({ ...sum, evaluate: ({ a, b, c }) => ({ total: (a ** 2 * b) / c ** 3 }) });
    const evidence = { a: around(q("10 kg"), 0.2), b: around(q("7 kg"), 0.1), c: around(q("3 kg"), 0.05) };
    for (const { input, elasticity } of rankUnknowns({ model: power, evidence, output: "total" })) {
      expect(elasticity).toBeCloseTo({ a: 2, b: 1, c: -3 }[input] ?? Number.NaN, 4);
    }
  });

  it("take seconds for twenty inputs", () => {
    const names = Array.from({ length: 20 }, (_, i) => `x${i}`);
    const many = model({
      name: "many",
      inputs: Object.fromEntries(names.map((name, i) => [name, { unit: "1", meaning: name, place: i + 1 }])),
      outputs: { y: { unit: "1", meaning: "sum" } },
      evaluate: (inputs) => ({ y: names.reduce((total, name, i) => total + (i + 1) * (inputs[name] as number), 0) }),
    });
    const evidence = Object.fromEntries(names.map((name) => [name, z])) as never;
    const start = performance.now();
    const ranked = rankUnknowns({ model: many, evidence, output: "y", draws: 4096 });
    expect(performance.now() - start).toBeLessThan(4000);
    expect(ranked.map(({ input }) => input).slice(0, 3)).toEqual(["x19", "x18", "x17"]);
  });
});
