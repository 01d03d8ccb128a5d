import { type QuantityError, q, quantity } from "@tarewatt/units";
import fc from "fast-check";
import ts from "typescript";
import { beforeAll, describe, expect, it } from "vitest";
import { compoundUnits } from "../support/quantities.js";
import { languageServiceOf } from "./language-service.js";

/**
 * Texts that nobody chose, read by the compiler and at run time: what the run time refuses, the compiler refuses, and what both
 * read has one dimension. A text that the two read differently would give a number of one dimension the type of another.
 */
const pieces = [
  "m|kg|s|km|kWh|N|K|°C|h|%|rad|Hz|W|V|1|π|Δ|x|e|E|\u03bcm|Ω|/|/|·|·|*| | |\u00a0|(|(|)|)|^|^2|^-1|^0|^10|-|-2|+",
  "²|³|⁻¹|⁻|⁰|¹|⁹|0|2|3|9|10|100|0.5|.5|5.|007|0x1|1e3|,",
  "°|deg|C|F|deg C|° F|100km|2s²|℃|ºF|Nm|N.m|kW-h|lb-ft|.|gal",
].flatMap((line) => line.split("|"));
const goodNumbers =
  "5|12.5|0|-5|−5|+5|.5|3,500|1 200|1\u202f200|1e3|1e-3|2×10³|2×10⁻³|Δ5|Δ 5|007|0.29|–5|2 × 10^3|2×10^-3|1.5 × 10⁻³|10 075".split(
    "|",
  );
const badNumbers =
  "- 5|--5|5.|1,5|12,34|1 23|1.2.3|1E|2×10||1_000|0x10|1e400|5 1|1 200 1|0,075|0 075|1.200,5|1 200,5|00,075|2×10^|2 ×  10³|––5".split(
    "|",
  );

/** Valid texts with one character left out, doubled, or another put in. */
const damaged = fc
  .tuple(compoundUnits, fc.nat(), fc.constantFrom("", "double", ...pieces))
  .map(([{ text }, at, change]) => {
    const i = at % text.length;
    return text.slice(0, i) + (change === "double" ? text.charAt(i).repeat(2) : change) + text.slice(i + 1);
  });
const jumbled = fc.array(fc.constantFrom(...pieces), { minLength: 1, maxLength: 7 }).map((parts) => parts.join(""));
const units = fc.oneof(
  compoundUnits.map(({ text }) => text),
  damaged,
  jumbled,
);
const numbers = fc.constantFrom(...goodNumbers, ...badNumbers);
const literals = fc.oneof(
  fc.tuple(fc.constantFrom(...goodNumbers), compoundUnits).map(([number, { text }]) => `${number} ${text}`),
  fc.tuple(numbers, fc.constantFrom("", " ", "  "), fc.constantFrom(...pieces)).map((parts) => parts.join("")),
  fc.tuple(numbers, fc.constantFrom("", " "), units).map((parts) => parts.join("")),
);

/** What the run time makes of a text: key and kind, or the code of its refusal. */
function atRunTime(read: () => { readonly dimension: { readonly key: string; readonly kind: string } }): string {
  try {
    const { key, kind } = read().dimension;
    return `${key}|${kind}`;
  } catch (error) {
    return (error as QuantityError).code;
  }
}

interface Reading {
  readonly text: string;
  readonly compiled: string;
  readonly run: string;
}

/** Reads all texts in one program: "⚠ …" where the compiler refuses. */
function compare(texts: readonly string[], check: string, unitText: string, run: (text: string) => string): Reading[] {
  const lines = texts.map((text, i) => {
    const literal = JSON.stringify(text);
    const dimension = `UnitDimension<${unitText.replace("S", literal)}>`;
    return `export type T${i} = [${check}<${literal}>, \`\${${dimension}["key"]}|\${${dimension}["kind"]}\`];`;
  });
  const head = `import type { AnyUnit, QuantityLiteral, UnitDimension, UnitText } from "@tarewatt/units";`;
  const { service, file } = languageServiceOf(
    `${head}\n${lines.join("\n")}\nexport type Used = [AnyUnit<"m">, QuantityLiteral<"1">, UnitText<"1">];\n`,
  );
  const program = service.getProgram();
  const source = program?.getSourceFile(file);
  if (program === undefined || source === undefined) throw new Error("the program could not be made");
  expect(program.getSemanticDiagnostics(source).map(({ messageText }) => messageText)).toEqual([]);
  const checker = program.getTypeChecker();
  return source.statements.filter(ts.isTypeAliasDeclaration).flatMap(({ name, type }) => {
    const text = texts[Number(name.text.slice(1))];
    if (text === undefined) return [];
    const [checked, dimension] = checker.getTypeArguments(checker.getTypeFromTypeNode(type) as ts.TypeReference);
    const given = checked?.isStringLiteral() ? checked.value : "no text";
    const read = dimension?.isStringLiteral() ? dimension.value : "unknown";
    return [{ text, compiled: given === text ? read : given, run: run(text) }];
  });
}

const sample = (texts: fc.Arbitrary<string>): string[] => [
  ...new Set(fc.sample(texts, { numRuns: 1500, seed: Number(fc.readConfigureGlobal()?.seed ?? 1) })),
];
const refused = (code: string): boolean => !code.includes("|");

describe.each([
  ["units", units, "AnyUnit", "S", (text: string) => atRunTime(() => quantity<string>(1, text))],
  ["quantities", literals, "QuantityLiteral", "UnitText<S>", (text: string) => atRunTime(() => q<string>(text))],
] as const)("a thousand texts of %s", (_, arbitrary, check, unitText, run) => {
  let readings: Reading[] = [];
  beforeAll(() => {
    readings = compare(sample(arbitrary), check, unitText, run);
  }, 120_000);

  it("are a thousand, and many of either sort", () => {
    expect(readings.length).toBeGreaterThan(1000);
    expect(readings.filter(({ run }) => refused(run)).length).toBeGreaterThan(300);
    expect(readings.filter(({ run }) => !refused(run)).length).toBeGreaterThan(300);
  });

  it("that the run time refuses are refused by the compiler, with a sentence", () => {
    const passed = readings.filter(({ compiled, run }) => refused(run) && !compiled.startsWith("⚠ "));
    expect(passed).toEqual([]);
  });

  it("that both read have one dimension", () => {
    const differing = readings.filter(
      ({ compiled, run }) => !refused(run) && !compiled.startsWith("⚠ ") && compiled !== run,
    );
    expect(differing).toEqual([]);
  });

  it("that the run time reads are read by the compiler, but for extremes", () => {
    const extremes = [
      /is beyond 9$/,
      /: the number cannot be read/,
      /^⚠ '[^']*(?<![\d.])0[^']*' cannot be read/,
      /^⚠ '[^']*⁰[^']*' cannot be read/,
    ];
    const missed = readings.filter(({ compiled, run }) => !refused(run) && compiled.startsWith("⚠ "));
    expect(missed.filter(({ compiled }) => !extremes.some((extreme) => extreme.test(compiled)))).toEqual([]);
    expect(missed.length).toBeLessThan(readings.length / 20);
  });
});
