import { readdirSync, readFileSync } from "node:fs";
import { isBuiltin } from "node:module";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { packages } from "./packages.js";

/** The only arrows allowed between packages, in imports and in package.json. */
const arrows: Readonly<Record<string, readonly string[]>> = {
  units: [],
  roadload: ["units"],
  pack: ["units"],
  estimate: ["units", "roadload", "pack"],
  report: ["units", "roadload", "pack", "estimate"],
  tarewatt: ["units", "roadload", "pack", "estimate", "report"],
};

/** Its purpose is `export * as pack from "@tarewatt/pack"`. */
const UMBRELLA = "tarewatt";

/** These three stand alone: nothing from outside the workspace at run time. */
const withoutOutsiders: readonly string[] = ["units", "roadload", "pack"];

interface Reading {
  /** Module names of imports, re-exports, dynamic imports and import types. */
  readonly modules: readonly string[];
  /** Number of `export * from "..."` and `export * as name from "..."`. */
  readonly wildcards: number;
}

function read(text: string): Reading {
  const modules: string[] = [];
  let wildcards = 0;
  const note = (node: ts.Node | undefined) => {
    if (node !== undefined && ts.isStringLiteralLike(node)) modules.push(node.text);
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) note(node.moduleSpecifier);
    else if (ts.isExportDeclaration(node)) {
      note(node.moduleSpecifier);
      if (node.exportClause === undefined || ts.isNamespaceExport(node.exportClause)) wildcards += 1;
    } else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) note(node.argument.literal);
    else if (ts.isExternalModuleReference(node)) note(node.expression);
    else if (ts.isCallExpression(node)) {
      const called = node.expression;
      const isRequire = ts.isIdentifier(called) && called.text === "require";
      if (isRequire || called.kind === ts.SyntaxKind.ImportKeyword) note(node.arguments[0]);
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile("file.ts", text, ts.ScriptTarget.Latest));
  return { modules, wildcards };
}

interface Place {
  readonly directory: string;
  /** Path of the file below src, with "/" between its parts. */
  readonly file: string;
  /** Names that the package.json of this package lists. */
  readonly declared: readonly string[];
}

/** What is wrong with one import, or undefined. */
function importFault({ directory, file, declared }: Place, name: string): string | undefined {
  if (isBuiltin(name)) return "comes from Node: the library must run anywhere";
  if (name.startsWith(".")) {
    const climbs = name.split("/").filter((part) => part === "..").length;
    const depth = file.split("/").length - 1;
    return climbs > depth ? "lies outside the src of its package" : undefined;
  }
  if (name.startsWith("@tarewatt/")) {
    const [, sibling = "", inner] = name.split("/");
    const allowed = arrows[directory] ?? [];
    if (!allowed.includes(sibling)) return `is no arrow: ${directory} may import ${allowed.join(", ") || "no sibling"}`;
    if (!declared.includes(`@tarewatt/${sibling}`)) return "is not listed in package.json";
    return inner === "src" || inner === "dist" ? "is the inside of a package: import the package" : undefined;
  }
  return withoutOutsiders.includes(directory) ? "is outside the workspace" : undefined;
}

/** What is wrong with one source file of a package; empty when nothing is. */
function faults(place: Place, text: string): string[] {
  const { modules, wildcards } = read(text);
  const found = modules.flatMap((name) => {
    const fault = importFault(place, name);
    return fault === undefined ? [] : [`${place.file}: "${name}" ${fault}`];
  });
  const isUmbrella = place.directory === UMBRELLA && !/export \* from/.test(text);
  return wildcards > 0 && !isUmbrella
    ? [...found, `${place.file}: "export *" hides what is exported; name each export`]
    : found;
}

describe("the scanner itself sees", () => {
  const place: Place = { directory: "pack", file: "cell/size.ts", declared: ["@tarewatt/units"] };
  test.each([
    ["an arrow that is not allowed", `import { roadLoad } from "@tarewatt/roadload";`],
    ["the same in a type", `type A = import("@tarewatt/roadload").A;`],
    ["the same in a re-export", `export { a } from "@tarewatt/estimate";`],
    ["the same in a dynamic import", `const a = await import("@tarewatt/estimate");`],
    ["a Node built-in", `import { readFileSync } from "node:fs";`],
    ["a Node built-in without its prefix", `import type { Stats } from "fs";`],
    ["a wildcard export", `export * from "./other.js";`],
    ["a wildcard export under a name", `export * as other from "./other.js";`],
    ["a way around through the file tree", `import { a } from "../../../units/src/index.js";`],
    ["a way into a sibling's inside", `import { a } from "@tarewatt/units/src/index.js";`],
    ["an outside package", `import { a } from "mathjs";`],
  ])("%s", (_title, text) => {
    expect(faults(place, text)).toHaveLength(1);
  });

  test("nothing wrong with imports that are allowed", () => {
    const text = `import { q } from "@tarewatt/units"; import { a } from "./a.js"; export { b } from "../other/b.js";`;
    expect(read(text).modules).toEqual(["@tarewatt/units", "./a.js", "../other/b.js"]);
    expect(faults(place, text)).toEqual([]);
  });

  test("nothing wrong with namespaces in the package that is made of them, and a wildcard there, too", () => {
    const umbrella = { directory: UMBRELLA, file: "index.ts", declared: ["@tarewatt/units"] };
    expect(faults(umbrella, `export * as units from "@tarewatt/units";`)).toEqual([]);
    expect(faults(umbrella, `export * from "@tarewatt/units";`)).toHaveLength(1);
  });

  test("an import that package.json does not list", () => {
    expect(faults({ ...place, declared: [] }, `import { q } from "@tarewatt/units";`)).toHaveLength(1);
  });
});

describe.each(packages)("$directory", ({ directory, source, manifest }) => {
  const { dependencies = {}, peerDependencies = {} } = manifest;
  const declared = Object.keys({ ...dependencies, ...peerDependencies });

  test("is a package of the design", () => {
    expect(Object.keys(arrows)).toContain(directory);
    expect(manifest.name).toBe(directory === UMBRELLA ? UMBRELLA : `@tarewatt/${directory}`);
  });

  test("declares only the allowed arrows", () => {
    const allowed = (arrows[directory] ?? []).map((name) => `@tarewatt/${name}`);
    const mayLookOutside = !withoutOutsiders.includes(directory);
    const wrong = declared.filter(
      (name) => !(allowed.includes(name) || (mayLookOutside && !name.startsWith("@tarewatt/"))),
    );
    expect(wrong).toEqual([]);
  });

  test("imports only along the arrows, nothing of Node, and exports by name", () => {
    const files = readdirSync(source, { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".ts"))
      .map((name) => name.replaceAll("\\", "/"));
    expect(files).toContain("index.ts");
    const textOf = (file: string) => readFileSync(new URL(file, source), "utf8");
    expect(files.flatMap((file) => faults({ directory, file, declared }, textOf(file)))).toEqual([]);
  });
});
