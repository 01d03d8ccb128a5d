import chiSquaredCdf from "@stdlib/stats-base-dists-chisquare-cdf";
import { q, quantity, stepLine } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { published } from "../../../../test/support/published.js";
import {
  type AnyClaim,
  around,
  type ClaimOptions,
  checkClaims,
  claim,
  claimVerdictLimits,
  model,
  variantModel,
} from "../../src/index.js";

/** Half-width to the 90th percentile, in standard deviations. */
const Z90 = 1.2815515655446004;

const normal = (mean: number, standardDeviation: number) =>
  ({
    distribution: "normal",
    mean: quantity(mean, "kW"),
    standardDeviation: quantity(standardDeviation, "kW"),
  }) as const;

const power = (kilowatts: number, more: Partial<ClaimOptions<"power">> = {}): AnyClaim =>
  claim({ quantity: "power", relation: "about", value: quantity(kilowatts, "kW"), status: "target", ...more });

const kW = (meaning: string) => ({ unit: "kW", meaning }) as const;

/** One unknown seen three times, and a second one with it: all linear. */
const linear = model({
  name: "linear",
  inputs: { a: kW("a"), b: kW("b") },
  outputs: { a1: kW("a once"), a2: kW("a twice"), a3: kW("a again"), sum: kW("a and b") },
  evaluate: ({ a, b }) => ({ a1: a, a2: 2 * a, a3: a, sum: a + b }),
});
const linearEvidence = { a: normal(100, 10), b: normal(50, 5) };
/** A claim with a standard deviation of 1 kW. */
const on = (output: "a1" | "a2" | "a3" | "sum", value: number, deviation = 1) => ({
  ...{ claim: power(value), output, share: (Z90 * deviation) / value },
});
const check = (claims: readonly ReturnType<typeof on>[], draws = 200) =>
  checkClaims({ model: linear, evidence: linearEvidence, claims, draws });

/** The flows of a heat exchanger with a bypass, measured with unit variances; balances are claims that they close, moved to 1000. */
const flows = [101.91, 64.45, 34.65, 64.2, 36.44, 98.88] as const;
const exchanger = model({
  name: "heat exchanger with bypass",
  inputs: { f1: kW("1"), f2: kW("2"), f3: kW("3"), f4: kW("4"), f5: kW("5"), f6: kW("6") },
  outputs: { split: kW("split"), exchanger: kW("exchanger"), bypass: kW("bypass"), mixer: kW("mixer") },
  evaluate: ({ f1, f2, f3, f4, f5, f6 }) => ({
    ...{ split: 1000 + f1 - f2 - f3, exchanger: 1000 + f2 - f4, bypass: 1000 + f3 - f5, mixer: 1000 + f4 + f5 - f6 },
  }),
});
const balanced = () =>
  checkClaims({
    model: exchanger,
    evidence: {
      ...{ f1: normal(flows[0], 1), f2: normal(flows[1], 1), f3: normal(flows[2], 1) },
      ...{ f4: normal(flows[3], 1), f5: normal(flows[4], 1), f6: normal(flows[5], 1) },
    },
    claims: (["split", "exchanger", "bypass", "mixer"] as const).map((output) => ({
      ...{ claim: power(1000), output, share: 1e-7 },
    })),
    draws: 100,
  });
const textbook = "Data Reconciliation & Gross Error Detection (Gulf Publishing, 2000), first example";

describe("claims in the linear limit: data reconciliation", () => {
  published({
    quantity: "reconciled flows of a heat exchanger with bypass",
    source: textbook,
    status: "memory",
    given: "measured 101.91, 64.45, 34.65, 64.20, 36.44, 98.88, unit variances, four balances",
    published: [100.22, 64.5, 35.72, 64.5, 35.72, 100.22],
    computed: () => {
      const found = new Map(
        balanced().unknownsIfAllTrue.map(({ input, after }) => [input, after.p50 as ReturnType<typeof q>]),
      );
      return ["f1", "f2", "f3", "f4", "f5", "f6"].map((name) =>
        (found.get(name) as { in(u: string): number }).in("kW"),
      );
    },
    tolerance: 0.005,
    why: "last printed digit",
  });

  published({
    quantity: "global test of the balances of a heat exchanger, γ",
    source: "computed from the balances by (A·y)ᵀ·(A·Aᵀ)⁻¹·(A·y), outside this library",
    status: "regression",
    given: "residuals 2.81, 0.25, −1.79, 1.76",
    published: 6.4075,
    computed: () => balanced().disagreement,
    tolerance: 0.0005,
    why: "last printed digit, balances held to 1e-4",
  });

  // The unknowns stay within six standard deviations here: nearer to its upper end a share below 1 has too few digits.
  it("gives the chance of χ² with one degree for each claim (@stdlib)", () => {
    const moves = { min: -15, max: 15, noNaN: true };
    fc.assert(
      fc.property(fc.double(moves), fc.double(moves), (r, b) => {
        const t = r + b;
        const { chance, disagreement, counted } = check([on("a1", 100 + r), on("sum", 150 + t)], 100);
        // V = J·Jᵀ + S = [[101, 100], [100, 126]]
        const byHand = (126 * r * r - 200 * r * t + 101 * t * t) / (101 * 126 - 100 * 100);
        expect(Math.abs(disagreement - byHand)).toBeLessThan(1e-6 * (1 + byHand));
        expect(counted).toBe(2);
        expect(chance).toBeCloseTo(1 - chiSquaredCdf(byHand, 2), 6);
      }),
      { numRuns: 60 },
    );
  });

  it("finds in the measurement test what dropping a claim takes off the disagreement", () => {
    const all = [on("a1", 104), on("a2", 203), on("a3", 109), on("sum", 158)];
    const whole = check(all);
    all.forEach((_, i) => {
      const without = check(all.filter((__, j) => j !== i)).disagreement;
      expect((whole.claims[i]?.againstTheRest ?? 0) ** 2).toBeCloseTo(whole.disagreement - without, 3);
    });
    expect(whole.claims[2]?.againstTheRest).toBeGreaterThan(0);
  });

  it("calls true claims strained at the nominal rate, and their chances are uniform", () => {
    let seed = 7;
    /** A sum of twelve uniform numbers less six: normal enough for a rate. */
    const deviate = () => {
      let sum = -6;
      for (let i = 0; i < 12; i++) {
        seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
        sum += seed / 2 ** 32;
      }
      return sum;
    };
    const chances = Array.from({ length: 300 }, () => {
      const [a, b] = [100 + 10 * deviate(), 50 + 5 * deviate()];
      const { chance } = check(
        [on("a1", a + deviate()), on("a2", 2 * a + deviate()), on("sum", a + b + deviate())],
        100,
      );
      return chance;
    }).sort((x, y) => x - y);
    const largest = Math.max(...chances.map((each, i) => Math.abs(each - (i + 0.5) / chances.length)));
    // Kolmogorov's bound at a chance of 0.1 %: 1.95/√n
    expect(largest).toBeLessThan(1.95 / Math.sqrt(chances.length));
    const strained = chances.filter((each) => each < claimVerdictLimits.strained).length / chances.length;
    expect(Math.abs(strained - 0.05)).toBeLessThan(0.045);
  });
});

describe("which claim is odd", () => {
  const true3 = [on("a1", 103.2), on("a2", 205.5), on("a3", 102.4)];

  it("names the corrupted one, and without it the others go together", () => {
    fc.assert(
      fc.property(
        fc.nat(2),
        fc.constantFrom(-1, 1),
        fc.double({ min: 12, max: 30, noNaN: true }),
        (which, sign, by) => {
          const claims = true3.map((each, i) =>
            i === which ? on(each.output, (each.claim.value as { in(u: string): number }).in("kW") + sign * by) : each,
          );
          const found = check(claims, 100);
          expect(found.consistent).toBe(false);
          expect(found.oddOne).toBe(found.claims[which]);
          expect(Math.sign(found.oddOne?.againstTheRest ?? 0)).toBe(sign);
          const rest = check(
            claims.filter((_, i) => i !== which),
            100,
          );
          expect(rest.consistent).toBe(true);
          expect(rest.chance).toBeCloseTo(found.oddOne?.chanceWithoutIt ?? 0, 6);
        },
      ),
      { numRuns: 20 },
    );
    expect(check(true3).verdict).toBe("can all be true");
    expect(check(true3).oddOnes).toEqual([]);
  });

  it("names none when either of two would do", () => {
    const found = check([on("a1", 95), on("a3", 103)]);
    expect(found.verdict).toBe("cannot all be true");
    expect(found.oddOnes).toHaveLength(2);
    expect(found.oddOne).toBeUndefined();
    expect(found.words.join(" ")).toContain("Dropping any one of these resolves it");
  });

  it("does not depend on the order of the claims", () => {
    const claims = [
      ...[on("a1", 99), on("a2", 240), on("sum", 158), on("a3", 101)],
      { claim: power(130, { relation: "at least" }), output: "a1", share: 0.02 } as const,
      { claim: power(90, { relation: "at most" }), output: "a3", share: 0.02 } as const,
    ];
    const { chance } = check(claims);
    fc.assert(
      fc.property(fc.shuffledSubarray(claims, { minLength: claims.length }), (shuffled) => {
        expect(check(shuffled, 100).chance).toBeCloseTo(chance, 12);
      }),
      { numRuns: 10 },
    );
  });

  it("never finds wider claims less consistent", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 140, noNaN: true }),
        fc.double({ min: 1, max: 5, noNaN: true }),
        (y, wider) => {
          const claims = (by: number) => [on("a1", y, by), on("a2", 205, by), on("sum", 160, by)];
          expect(check(claims(wider), 100).chance).toBeGreaterThanOrEqual(check(claims(1), 100).chance - 1e-9);
        },
      ),
      { numRuns: 30 },
    );
  });
});

describe("one-sided claims", () => {
  const bound = (relation: "at least" | "at most" | "up to" | "from", value: number) =>
    checkClaims({
      ...{ model: linear, evidence: linearEvidence, draws: 1000 },
      claims: [{ claim: power(value, { relation }), output: "a1", share: 0.01 * Z90 }],
    });

  it("say nothing while they are met", () => {
    for (const [relation, value] of [
      ["at least", 80],
      ["from", 80],
      ["at most", 120],
      ["up to", 120],
    ] as const) {
      const found = bound(relation, value);
      expect(found.claims[0]?.tension, relation).toBe(0);
      expect(found.claims[0]?.againstTheRest, relation).toBe(0);
      expect(found.chance, relation).toBe(1);
      expect(found.verdict, relation).toBe("can all be true");
    }
  });

  it("have half the chance of a two-sided claim when they press alone", () => {
    const { chance, disagreement } = bound("at least", 125);
    // A mixture of nothing and χ² with one degree, half and half
    expect(chance / ((1 - chiSquaredCdf(disagreement, 1)) / 2)).toBeCloseTo(1, 2);
    expect(bound("at most", 75).verdict).toBe("strained");
    expect(bound("at least", 150).verdict).toBe("cannot all be true");
  });

  it("leave the truth of the unknown where the draws put it", () => {
    const found = bound("at least", 100);
    expect(found.method).toBe("weighted draws");
    // Density φ(z) above the bound and φ(z)·exp(−z²/2·10²) below it, as the bound is 1 of 10 kW soft: below lies the mass 0.0498 of 0.5498, so
    // the median is where the normal share is 0.5 + 0.2749 − 0.0498 = 0.7251
    expect(found.unknownsIfAllTrue[0]?.moved).toBeCloseTo(0.598, 1);
  });
});

/** A van, invented, simple enough to follow by hand. */
const van = model({
  name: "van (invented)",
  inputs: {
    usable: { unit: "kWh", meaning: "usable energy", above: 0 },
    drag: { unit: "1", meaning: "drag coefficient", above: 0, atMost: 2 },
    rolling: { unit: "Wh/km", meaning: "consumption beside drag", above: 0 },
  },
  outputs: { range: { unit: "km", meaning: "range, WLTC" }, consumption: { unit: "Wh/km", meaning: "consumption" } },
  evaluate: ({ usable, drag, rolling }) => {
    const consumption = rolling + 250 * drag;
    return { consumption, range: (1000 * usable) / consumption };
  },
});
const vanEvidence = {
  usable: around(q("80 kWh"), 0.03),
  drag: around(0.285, 0.05),
  rolling: { low: q("95 Wh/km"), likely: q("100 Wh/km"), high: q("115 Wh/km") },
} as const;
const farRange = claim({
  ...{
    quantity: "range",
    relation: "at least",
    value: q("520 km"),
    procedure: "WLTP",
    status: "provisional",
    id: "far",
  },
});

describe("claims on a vehicle", () => {
  it("says in words what must have been otherwise", () => {
    const found = checkClaims({ model: van, evidence: vanEvidence, claims: [{ claim: farRange, output: "range" }] });
    expect(found.claims[0]?.tension).toBeGreaterThan(1);
    const drag = found.unknownsIfAllTrue.find(({ input }) => input === "drag");
    expect(drag?.moved).toBeLessThan(0);
    expect(drag?.words).toMatch(/^drag coefficient 0\.285 → 0\.2[78]\d \(−\d\.\d sd\)$/);
    expect(found.words[0]).toMatch(
      /^The claim (can be true|is strained): true claims would disagree so much in .* of cases\.$/,
    );
    expect(found.working().map(stepLine).at(-1)).toMatch(/^χ² = D_u \+ D_c = /);
    expect(found.working().at(-1)?.result.value).toBeCloseTo(found.disagreement, 9);
  });

  it("agrees between least squares and weighted draws where both are good", () => {
    const claims = [
      {
        output: "range",
        share: 0.04,
        claim: claim({ quantity: "range", relation: "about", value: q("480 km"), procedure: "WLTP", status: "target" }),
      },
    ] as const;
    const found = checkClaims({ model: van, evidence: vanEvidence, claims, draws: 8192 });
    expect(found.effectiveDraws).toBeGreaterThan(1000);
    expect(found.warnings.join()).not.toContain("differ");
    expect(found.method).toBe("least squares");
  });

  it("takes claims on inputs", () => {
    const slippery = claim({ quantity: "dragCoefficient", relation: "exactly", value: 0.272, status: "certified" });
    const found = checkClaims({ model: van, evidence: vanEvidence, claims: [{ claim: slippery, input: "drag" }] });
    expect(found.unknownsIfAllTrue[0]?.input).toBe("drag");
    expect(found.unknownsIfAllTrue[0]?.after.p50).toBeCloseTo(0.272, 2);
    expect(found.claims[0]?.expected.p50).toBeCloseTo(0.285, 3);
  });

  it("warns when a claim asks for more than the evidence can be", () => {
    const value = claim({ quantity: "dragCoefficient", relation: "exactly", value: 0.2, status: "certified" });
    const found = checkClaims({ model: van, evidence: vanEvidence, claims: [{ claim: value, input: "drag" }] });
    expect(found.verdict).toBe("cannot all be true");
    expect(found.warnings.join()).toContain("drag is pressed to the end of its evidence");
  });

  it("finds variants that share what they share", () => {
    const both = variantModel({ model: van, variants: ["short", "long"], own: ["usable"] });
    const said = (value: number, output: "short.range" | "long.range") => ({
      claim: claim({
        ...{
          quantity: "range",
          relation: "about",
          value: quantity(value, "km"),
          procedure: "WLTP",
          status: "certified",
        },
      }),
      output,
    });
    const { drag, rolling } = vanEvidence;
    const evidence = {
      drag,
      rolling,
      "short.usable": around(q("60 kWh"), 0.01),
      "long.usable": around(q("80 kWh"), 0.01),
    };
    const one = checkClaims({ model: both, evidence, claims: [said(330, "short.range"), said(440, "long.range")] });
    // Each alone would pass, but the same body cannot be both better and worse than expected.
    const other = checkClaims({ model: both, evidence, claims: [said(330, "short.range"), said(495, "long.range")] });
    expect(one.consistent).toBe(true);
    expect(other.consistent).toBe(false);
    expect(other.oddOnes).toHaveLength(2);
  });

  it("counts what goes back to one origin once", () => {
    const again = claim({ ...options(farRange), id: "echo", derivedFrom: ["far"] });
    const once = checkClaims({ model: van, evidence: vanEvidence, claims: [{ claim: farRange, output: "range" }] });
    const twice = checkClaims({
      ...{ model: van, evidence: vanEvidence },
      claims: [
        { claim: again, output: "range" },
        { claim: farRange, output: "range" },
        { claim: farRange, output: "range" },
      ],
    });
    expect(twice.chance).toBe(once.chance);
    expect(twice.claims.map(({ counts }) => counts)).toEqual([false, true, false]);
    expect(twice.warnings.join()).toContain("does not count");
    const told = checkClaims({
      ...{ model: van, evidence: { ...vanEvidence, drag: { ...vanEvidence.drag, id: "sheet" } } },
      claims: [
        {
          claim: claim({
            ...{ quantity: "dragCoefficient", relation: "about", value: 0.2, status: "target", derivedFrom: ["sheet"] },
          }),
          input: "drag",
        },
      ],
    });
    expect([told.counted, told.chance]).toEqual([0, 1]);
  });

  it("has nothing to say without claims", () => {
    const found = checkClaims({ model: van, evidence: vanEvidence, claims: [] });
    expect([found.verdict, found.chance, found.disagreement, found.counted]).toEqual(["can all be true", 1, 0, 0]);
    expect(found.words).toEqual(["There is no claim to check."]);
  });

  it("is frozen", () => {
    const found = checkClaims({ model: van, evidence: vanEvidence, claims: [{ claim: farRange, output: "range" }] });
    for (const part of [found, found.claims, found.claims[0], found.unknownsIfAllTrue[0], found.words]) {
      expect(Object.isFrozen(part)).toBe(true);
    }
  });

  it.each([
    ["WRONG_CHOICE", [{ claim: farRange, output: "rnage" }], "did you mean 'range'?"],
    ["WRONG_CHOICE", [{ claim: farRange, input: "drga" }], "did you mean 'drag'?"],
    ["INCONSISTENT", [{ claim: farRange }], "about an output or an input"],
    ["INCONSISTENT", [{ claim: farRange, output: "range", input: "drag" }], "one of them"],
    [
      "WRONG_DIMENSION",
      [{ claim: farRange, output: "consumption" }],
      "the claim on consumption must be energy per distance",
    ],
    ["OUT_OF_RANGE", [{ claim: farRange, output: "range", share: 0 }], "share of claims[0]"],
    ["UNKNOWN_OPTION", [{ claim: farRange, outptu: "range" }], "did you mean 'output'?"],
    ["NOT_AN_OBJECT", [{ claim: 5, output: "range" }], "a claim is needed"],
    ["WRONG_CHOICE", "claims", "claims must be a list"],
  ])("refuses with %s", (code, claims, message) => {
    const wrong = () => checkClaims({ model: van, evidence: vanEvidence, claims: claims as never });
    expect(wrong).toThrow(expect.objectContaining({ code }));
    expect(wrong).toThrow(message);
  });
});

/** What a claim was made of. */
function options({ unsaid: _, warnings: __, words: ___, ...rest }: typeof farRange): ClaimOptions<"range"> {
  return rest;
}
