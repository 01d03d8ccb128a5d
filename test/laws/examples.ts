import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { isDeepStrictEqual } from "node:util";
import { type AnyQuantity, isQuantity, type Quantity } from "@tarewatt/units";
import ts from "typescript";
import { packages } from "../packages.js";

/** One `@example` of the documentation in the sources. */
export interface Example {
  readonly directory: string;
  /** File and line, for messages. */
  readonly place: string;
  readonly code: string;
}

/** A doc comment, and what follows it. */
const DOC = /\/\*\*((?:(?!\*\/)[\s\S])*)\*\//g;
const EXAMPLE = /^@example[^\n]*\n([\s\S]*?)(?=^@\w|$(?![\s\S]))/gm;

/** The packages with exports of their own: the one import of them all has none. */
const documented = packages.filter(({ directory }) => directory !== "tarewatt");

/** Every example of every package, in order. */
export const examples: readonly Example[] = documented.flatMap(({ directory, source }) =>
  readdirSync(source, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .sort()
    .flatMap((name) => examplesOf(directory, name, readFileSync(new URL(name, source), "utf8"))),
);

/** The examples of one source text. */
export function examplesOf(directory: string, file: string, text: string): Example[] {
  return [...text.matchAll(DOC)].flatMap((doc) => {
    const plain = (doc[1] ?? "").trimStart().replace(/^[ \t]*\* ?/gm, "");
    return [...plain.matchAll(EXAMPLE)].map((found) => {
      const before = text.slice(0, doc.index + 3 + (doc[1]?.search(/\S/) ?? 0));
      const line = before.split("\n").length + plain.slice(0, found.index).split("\n").length - 1;
      const code = (found[1] ?? "").replace(/^```\w*$/gm, "").trim();
      return { directory, place: `${directory}/src/${file}:${line}`, code };
    });
  });
}

/** Names that the index of a package exports, types included, and whether something is a type only. */
export const exportedNames: ReadonlyMap<string, ReadonlySet<string>> = new Map(
  documented.map(({ directory, source }) => {
    const index = fileURLToPath(new URL("index.ts", source));
    const file = ts.createSourceFile(index, readFileSync(index, "utf8"), ts.ScriptTarget.Latest);
    const names = file.statements.flatMap((statement) =>
      ts.isExportDeclaration(statement) && statement.exportClause && ts.isNamedExports(statement.exportClause)
        ? statement.exportClause.elements.map(({ name }) => name.text)
        : [],
    );
    return [directory, new Set(names)];
  }),
);

/**
 * An example as a module: what it uses of the packages is imported, and each value that a comment on its line states goes to
 * `check` with that comment. The function `run` holds the example.
 */
export function moduleOf({ directory, code }: Example): string {
  const file = ts.createSourceFile("example.ts", code, ts.ScriptTarget.Latest, true);
  const used = new Set(code.match(/[\p{L}_$][\p{L}\p{N}_$]*/gu));
  const declared = new Set<string>();
  const edits: { readonly start: number; readonly end: number; readonly text: string }[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isVariableDeclaration(node) && ts.isIdentifier(node.name)) declared.add(node.name.text);
    if (ts.isImportDeclaration(node)) edits.push({ start: node.getStart(), end: node.end, text: "" });
    if (ts.isExpressionStatement(node)) {
      const comment = /^[ \t]*\/\/[ \t]*(.*)/.exec(code.slice(node.end))?.[1];
      const { expression } = node;
      if (comment !== undefined) {
        const text = `check(${expression.getText()}, ${JSON.stringify(comment.trim())});`;
        edits.push({ start: node.getStart(), end: node.end, text });
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  const body = edits
    .sort((a, b) => b.start - a.start)
    .reduce((text, { start, end, text: replacement }) => text.slice(0, start) + replacement + text.slice(end), code);
  // Its own package first: two packages may export one name.
  const from = [directory, ...[...exportedNames.keys()].filter((each) => each !== directory)];
  const imports = from.map((each) => {
    const names = [...(exportedNames.get(each) ?? [])].filter((name) => used.has(name) && !declared.has(name));
    for (const name of names) declared.add(name);
    return names.length === 0 ? "" : `import { ${names.join(", ")} } from "@tarewatt/${each}";\n`;
  });
  const parameters = "check: (value: unknown, comment: string) => void";
  return `${imports.join("")}export async function run(${parameters}): Promise<void> {\n${body}\n}\nvoid run;\n`;
}

/** Runs an example, and tells what each commented value was. */
export async function runExample(
  example: Example,
  modules: Readonly<Record<string, object>>,
): Promise<readonly { readonly value: unknown; readonly comment: string }[]> {
  const { outputText } = ts.transpileModule(moduleOf(example), {
    compilerOptions: { module: ts.ModuleKind.CommonJS, target: ts.ScriptTarget.ES2022 },
  });
  const exported: { run?: (check: (value: unknown, comment: string) => void) => Promise<void> } = {};
  const find = (name: string): unknown => modules[name.replace("@tarewatt/", "")];
  new Function("require", "exports", outputText)(find, exported);
  const values: { value: unknown; comment: string }[] = [];
  await exported.run?.((value, comment) => values.push({ value, comment }));
  return values;
}

/** Whether a value is what the comment says; undefined when the comment is prose, and no value. */
export function agrees(value: unknown, comment: string): boolean | undefined {
  const number = /^[-−]?\d[\d\u202f]*(?:\.\d+)?(?:e[-+]?\d+)?/.exec(comment)?.[0];
  if (number !== undefined && typeof value === "number") {
    const lastDigit = 10 ** -(number.split(".")[1]?.length ?? 0);
    const difference = Math.abs(value - read(number));
    // 2709.76... is cut off or rounded, 44.704 is rounded, 150 is exact
    if (/^(\.\.\.|…)$/.test(comment.slice(number.length))) return difference <= lastDigit;
    if (comment !== number) return undefined;
    return difference <= (number.includes(".") ? 0.5000001 * lastDigit : 1e-12 * Math.abs(value));
  }
  if (number !== undefined && isQuantity(value)) return printsAs(value, number, comment.slice(number.length).trim());
  const stated = literal(comment);
  return stated === undefined ? undefined : isDeepStrictEqual(plainOf(value), stated.value);
}

function read(number: string): number {
  return Number(number.replace("−", "-").replaceAll("\u202f", ""));
}

/** Whether a quantity rounds to the digits that are printed, in the unit that is printed. */
function printsAs(value: AnyQuantity, number: string, unit: string): boolean | undefined {
  const decimals = number.split(".")[1]?.length ?? 0;
  try {
    const inUnit = (value as unknown as Quantity<{ key: string; kind: string }>).in<string>(unit === "" ? "1" : unit);
    return Math.abs(inUnit - read(number)) <= 0.5000001 * 10 ** -decimals;
  } catch {
    return undefined;
  }
}

/** A text, a truth value, an array or an object of plain values, as a comment writes it. */
function literal(comment: string): { readonly value: unknown } | undefined {
  if (!/^(["'[{]|true$|false$|null$|undefined$)/.test(comment)) return undefined;
  try {
    return { value: new Function(`"use strict"; return (${comment});`)() };
  } catch {
    return undefined;
  }
}

function plainOf(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plainOf);
  if (typeof value !== "object" || value === null || isQuantity(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, plainOf(part)]));
}
