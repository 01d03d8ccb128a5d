import { q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type AnyClaim,
  around,
  type ClaimOptions,
  claim,
  claimEvidence,
  claimQuantities,
  claimsByVariant,
  distributionOf,
  model,
  propagate,
  variantModel,
} from "../../src/index.js";

const range = {
  quantity: "range",
  relation: "about",
  value: q("520 km"),
  procedure: "WLTP",
  status: "target",
} as const;

describe("a claim as announced", () => {
  it("keeps what was said and lists what was not", () => {
    expect(claim({ ...range, variant: "long", equipment: ["19 in wheels"] }).unsaid).toEqual([]);
    expect(claim(range).unsaid).toEqual(["variant", "equipment"]);
    const pack = claim({ quantity: "packEnergy", relation: "about", value: q("98 kWh"), status: "provisional" });
    expect(pack.unsaid).toEqual(["variant", "boundary"]);
    expect(pack.warnings).toEqual(["it is not said whether the pack energy is total or usable"]);
    expect(pack.words).toBe("pack energy about 98 kWh (provisional)");
  });

  it("warns that the best figure is of the best variant, and only then", () => {
    const warnings = (relation: "up to" | "from" | "at least") => claim({ ...range, relation }).warnings.join();
    expect(warnings("up to")).toContain("best variant");
    expect(warnings("from") + warnings("at least")).toBe("");
    const mass = { quantity: "mass", value: q("2.1 t"), boundary: "curb mass", status: "target" } as const;
    expect(claim({ ...mass, relation: "from" }).warnings.join()).toContain("best variant");
  });

  it("takes every quantity that it lists in its own unit, and no other dimension", () => {
    for (const quantity of Object.keys(claimQuantities) as (keyof typeof claimQuantities)[]) {
      const given = {
        quantity,
        relation: "about",
        value: q("5 J/K"),
        status: "target",
      } as unknown as ClaimOptions<"range">;
      expect(() => claim(given), quantity).toThrow(expect.objectContaining({ code: "WRONG_DIMENSION" }));
    }
    expect(claim({ quantity: "torque", relation: "about", value: q("300 N·m"), status: "target" }).words).toContain(
      "300 N·m",
    );
    expect(claim({ quantity: "dragCoefficient", relation: "from", value: 0.28, status: "target" }).words).toContain(
      "0.28",
    );
  });

  it("is frozen, and keeps no list of the caller's", () => {
    const equipment = ["large wheels"];
    const made = claim({ ...range, equipment });
    equipment.push("spoiler");
    expect(made.equipment).toEqual(["large wheels"]);
    expect(Object.isFrozen(made)).toBe(true);
  });

  it.each([
    ["WRONG_CHOICE", { ...range, quantity: "rnage" }, "did you mean 'range'?"],
    ["WRONG_CHOICE", { ...range, relation: "roughly" }, "expected exactly, about"],
    ["WRONG_CHOICE", { ...range, status: "rumour" }, "expected target"],
    ["WRONG_CHOICE", { ...range, boundary: "usable" }, "range has no boundary"],
    [
      "WRONG_CHOICE",
      { ...range, quantity: "packEnergy", value: q("98 kWh"), boundary: "usuable" },
      "did you mean 'usable'?",
    ],
    ["WRONG_CHOICE", { ...range, procedure: "" }, "must be a text"],
    ["WRONG_CHOICE", { ...range, equipment: "wheels" }, "must be a list"],
    ["WRONG_CHOICE", { ...range, date: "yesterday" }, "the date must be"],
    ["UNKNOWN_OPTION", { ...range, varient: "long" }, "did you mean 'variant'?"],
    ["UNKNOWN_OPTION", { ...range, grade: "measured" }, "no option 'grade'"],
    ["OUT_OF_RANGE", { ...range, value: q("0 km") }, "greater than zero"],
    ["WRONG_DIMENSION", { ...range, value: q("520 kg") }, "length"],
  ])("refuses with %s: %o", (code, options, words) => {
    expect(() => claim(options as never)).toThrow(
      expect.objectContaining({ code, message: expect.stringContaining(words) }),
    );
  });
});

describe("a claim as evidence", () => {
  const percentiles = (relation: ClaimOptions<"range">["relation"], share?: number) => {
    const evidence = claimEvidence({ claim: claim({ ...range, relation }), share });
    const { p10, p50, p90 } = distributionOf({ evidence, unit: "km" });
    return [p10, p50, p90].map((each) => each.in("km"));
  };

  it("lies around, above or below the figure as it was said", () => {
    expect(percentiles("about", 0.1).map((each) => Math.round(each))).toEqual([468, 520, 572]);
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.4, noNaN: true }), (share) => {
        for (const relation of ["at least", "from"] as const)
          expect(percentiles(relation, share)[0]).toBeGreaterThan(520);
        for (const relation of ["at most", "up to"] as const) expect(percentiles(relation, share)[2]).toBeLessThan(520);
        expect(percentiles("at least", share)[2]).toBeCloseTo(520 * (1 + 2 * share), 6);
        expect(percentiles("up to", share)[0]).toBeCloseTo(520 * (1 - 2 * share), 6);
      }),
    );
  });

  it("is wider the less settled the claim is, and graded by its status", () => {
    const of = (status: "target" | "provisional" | "certified") =>
      claimEvidence({ claim: claim({ ...range, status }) });
    const width = (status: "target" | "provisional" | "certified") =>
      distributionOf({ evidence: of(status), unit: "km" }).standardDeviation;
    expect(width("target")).toBeGreaterThan(width("provisional"));
    expect(width("provisional")).toBeGreaterThan(width("certified"));
    expect([of("target").grade, of("certified").grade]).toEqual(["announced", "certified"]);
  });

  it("stays a possible drag coefficient, and checks a claim that comes from elsewhere", () => {
    const drag = claim({ quantity: "dragCoefficient", relation: "at least", value: 1.9, status: "target" });
    expect(distributionOf({ evidence: claimEvidence({ claim: drag }), unit: "1", atMost: 2 }).p90).toBeLessThanOrEqual(
      2,
    );
    expect(() => claimEvidence({ claim: { ...drag, status: "x" } as never })).toThrow(
      expect.objectContaining({ code: "WRONG_CHOICE" }),
    );
  });
});

describe("variants", () => {
  it("are told apart, and the best of several are not taken for one vehicle", () => {
    const claims: AnyClaim[] = [
      claim({ ...range, relation: "up to" }),
      claim({ quantity: "mass", relation: "from", value: q("2150 kg"), status: "target" }),
      claim({ quantity: "power", relation: "about", value: q("250 kW"), variant: "long", status: "target" }),
    ];
    const { variants, warnings } = claimsByVariant(claims);
    expect(variants.map(({ variant, claims: own }) => [variant, own.length])).toEqual([
      ["long", 1],
      [undefined, 2],
    ]);
    expect(warnings).toEqual([
      "range 'up to' and mass of the vehicle 'from' may be of different variants: no one vehicle need have them all",
    ]);
    expect(claimsByVariant(claims.slice(1)).warnings).toEqual([]);
  });

  const vehicle = model({
    name: "range",
    inputs: {
      usable: { unit: "kWh", meaning: "usable energy", above: 0 },
      consumption: { unit: "Wh/km", meaning: "consumption", above: 0 },
    },
    outputs: { range: { unit: "km", meaning: "range" } },
    evaluate: ({ usable, consumption }) => ({ range: (1000 * usable) / consumption }),
  });
  const consumption = around(q("180 Wh/km"), 0.1);

  it("share the draws of what they share: with equal packs they have equal ranges in every draw", () => {
    const both = variantModel({ model: vehicle, variants: ["short", "long"], own: ["usable"] });
    const evidence = { consumption, "short.usable": q("60 kWh"), "long.usable": q("90 kWh") };
    const result = propagate({ model: both, evidence, draws: 200 });
    const [short, long] = [result.samples("short.range"), result.samples("long.range")];
    expect(short.every((each, i) => Math.abs((long[i] as number) / each - 1.5) < 1e-12)).toBe(true);
    // The same unknown has the same draws as in the model of one variant
    const alone = propagate({ model: vehicle, evidence: { consumption, usable: q("90 kWh") }, draws: 200 });
    expect([...long]).toEqual([...alone.samples("range")]);
  });

  it("draw what is their own apart", () => {
    const both = variantModel({ model: vehicle, variants: ["short", "long"], own: ["usable"] });
    const usable = around(q("60 kWh"), 0.1);
    const evidence = { consumption: q("180 Wh/km"), "short.usable": usable, "long.usable": usable };
    const result = propagate({ model: both, evidence, draws: 200 });
    expect([...result.samples("short.range")]).not.toEqual([...result.samples("long.range")]);
    expect(both.inputs["long.usable"].meaning).toBe("usable energy, long");
  });

  it.each([
    ["EMPTY", { variants: [], own: [] }],
    ["INCONSISTENT", { variants: ["a", "a"], own: [] }],
    ["WRONG_CHOICE", { variants: ["a.b"], own: [] }],
    ["WRONG_CHOICE", { variants: ["a"], own: ["usabel"] }],
  ])("are refused with %s: %o", (code, options) => {
    expect(() => variantModel({ model: vehicle, ...options } as never)).toThrow(expect.objectContaining({ code }));
  });
});
