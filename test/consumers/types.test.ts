import { existsSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

/**
 * A program may take the package as an ES module in one file and as a CommonJS module in another, its own or a dependency's. Then
 * the compiler reads two declarations, and what one gives must be what the other takes.
 */
const root = fileURLToPath(new URL("../../", import.meta.url));
const built = ["index.d.ts", "index.d.cts"].every((name) => existsSync(join(root, "packages/units/dist", name)));

const imports = `
import { q, relation, type Mass, type Energy, type Quantity, type Relation, type AnyQuantity, type Source } from "@tarewatt/units";
import type * as required from "@tarewatt/units" with { "resolution-mode": "require" };
`;

/** Programs that must compile, by what they show. */
const programs: Readonly<Record<string, string>> = {
  "a quantity passes from the ES module to the CommonJS module":
    "export const mass: required.Quantity<required.Mass> = q('5 kg');",
  "a quantity passes from the CommonJS module to the ES module":
    "export const back = (mass: required.Quantity<required.Mass>): Quantity<Mass> => mass;",
  "both mix in arithmetic, and the result has its name": `
export const energy = (specific: required.Quantity<required.SpecificEnergy>, mass: Quantity<Mass>): Quantity<Energy> =>
  specific.times(mass).plus(q("3 kWh"));`,
  "a list of any quantities takes both": `
export const all = (mass: required.Quantity<required.Mass>): readonly AnyQuantity[] => [mass, q("5 J")];`,
  "a relation passes between them": `
export const pass = (
  mine: Relation<{ readonly mass: Quantity<Mass> }, Quantity<Energy>>,
): required.Relation<{ readonly mass: required.Quantity<required.Mass> }, required.Quantity<required.Energy>> => mine;
export const declare = relation;`,
  "an error and a source pass between them": `
export const source = (mine: Source): required.Source => mine;
export const error = (theirs: required.QuantityError): import("@tarewatt/units").QuantityError => theirs;`,
  "a mass is still no energy": `
// @ts-expect-error another dimension, in the other copy
export const wrong: required.Quantity<required.Energy> = q("5 kg");`,
};

const reason = built ? "" : " (skipped: packages/units is not built, run the build first)";

describe.skipIf(!built)(`types of the two builds${reason}`, () => {
  let folder = "";
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "tarewatt-types-"));
    symlinkSync(join(root, "node_modules"), join(folder, "node_modules"), "junction");
  });
  afterAll(() => rmSync(folder, { recursive: true }));
  function complaints(module: ts.ModuleKind): string[] {
    const files = Object.entries(programs).map(([title, text], i) => {
      const file = join(folder, `${i}.mts`);
      writeFileSync(file, `// ${title}\n${imports}\n${text}\n`);
      return file;
    });
    const options: ts.CompilerOptions = {
      ...{ module, target: ts.ScriptTarget.ES2022, lib: ["lib.es2023.d.ts"], types: [], noEmit: true },
      // The declarations themselves are checked, too.
      ...{ strict: true, exactOptionalPropertyTypes: true, skipLibCheck: false, preserveSymlinks: false },
    };
    const program = ts.createProgram(files, options);
    // Both builds were found: otherwise everything would be `any`, and everything would pass.
    const read = program.getSourceFiles().map(({ fileName }) => fileName.replaceAll("\\", "/"));
    for (const name of ["index.d.ts", "index.d.cts"]) {
      expect(
        read.some((file) => file.endsWith(`units/dist/${name}`)),
        `${name} was read`,
      ).toBe(true);
    }
    return ts.getPreEmitDiagnostics(program).map(({ file, messageText }) => {
      const title = file?.text.split("\n", 1)[0] ?? "";
      return `${title}: ${ts.flattenDiagnosticMessageText(messageText, "\n")}`;
    });
  }

  it("pass to each other, under the rules of Node 16 and of the newest Node", { timeout: 120_000 }, () => {
    expect(complaints(ts.ModuleKind.Node16)).toEqual([]);
    expect(complaints(ts.ModuleKind.NodeNext)).toEqual([]);
  });
});
