import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { numbersIn } from "../../../../test/support/quantities.js";
import { readPrinted } from "../../../../test/support/read-printed.js";
import {
  type Energy,
  type Length,
  type Mass,
  type Quantity,
  q,
  quantity,
  relation,
  type Speed,
  type Step,
  sourceLine,
  stepLine,
  substitute,
  type TarewattError,
  type Time,
  type Working,
} from "../../src/index.js";

interface Moving {
  readonly mass: Quantity<Mass>;
  readonly speed: Quantity<Speed>;
}

const kineticEnergy = relation<Moving, Quantity<Energy>>({
  name: "kinetic energy",
  inputs: {
    mass: { symbol: "m", unit: "kg", meaning: "mass", atLeast: 0 },
    speed: { symbol: "v", unit: "m/s", meaning: "speed" },
  },
  result: { symbol: "E", unit: "J" },
  expression: "½·m·v²",
  source: { document: "classical mechanics", status: "definition" },
  validity: "speeds far below that of light",
  evaluate: ({ mass, speed }) => 0.5 * mass * speed ** 2,
});

const pace = relation<{ readonly time: Quantity<Time>; readonly distance: Quantity<Length> }, number>({
  name: "pace",
  inputs: {
    time: { symbol: "t", unit: "s", meaning: "time" },
    distance: { symbol: "s", unit: "m", meaning: "distance" },
  },
  result: { symbol: "p", unit: "1" },
  expression: "t/s",
  source: { document: "arithmetic", status: "definition" },
  validity: "some way was made",
  evaluate: ({ time, distance }) => time / distance,
});

function errorOf(act: () => unknown): TarewattError {
  try {
    act();
  } catch (error) {
    return error as TarewattError;
  }
  throw new Error("expected an error, and there was none");
}

describe("relation", () => {
  it("is an ordinary function of quantities in any unit", () => {
    const energy = kineticEnergy({ mass: q("1 t"), speed: q("72 km/h") });
    expect(energy).toMatchObject({ value: 200_000, unit: "J", dimension: { kind: "" } });
    expect(pace({ time: q("1 min"), distance: q("60 m") })).toBe(1);
  });

  it("keeps what it was declared with", () => {
    expect({ ...kineticEnergy, name: kineticEnergy.name }).toMatchObject({
      name: "kinetic energy",
      expression: "½·m·v²",
      result: { symbol: "E", unit: "J" },
      source: { document: "classical mechanics", status: "definition" },
      validity: "speeds far below that of light",
      inputs: { mass: { symbol: "m", unit: "kg", meaning: "mass", atLeast: 0 } },
    });
  });

  it("checks its inputs like every public function", () => {
    const call = kineticEnergy as (inputs: object) => unknown;
    expect(errorOf(() => call({ mass: q("1 t"), velocity: q("1 m/s") })).code).toBe("UNKNOWN_OPTION");
    expect(errorOf(() => call({ mass: q("1 t") })).code).toBe("MISSING_OPTION");
    expect(errorOf(() => call({ mass: 1000, speed: q("1 m/s") })).code).toBe("NOT_A_QUANTITY");
    expect(errorOf(() => call({ mass: q("1 kWh"), speed: q("1 m/s") })).code).toBe("WRONG_DIMENSION");
    expect(errorOf(() => call({ mass: q("-1 t"), speed: q("1 m/s") })).code).toBe("NEGATIVE");
    expect(errorOf(() => kineticEnergy.explain({ mass: q("-1 t"), speed: q("1 m/s") })).code).toBe("NEGATIVE");
  });

  it("has a result or an error, never NaN, and says where it holds", () => {
    const error = errorOf(() => pace({ time: q("0 s"), distance: q("0 m") }));
    expect(error.code).toBe("NOT_VALID_HERE");
    expect(error.message).toContain("some way was made");
    expect(errorOf(() => pace.explain({ time: q("0 s"), distance: q("0 m") })).code).toBe("NOT_VALID_HERE");
  });

  it("gives the same numbers by every door", () => {
    fc.assert(
      fc.property(numbersIn({ min: 0, max: 1e5 }), numbersIn({ min: -100, max: 100 }), (mass, speed) => {
        const inputs = { mass: quantity(mass, "kg"), speed: quantity(speed, "m/s") };
        const working: Working = [];
        const value = kineticEnergy.of({ mass, speed }, working);
        expect(kineticEnergy.of({ mass, speed })).toBe(value);
        expect(kineticEnergy(inputs).in("J")).toBe(value);
        expect(kineticEnergy.explain(inputs)).toEqual(working[0]);
        expect(working).toHaveLength(1);
        expect(working[0]?.result.value).toBe(value);
      }),
    );
  });
});

describe("step", () => {
  const step = kineticEnergy.explain({ mass: q("1 t"), speed: q("72 km/h") });

  it("holds symbols, values as used, units, meaning and source, and survives JSON", () => {
    expect(step).toEqual({
      name: "kinetic energy",
      expression: "½·m·v²",
      operands: [
        { name: "mass", symbol: "m", meaning: "mass", value: 1000, unit: "kg", printed: "1000" },
        { name: "speed", symbol: "v", meaning: "speed", value: 20, unit: "m/s", printed: "20" },
      ],
      result: { symbol: "E", value: 200_000, unit: "J", printed: "200\u202f000" },
      source: { document: "classical mechanics", status: "definition" },
      validity: "speeds far below that of light",
    });
    expect(JSON.parse(JSON.stringify(step))).toEqual(step);
  });

  it("prints as one line: symbols, values with units, result", () => {
    expect(stepLine(step)).toBe("E = ½·m·v² = ½·1000 kg·(20 m/s)² = 200\u202f000 J");
    const still: Step = { ...step, expression: "7", operands: [], result: { ...step.result, printed: "7", unit: "1" } };
    expect(stepLine(still)).toBe("E = 7 = 7");
  });

  it("gives the printed result to a reader who calculates with the printed operands", () => {
    fc.assert(
      fc.property(numbersIn({ min: 0, max: 1e5 }), numbersIn({ min: -100, max: 100 }), (mass, speed) => {
        const working: Working = [];
        kineticEnergy.of({ mass, speed }, working);
        const [m = Number.NaN, v = Number.NaN] = (working[0]?.operands ?? []).map(({ printed }) =>
          readPrinted(printed),
        );
        expect(Number((0.5 * m * v ** 2).toPrecision(4))).toBe(readPrinted(working[0]?.result.printed ?? ""));
      }),
    );
  });

  it("prints operands with no more digits than the result needs", () => {
    const working: Working = [];
    kineticEnergy.of({ mass: 1234.5678, speed: 1 / 3 }, working);
    for (const { printed } of working[0]?.operands ?? []) expect(printed.replace(/\D/g, "").length).toBeLessThan(8);
  });
});

describe("substitute", () => {
  const operand = (symbol: string, printed: string, unit = "1") => ({
    ...{ name: symbol, symbol, meaning: symbol },
    ...{ value: Number(printed), unit, printed },
  });

  it.each([
    ["m·v", [operand("m", "2", "kg"), operand("v", "3", "m/s")], "2 kg·3 m/s"],
    ["v²", [operand("v", "3", "m/s")], "(3 m/s)²"],
    ["v^2", [operand("v", "3", "m/s")], "(3 m/s)^2"],
    ["c_d·A", [operand("c_d", "0.3"), operand("A", "2", "m²")], "0.3·2 m²"],
    ["C_dA·v", [operand("A", "2"), operand("C_dA", "0.75", "m²"), operand("v", "3")], "0.75 m²·3"],
    ["exp(e)", [operand("e", "2")], "exp(2)"],
    ["min(m, n)", [operand("m", "2"), operand("n", "3")], "min(2, 3)"],
    ["ln(l)", [operand("l", "2")], "ln(2)"],
    ["a − b", [operand("a", "5"), operand("b", "-2")], "5 − (-2)"],
    ["|v|", [operand("v", "-3", "m/s")], "|(-3 m/s)|"],
    ["η′·η", [operand("η", "0.9"), operand("η′", "0.8")], "0.8·0.9"],
    ["x²", [operand("x", "-3")], "(-3)²"],
  ])("%s", (expression, operands, text) => {
    expect(substitute(expression, operands)).toBe(text);
  });

  it("keeps the meaning of a small number that is raised", () => {
    // 1e-7² could be read as 1 × 10 to the power −7².
    expect(substitute("x²", [operand("x", "1e-7")])).toBe("(1e-7)²");
  });
});

describe("sourceLine", () => {
  it("says in one line how well the origin is known", () => {
    expect(sourceLine({ document: "A", section: "table 3", status: "seen" })).toBe("A, table 3");
    expect(sourceLine({ document: "A", status: "memory" })).toBe("A (from memory, not checked)");
    expect(sourceLine({ document: "A", status: "quoted" })).toBe("A (seen quoted)");
  });
});
