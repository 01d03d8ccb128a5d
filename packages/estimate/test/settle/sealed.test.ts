import { createHash } from "node:crypto";
import { InputError, q } from "@tarewatt/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { around, model, propagate, readSealed, sealEstimate } from "../../src/index.js";
import { canonicalJson, digestOf } from "../../src/settle/canonical-json.js";
import { sha256 } from "../../src/settle/sha256.js";

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

describe("SHA-256", () => {
  // One-block, two-block and long messages of the examples that accompany FIPS 180-4, and the empty message
  it.each<[string, string]>([
    ["", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"],
    ["abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"],
    [
      "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
      "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
    ],
    ["a".repeat(1_000_000), "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"],
  ])("gives the vectors of the standard (from memory) %#", (text, wanted) => {
    expect(sha256(bytesOf(text))).toBe(wanted);
  });

  it("gives what the library of Node gives, for every length around the ends of blocks", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(sha256(bytes)).toBe(createHash("sha256").update(bytes).digest("hex"));
      }),
    );
    for (let length = 50; length < 135; length++) {
      const bytes = new Uint8Array(length).fill(length);
      expect(sha256(bytes)).toBe(createHash("sha256").update(bytes).digest("hex"));
    }
  });
});

describe("canonical JSON", () => {
  it("orders names by UTF-16 code units and writes numbers as RFC 8785, 3.2.2 and 3.2.3 do (from memory)", () => {
    const given = JSON.parse(
      '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}',
    );
    expect(canonicalJson(given)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
    const names = ["\u20ac", "\r", "\ufb33", "1", "\u{1f600}", "\u0080", "\u00f6"];
    const sorted = Object.keys(JSON.parse(canonicalJson(Object.fromEntries(names.map((name) => [name, name])))));
    expect(sorted.filter((name) => name !== "1")).toEqual(["\r", "\u0080", "\u00f6", "\u20ac", "\u{1f600}", "\ufb33"]);
  });

  it("is read back as the same, in any order of names, and digested as its UTF-8 is", () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => {
        const read = JSON.parse(canonicalJson(value));
        expect(canonicalJson(read)).toBe(canonicalJson(value));
        expect(canonicalJson(reversed(value))).toBe(canonicalJson(value));
        const wanted = createHash("sha256").update(canonicalJson(value), "utf8").digest("hex");
        expect(digestOf(value)).toBe(`sha256:${wanted}`);
      }),
    );
    expect(digestOf("€ ö 😀")).toBe(`sha256:${createHash("sha256").update('"€ ö 😀"', "utf8").digest("hex")}`);
  });

  it.each([[Number.NaN], ["\ud800"], [{ "\udc00": 1 }], [() => 1], [{ a: 5n }]])("refuses %s", (value) => {
    expect(() => canonicalJson(value)).toThrow(InputError);
  });
});

function reversed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reversed);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, part]) => [key, reversed(part)]),
  );
}

const range = model({
  name: "range",
  inputs: {
    usable: { unit: "kWh", meaning: "usable energy", above: 0, place: 1 },
    use: { unit: "Wh/km", meaning: "consumption", above: 0, place: 2 },
  },
  outputs: {
    range: { unit: "km", meaning: "range, full to empty" },
    usable: { unit: "kWh", meaning: "usable energy" },
  },
  evaluate: ({ usable, use }) => ({ range: (1000 * usable) / use, usable }),
});
const evidence = {
  usable: around(q("90 kWh"), 0.05, { grade: "reported", source: "a magazine (invented)" }),
  use: around(q("180 Wh/km"), 0.1),
};
const options = {
  ...{ name: "van (invented)", date: "2026-11-25", model: range, evidence, draws: 500 },
  ...{ versions: { estimate: "0.1.0" }, priors: { scatter: 0.04, driver: q("75 kg"), note: "invented" } },
} as const;
const sealed = sealEstimate(options);
const text = JSON.stringify(sealed);

describe("a sealed estimate", () => {
  it("makes a round trip through JSON, white space and order of names aside", () => {
    expect(readSealed({ text })).toEqual(sealed);
    expect(readSealed({ text: JSON.stringify(reversed(sealed), undefined, 3) })).toEqual(sealed);
    expect(Object.isFrozen(readSealed({ text }).outputs.range?.quantiles)).toBe(true);
  });

  it("holds the quantiles of the study, in the unit of the model, and the evidence with its source", () => {
    const study = propagate({ model: range, evidence, draws: 500 });
    const { shares, outputs, inputs, priors } = sealed;
    const at = (share: number) => outputs.range?.quantiles[shares.indexOf(share)];
    for (const share of [0.001, 0.05, 0.1, 0.5, 0.9, 0.999])
      expect(at(share)).toBe(study.quantile("range", share).in("km"));
    expect(inputs.usable?.evidence).toMatchObject({ likely: "90 kWh", source: "a magazine (invented)" });
    expect(priors).toEqual({ scatter: 0.04, driver: "75 kg", note: "invented" });
  });

  it("has one digest, in whatever order evidence, versions and priors are named, and another for other evidence", () => {
    const again = sealEstimate({
      ...options,
      evidence: { use: evidence.use, usable: Object.fromEntries(Object.entries(evidence.usable).reverse()) as never },
      priors: Object.fromEntries(Object.entries(options.priors).reverse()),
    });
    expect(again.digest).toBe(sealed.digest);
    expect(sealEstimate({ ...options, seed: 2 }).digest).not.toBe(sealed.digest);
    expect(sealEstimate({ ...options, evidence: { ...evidence, use: around(q("180 Wh/km"), 0.11) } }).digest).not.toBe(
      sealed.digest,
    );
  });

  it("is refused when any character of what it says is changed", () => {
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.constantFrom(...'0123456789abcxyz .,"-'), (place, character) => {
        const changed = text.slice(0, place) + character + text.slice(place + 1);
        let read: unknown;
        try {
          read = readSealed({ text: changed });
        } catch (error) {
          expect((error as InputError).code).toMatch(/^(DIGEST_MISMATCH|INCONSISTENT|NOT_VALID_HERE)$/);
          return;
        }
        expect(read).toEqual(sealed);
      }),
      { numRuns: 300 },
    );
    const likelier = text.replace('"likely":500,', '"likely":501,');
    expect(likelier).not.toBe(text);
    expect(() => readSealed({ text: likelier })).toThrow(expect.objectContaining({ code: "DIGEST_MISMATCH" }));
    const renamed = text.replace("van (invented)", "Van (invented)");
    expect(() => readSealed({ text: renamed })).toThrow(expect.objectContaining({ code: "DIGEST_MISMATCH" }));
  });

  const resealed = (change: (content: Record<string, never>) => void): string => {
    const { digest: _, ...content } = structuredClone(sealed);
    change(content as never);
    return JSON.stringify({ ...content, digest: digestOf(content) });
  };

  it("is refused with every fault and its path", () => {
    const wrong = resealed((content: Record<string, unknown>) => {
      content.date = "2026-02-30";
      const outputs = content.outputs as Record<string, { unit: string; quantiles: number[] }>;
      if (outputs.range !== undefined) {
        outputs.range.unit = "parsnip";
        outputs.range.quantiles = outputs.range.quantiles.toReversed();
      }
    });
    const faults = (run: () => unknown): readonly string[] => {
      try {
        run();
        return [];
      } catch (error) {
        return ((error as InputError).details.faults as { path: string }[]).map(({ path }) => path);
      }
    };
    expect(faults(() => readSealed({ text: wrong }))).toEqual([
      "/date",
      "/outputs/range/unit",
      "/outputs/range/quantiles",
    ]);
    const short = resealed((content: Record<string, unknown>) => {
      delete content.seed;
      content.extra = 1;
    });
    expect(faults(() => readSealed({ text: short }))).toEqual(["/seed", "/extra"]);
  });

  it.each<[string, string]>([
    ["{", "INCONSISTENT"],
    ["null", "NOT_VALID_HERE"],
    ['{"format": "tarewatt sealed estimate", "version": 2}', "NOT_VALID_HERE"],
    ["x".repeat(20_000_001), "TOO_LONG"],
    ["[".repeat(200_000), "INCONSISTENT"],
  ])("is refused when it is none (%#)", (given, code) => {
    expect(() => readSealed({ text: given })).toThrow(expect.objectContaining({ code }));
  });

  it("needs a day, and outputs that there are", () => {
    expect(() => sealEstimate({ ...options, date: "25 November" })).toThrow("must be a day such as 2026-11-25");
    expect(() => sealEstimate({ ...options, outputs: ["mass" as never] })).toThrow("has no output 'mass'");
    expect(() => sealEstimate({ ...options, priors: { f: () => 1 } })).toThrow(
      expect.objectContaining({ code: "WRONG_CHOICE" }),
    );
  });
});
