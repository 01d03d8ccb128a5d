import * as estimate from "@tarewatt/estimate";
import * as pack from "@tarewatt/pack";
import * as report from "@tarewatt/report";
import * as roadload from "@tarewatt/roadload";
import * as units from "@tarewatt/units";
import { type Operand, type Relation, type RelationInput, stepLine, substitute, type Working } from "@tarewatt/units";
import fc from "fast-check";
import * as mathjs from "mathjs";
import { describe, expect, it } from "vitest";
import { readPrinted } from "../support/read-printed.js";

/**
 * Every relation says its formula twice: as an expression for people, and as code. Here the expression is read by mathjs, a
 * general expression parser that shares nothing with this library, and must give what the code gives.
 */

type AnyRelation = Relation<Record<string, unknown>, unknown>;

const isRelation = (thing: unknown): thing is AnyRelation =>
  typeof thing === "function" && "expression" in thing && "explain" in thing;

/** Relations among the exports of a package, also those that stand in an exported record. */
function relationsOf(exports: object): [name: string, relation: AnyRelation][] {
  return Object.entries(exports).flatMap(([name, thing]): [string, AnyRelation][] => {
    if (isRelation(thing)) return [[name, thing]];
    if (typeof thing !== "object" || thing === null || Array.isArray(thing)) return [];
    return Object.entries(thing).flatMap(([inner, value]): [string, AnyRelation][] =>
      isRelation(value) ? [[`${name}.${inner}`, value]] : [],
    );
  });
}

const packages = { units, roadload, pack, estimate, report };
const relations = Object.entries(packages).flatMap(([directory, exports]) =>
  relationsOf(exports).map(([name, relation]) => ({ name: `${directory}: ${name}`, relation })),
);

/** What a quantity in this unit is about; a unit that is not listed is drawn around one. */
const usual: Readonly<Record<string, readonly [min: number, max: number]>> = {
  "1": [0, 2],
  "°C": [-30, 45],
  K: [240, 320],
  ΔK: [-40, 40],
  Pa: [70_000, 105_000],
  kPa: [70, 300],
  kg: [100, 4000],
  m: [0.1, 3000],
  s: [1, 5000],
  "m/s": [-50, 50],
  "km/h": [-150, 150],
  N: [-8000, 8000],
  J: [1e5, 4e8],
  kWh: [5, 200],
  W: [-3e5, 3e5],
  kW: [-300, 300],
  "kg/m³": [0.8, 1.4],
  rad: [-1.5, 1.5],
  V: [2, 900],
};

/** Numbers within the bounds that the relation declares, else within what is usual. */
function numbersFor({ unit, atLeast, above, atMost }: RelationInput): fc.Arbitrary<number> {
  const [min, max] = usual[unit] ?? [-100, 100];
  const lowest = atLeast ?? above ?? Math.min(min, atMost ?? min);
  const highest = atMost ?? Math.max(max, lowest + Math.max(1, Math.abs(lowest)));
  // A grid, ends included: what somebody might enter, rather than two numbers that differ in the fifteenth digit.
  return fc
    .integer({ min: 0, max: GRID })
    .map((step) => lowest + ((highest - lowest) * step) / GRID)
    .filter((value) => (above === undefined || value > above) && (atLeast === undefined || value >= atLeast));
}

const GRID = 10_007;

/** The expression as mathjs reads it. Operands are inserted already, each in parentheses or a plain number. */
function translated(text: string): string {
  return text
    .replaceAll("·", "*")
    .replaceAll("×", "*")
    .replaceAll("−", "-")
    .replaceAll("½", "(1/2)")
    .replaceAll("¼", "(1/4)")
    .replaceAll("⅓", "(1/3)")
    .replaceAll("⅔", "(2/3)")
    .replaceAll("⅛", "(1/8)")
    .replaceAll(/⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+/g, (raised) => `^(${fromSuperscript(raised)})`)
    .replaceAll("√", "sqrt")
    .replaceAll(/\bln\b/g, "log")
    .replaceAll(/\|([^|]*)\|/g, "abs($1)")
    .replaceAll("π", "pi");
}

function fromSuperscript(text: string): string {
  return [...text].map((c) => (c === "⁻" ? "-" : "⁰¹²³⁴⁵⁶⁷⁸⁹".indexOf(c))).join("");
}

function operandsOf(relation: AnyRelation, numbers: Readonly<Record<string, number>>, text = String): Operand[] {
  return Object.entries(relation.inputs as Record<string, RelationInput>).map(([name, { symbol, meaning }]) => ({
    ...{ name, symbol, meaning, unit: "1" },
    value: numbers[name] ?? Number.NaN,
    printed: `(${text(numbers[name] ?? Number.NaN)})`,
  }));
}

function evaluated(expression: string, operands: readonly Operand[]): number {
  const text = translated(substitute(expression, operands));
  const value: unknown = mathjs.evaluate(text);
  if (typeof value !== "number") throw new Error(`'${text}' is no number: ${value}`);
  return value;
}

/** Draws inputs until enough of them have a finite result, and checks each. */
function forInputs(relation: AnyRelation, check: (numbers: Record<string, number>, value: number) => void): void {
  const inputs = relation.inputs as Record<string, RelationInput>;
  const drawn = fc.record(Object.fromEntries(Object.entries(inputs).map(([name, rule]) => [name, numbersFor(rule)])));
  let finite = 0;
  fc.assert(
    fc.property(drawn, (numbers) => {
      const value = relation.of(numbers as never);
      if (!Number.isFinite(value)) return;
      finite++;
      check(numbers, value);
    }),
    { numRuns: 200 },
  );
  expect(finite, "inputs within the declared bounds that have a finite result").toBeGreaterThanOrEqual(40);
}

describe("the reader of expressions", () => {
  it.each([
    ["½·a²", 4.5],
    ["a·|−b|", 6],
    ["√(a + b + 4)", 3],
    ["ln(exp(a))", 3],
    ["a⁻¹ + b", 2 + 1 / 3],
    ["−a²", -9],
    ["a/b·b", 3],
    ["min(a, b)^2 − max(a, b)", 1],
    ["π/4·b²", Math.PI],
  ])("reads %s", (expression, wanted) => {
    const operands = Object.entries({ a: 3, b: 2 }).map(([symbol, value]) => ({
      ...{ name: symbol, symbol, meaning: "", unit: "1" },
      ...{ value, printed: `(${value})` },
    }));
    expect(evaluated(expression, operands)).toBeCloseTo(wanted, 14);
  });

  it("sees a formula that its code does not compute", () => {
    const wrong = units.relation<{ readonly mass: units.Quantity<units.Mass> }, number>({
      name: "wrong",
      inputs: { mass: { symbol: "m", unit: "kg", meaning: "mass", above: 0 } },
      result: { symbol: "y", unit: "1" },
      expression: "2·m",
      source: { document: "none", status: "definition" },
      evaluate: ({ mass }) => 2.001 * mass,
    }) as unknown as AnyRelation;
    expect(() => agrees(wrong)).toThrow();
  });
});

/** By how much the result moves when the inputs change by some 1e-12, either way: large where terms cancel or a step is near. */
function sensitivity(relation: AnyRelation, numbers: Readonly<Record<string, number>>, value: number): number {
  const moved = [1e-12, -1e-12].map((size) => {
    const nudged = Object.entries(numbers).map(([name, x], i) => [name, x * (1 + (i + 1) * size)] as const);
    return Math.abs(relation.of(Object.fromEntries(nudged) as never) - value);
  });
  return Math.max(0, ...moved.filter(Number.isFinite));
}

function agrees(relation: AnyRelation): void {
  forInputs(relation, (numbers, value) => {
    const theirs = evaluated(relation.expression, operandsOf(relation, numbers));
    // Where terms cancel, a result is only as good as its terms.
    const allowed = 1e-10 * Math.abs(value) + 10 * sensitivity(relation, numbers, value) + Number.MIN_VALUE;
    expect(Math.abs(theirs - value), `expression ${theirs}, code ${value}: the difference`).toBeLessThanOrEqual(
      allowed,
    );
  });
}

describe("every relation", () => {
  it("is found: each of the computing packages exports some", () => {
    for (const directory of ["roadload", "pack"]) {
      expect(
        relations.some(({ name }) => name.startsWith(directory)),
        directory,
      ).toBe(true);
    }
  });

  describe.each(relations)("$name", ({ relation }) => {
    it("computes its expression", () => agrees(relation));

    it("gives its printed result to a pocket calculator fed with the printed operands", () => {
      forInputs(relation, (numbers, value) => {
        // Where nearly all digits cancel, no operands of fifteen digits give four digits of a result.
        if (sensitivity(relation, numbers, value) > 1e-7 * Math.abs(value)) return;
        const working: Working = [];
        relation.of(numbers as never, working);
        const [step] = working;
        if (step === undefined) throw new Error("no step was recorded");
        const bare = step.operands.map((operand) => ({
          ...operand,
          unit: "1",
          printed: `(${readPrinted(operand.printed)})`,
        }));
        const calculated = evaluated(step.expression, bare);
        const printed = readPrinted(step.result.printed);
        // The fourth digit is the last that is printed: half a unit of it, and a trifle for ties.
        const unitOfLastDigit = 10 ** (Math.floor(Math.log10(Math.abs(printed) || 1)) - 3);
        expect(Math.abs(calculated - printed), stepLine(step)).toBeLessThanOrEqual(0.500001 * unitOfLastDigit);
      });
    });

    it("uses every input in its expression, and says what each is", () => {
      const inputs = Object.values(relation.inputs as Record<string, RelationInput>);
      for (const { symbol, meaning, unit } of inputs) {
        expect(`${symbol}: ${meaning}`).toMatch(/^\S.*: \S/);
        expect(() => units.quantity<string>(1, unit)).not.toThrow();
        const marked = substitute(relation.expression, [
          { ...{ name: "x", symbol, meaning, value: 1, unit: "1" }, printed: "\u0000" },
        ]);
        expect(marked.includes("\u0000"), `${symbol} in ${relation.expression}`).toBe(true);
      }
      expect(new Set(inputs.map(({ symbol }) => symbol)).size, "symbols are distinct").toBe(inputs.length);
      expect(relation.source.document).not.toBe("");
    });
  });
});
