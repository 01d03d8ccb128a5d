import { type InputError, q } from "@tarewatt/units";
import Ajv2020 from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { schemaFaults } from "../../src/evidence/file/check-schema.js";
import { fileSchema, schemaParts } from "../../src/evidence/file/schema.js";
import {
  claim,
  claimEvidence,
  type Evidence,
  type EvidenceFile,
  evidenceFileSchema,
  evidenceForModel,
  type FileFault,
  model,
  propagate,
  readEvidenceFile,
  writeEvidenceFile,
} from "../../src/index.js";

const head = { format: "tarewatt evidence", version: 1 };
const read = (parts: object) => readEvidenceFile({ text: JSON.stringify({ ...head, ...parts }) });
const faultsOf = (text: string): readonly string[] => {
  try {
    readEvidenceFile({ text });
  } catch (error) {
    const { faults } = (error as InputError).details as { readonly faults: readonly FileFault[] };
    return faults.map(({ path, problem }) => `${path}: ${problem}`);
  }
  return [];
};
const faults = (parts: object) => faultsOf(JSON.stringify({ ...head, ...parts }));

const full = {
  ...head,
  title: "an invented van",
  evidence: {
    mass: {
      low: "2.4 t",
      likely: "2500 kg",
      high: "5800 lb",
      grade: "reported",
      source: "a magazine",
      date: "2026-03",
    },
    usable: { atLeast: "90 kWh", rarelyAbove: "95 kWh" },
    drag: { distribution: "normal", mean: 0.28, standardDeviation: 0.01, atLeast: 0.2 },
    share: 0.9,
    cold: { distribution: "samples", values: ["-5 °C", "0 °C", "3 °C"] },
    factor: { distribution: "log-normal", median: "3 kW", factor: 1.4, id: "a", derivedFrom: ["b"] },
  },
  claims: [{ quantity: "range", relation: "up to", value: "520 km", procedure: "WLTP", status: "target" }],
  vehicles: [{ name: "car", curbMass: "2.3 t", motors: 2, equipment: ["tow bar"], grade: "measured" }],
};

describe("a file of evidence", () => {
  it("is read into evidence, claims and vehicles", () => {
    const file = readEvidenceFile({ text: `\uFEFF${JSON.stringify(full)}` });
    expect(file.title).toBe("an invented van");
    expect(Object.keys(file.evidence)).toEqual(Object.keys(full.evidence));
    expect(file.claims[0]?.unsaid).toEqual(["variant", "equipment"]);
    expect(file.vehicles[0]?.curbMass.in("kg")).toBe(2300);
    expect(Object.isFrozen(file.evidence)).toBe(true);
  });

  it("is written so that it reads back the same", () => {
    const once = readEvidenceFile({ text: JSON.stringify(full) });
    const text = writeEvidenceFile(once);
    const twice = readEvidenceFile({ text });
    expect(JSON.stringify(twice)).toBe(JSON.stringify(once));
    expect(writeEvidenceFile(twice)).toBe(text);
  });

  it("keeps every digit and unit of a value", () => {
    const value = fc.double({ min: 1e-9, max: 1e12, noNaN: true });
    fc.assert(
      fc.property(value, fc.constantFrom("kg", "lb", "Wh/km", "mi/h", "N·m", "kWh/100 mi"), (number, unit) => {
        const given = q(`${number} ${unit}` as "1 kg");
        const text = writeEvidenceFile({ evidence: { x: given as never } });
        const back = readEvidenceFile({ text }).evidence.x as unknown as typeof given;
        expect([back.value, back.unit]).toEqual([given.value, given.unit]);
      }),
    );
  });

  it("goes into a model, checked against its inputs", () => {
    const double = model({
      name: "twice",
      inputs: { mass: { unit: "kg", meaning: "mass", above: 0 } },
      outputs: { twice: { unit: "kg", meaning: "twice the mass" } },
      evaluate: ({ mass }) => ({ twice: 2 * mass }),
    });
    const { evidence } = readEvidenceFile({ text: JSON.stringify(full) });
    const checked = evidenceForModel({ model: double, evidence });
    expect(propagate({ model: double, evidence: checked, draws: 100 }).likely.twice.in("kg")).toBe(5000);
    const wrong = { mass: evidence.usable as Evidence<number> };
    expect(() => evidenceForModel({ model: double, evidence: wrong })).toThrow(
      expect.objectContaining({ code: "WRONG_DIMENSION" }),
    );
    expect(() => evidenceForModel({ model: double, evidence: {} })).toThrow(
      expect.objectContaining({ code: "MISSING_OPTION" }),
    );
  });
});

describe("a wrong file", () => {
  it("gives every fault with its path", () => {
    const given = {
      evidence: {
        a: { low: "1 kg", likly: "2 kg", high: "3 kg" },
        b: { low: "3 kg", likely: "2 kg", high: "4 kg" },
        "c/d": "12 kWhh",
      },
      claims: [{ quantity: "rnage", relation: "about", value: "5 km", status: "target" }],
    };
    expect(faults(given)).toEqual([
      "/evidence/a/likely: is missing",
      "/evidence/a/likly: is not known here: did you mean 'likely'?",
      expect.stringContaining("/claims/0/quantity: must be one of range"),
    ]);
    const meaning = { evidence: { ...given.evidence, a: 1 }, claims: [{ ...full.claims[0], value: "5 kg" }] };
    expect(faults(meaning)).toEqual([
      expect.stringContaining("/evidence/b: it: low must not exceed likely"),
      expect.stringContaining("/evidence/c~1d: "),
      expect.stringContaining("/claims/0: the claimed range must be length"),
    ]);
    expect(faults({ vehicles: [{ name: "a", curbMass: "2 t", packMass: "3 kWh" }, { name: "b" }] })).toEqual([
      "/vehicles/1/curbMass: is missing",
    ]);
    expect(faults({ vehicles: [{ name: "a", curbMass: "2 t", packMass: "3 kWh" }] }).join()).toContain(
      "/vehicles/0: packMass must be mass",
    );
    expect(faults({ evidence: { a: { distribution: "uniform", from: 1 } } })).toEqual(["/evidence/a/to: is missing"]);
  });

  it("is refused for another format, another version, and no JSON", () => {
    const code = (text: string) => {
      try {
        readEvidenceFile({ text });
      } catch (error) {
        return (error as InputError).code;
      }
      return "no error";
    };
    expect(code("{}")).toBe("NOT_VALID_HERE");
    expect(code('{"format": "tarewatt evidence", "version": 2}')).toBe("NOT_VALID_HERE");
    expect(code("null")).toBe("NOT_VALID_HERE");
    expect(code("{")).toBe("INCONSISTENT");
    expect(code("[".repeat(1_000_000))).toBe("INCONSISTENT");
    expect(code(`"${"x".repeat(20_000_001)}"`)).toBe("TOO_LONG");
  });

  it("takes no longer for being hostile: 20,000 misspelt parts within seconds", () => {
    const parts = Object.fromEntries(Array.from({ length: 20_000 }, (_, i) => [`low${i}`, 1]));
    const found = faults({ evidence: { a: parts } });
    expect(found.length).toBeGreaterThan(20_000);
    expect(found.join()).toContain("/evidence/a/low0: is not known here");
  });

  it("cannot reach a prototype", () => {
    const text = `{"format": "tarewatt evidence", "version": 1, "evidence": {"__proto__": {"low": 1, "likely": 2, "high": 3}, "constructor": 1}}`;
    expect(faultsOf(text)).toEqual([
      "/evidence/__proto__: '__proto__' cannot be the name of an input",
      "/evidence/constructor: 'constructor' cannot be the name of an input",
    ]);
    const inside = `{"format": "tarewatt evidence", "version": 1, "evidence": {"a": {"low": 1, "likely": 2, "high": 3, "__proto__": {"grade": "measured"}}}}`;
    expect(faultsOf(inside).join()).toContain("/evidence/a/__proto__: is not known here");
    expect(({} as Record<string, unknown>).grade).toBeUndefined();
  });

  it("is told from a right one exactly as a JSON Schema validator (ajv) tells", { timeout: 30_000 }, () => {
    const validate = new Ajv2020({ strict: false }).compile(evidenceFileSchema());
    const junk = fc.constantFrom<unknown>(
      null,
      1,
      -1.5,
      "",
      "5 kg",
      "measured",
      [],
      ["5 kg"],
      {},
      { value: "1 kg" },
      true,
      "uniform",
      "PERT",
    );
    const paths = pathsOf(full);
    const change = fc.tuple(
      fc.constantFrom(...paths),
      fc.option(junk, { nil: undefined }),
      fc.constantFrom("from", "grade", "odd", undefined),
    );
    let wrong = 0;
    fc.assert(
      fc.property(fc.array(change, { minLength: 0, maxLength: 2 }), (changes) => {
        const json = changes.reduce<unknown>((value, [path, part, added]) => changed(value, path, part, added), full);
        const ours = schemaFaults(json, fileSchema, schemaParts).length === 0;
        expect(ours, JSON.stringify(json)).toBe(validate(json));
        if (!ours) wrong += 1;
      }),
      { numRuns: 300 },
    );
    expect(wrong).toBeGreaterThan(60);
  });

  it("is not written either", () => {
    const odd = (parts: unknown) => () => writeEvidenceFile(parts as Partial<EvidenceFile>);
    expect(odd({ evidence: { x: () => 1 } })).toThrow(expect.objectContaining({ code: "WRONG_CHOICE" }));
    expect(odd({ evidence: { x: { low: 3, likely: 2, high: 1 } } })).toThrow(
      expect.objectContaining({ code: "INCONSISTENT" }),
    );
    const circle: Record<string, unknown> = {};
    circle.self = circle;
    expect(odd({ evidence: { circle } })).toThrow(expect.objectContaining({ code: "WRONG_CHOICE" }));
    const announced = claim({ quantity: "range", relation: "about", value: q("500 km"), status: "target" });
    expect(read(JSON.parse(writeEvidenceFile({ claims: [announced] }))).claims[0]?.words).toBe(announced.words);
    expect(writeEvidenceFile({ evidence: { range: claimEvidence({ claim: announced }) } })).toContain(
      '"likely": "500 km"',
    );
  });
});

type Path = readonly (string | number)[];

/** The paths of all parts of a JSON value. */
function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path];
  const inside = Object.entries(value).flatMap(([key, part]) =>
    pathsOf(part, [...path, Array.isArray(value) ? Number(key) : key]),
  );
  return path.length === 0 ? inside : [path, ...inside];
}

/** A copy with one part replaced, or taken away, and a part added beside it. */
function changed(value: unknown, [key, ...rest]: Path, part: unknown, added: string | undefined): unknown {
  if (key === undefined || typeof value !== "object" || value === null) return value;
  const copy = (Array.isArray(value) ? [...value] : { ...value }) as Record<string | number, unknown>;
  if (rest.length > 0) copy[key] = changed(copy[key], rest, part, added);
  else {
    if (part === undefined && !Array.isArray(copy)) delete copy[key];
    else copy[key] = part ?? null;
    if (added !== undefined && !Array.isArray(copy)) copy[added] = 1;
  }
  return copy;
}
