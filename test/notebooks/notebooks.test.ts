import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import ts from "typescript";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { notBuilt } from "../consumers/packed.js";
import { demanded, noNotebooks, python } from "../support/outside-programs.js";

/**
 * The notebooks are executed in a real kernel, of the version in docs/notebooks/kernels, and their outputs compared with the
 * stored ones, all of them and to the last character. `vitest run -u` stores new ones: look at the difference first.
 */

const root = resolve(import.meta.dirname, "../..");
const notebooksFolder = join(root, "docs/notebooks");
const names = readdirSync(notebooksFolder).filter((name) => name.endsWith(".ipynb"));

interface Cell {
  readonly cell_type: string;
  readonly source: string | readonly string[];
  readonly outputs?: readonly { readonly output_type: string; readonly data?: Readonly<Record<string, unknown>> }[];
}

const cellsOf = (name: string): readonly Cell[] => JSON.parse(readFileSync(join(notebooksFolder, name), "utf8")).cells;
const codeOf = (name: string): readonly Cell[] => cellsOf(name).filter(({ cell_type: type }) => type === "code");

describe("the whole check", () => {
  it("has what runs notebooks, so that nothing of these checks is skipped", () => {
    if (demanded) expect(noNotebooks).toBe("");
  });
});

describe("notebooks", () => {
  it("are two, and the first estimate takes ten cells", () => {
    expect(names).toEqual(["claim-check.ipynb", "first-estimate.ipynb"]);
    expect(codeOf("first-estimate.ipynb")).toHaveLength(10);
  });

  it.each(names)("%s stores an output for each cell, and no error", (name) => {
    for (const { outputs = [] } of codeOf(name)) {
      expect(outputs.length).toBeGreaterThan(0);
      expect(outputs.map(({ output_type: type }) => type)).not.toContain("error");
    }
  });

  it.each(names)("%s says that its data are invented", (name) => {
    expect([cellsOf(name)[0]?.source].flat().join("")).toContain("invented");
  });
});

describe.skipIf(notBuilt !== "")(`notebooks with the built packages${notBuilt}`, () => {
  // The kernel runs TypeScript without checking it.
  it.each(names)("%s compiles", { timeout: 60_000 }, (name) => {
    const file = join(root, "out", `${name}.ts`);
    const text = codeOf(name)
      .map(({ source }) => [source].flat().join(""))
      .join(";\n");
    const options: ts.CompilerOptions = {
      ...{ strict: true, exactOptionalPropertyTypes: true, noUncheckedIndexedAccess: true, noEmit: true, types: [] },
      ...{ module: ts.ModuleKind.ESNext, moduleResolution: ts.ModuleResolutionKind.Bundler, skipLibCheck: true },
      ...{ target: ts.ScriptTarget.ES2022, lib: ["lib.es2023.d.ts"] },
    };
    const host = ts.createCompilerHost(options);
    const { getSourceFile, fileExists } = host;
    host.fileExists = (path) => path === file || fileExists.call(host, path);
    host.getSourceFile = (path, target, ...others) =>
      path === file ? ts.createSourceFile(path, text, target) : getSourceFile.call(host, path, target, ...others);
    const complaints = ts.getPreEmitDiagnostics(ts.createProgram([file], options, host));
    expect(complaints.map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, "\n"))).toEqual([]);
  });

  describe.skipIf(noNotebooks !== "")(`in a kernel${noNotebooks}`, () => {
    const folder = mkdtempSync(join(tmpdir(), "tarewatt-notebooks-"));
    beforeAll(() => {
      const program = join(import.meta.dirname, "execute.py");
      const paths = names.map((name) => join(notebooksFolder, name));
      const env = { ...process.env, JUPYTER_PATH: notebooksFolder };
      execFileSync(python, [program, folder, ...paths], { env, encoding: "utf8", stdio: "pipe" });
    }, 300_000);
    afterAll(() => rmSync(folder, { recursive: true }));

    it.each(names)("%s gives the outputs that it stores", async (name) => {
      const executed = readFileSync(join(folder, name), "utf8");
      await expect(executed).toMatchFileSnapshot(join(notebooksFolder, name));
    });
  });
});
