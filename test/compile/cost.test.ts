import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { unitsSource } from "./language-service.js";
import { typicalFile } from "./typical.js";

/**
 * What typical expressions cost the compiler, in type instantiations: the number behind slow editors. It does not depend on the
 * machine, only on the version of TypeScript, and each version that the library is held to has ceilings of its own: for the package
 * alone (0 expressions), and for files of 200 and 2,000 expressions beyond that. All three versions print the number with
 * `--extendedDiagnostics`. A ceiling is the measured number and a twentieth; a change that needs a higher one says why in its
 * commit.
 */
const compilers = [
  { name: "tsc5", version: "5.9", ceilings: { 0: 83_200, 200: 36_700, 2000: 228_800 } },
  { name: "typescript", version: "6.0", ceilings: { 0: 83_200, 200: 36_700, 2000: 228_800 } },
  { name: "tsc7", version: "7.0", ceilings: { 0: 116_600, 200: 38_000, 2000: 230_200 } },
] as const;

describe.each(compilers)("compile-time cost under TypeScript $version", ({ name, version, ceilings }) => {
  const tsc = createRequire(import.meta.url)
    .resolve(`${name}/package.json`)
    .replace("package.json", "bin/tsc");
  let folder = "";
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "tarewatt-compile-"));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  const run = (...parameters: string[]): { readonly stdout: string; readonly status: number | null } =>
    spawnSync(process.execPath, [tsc, ...parameters], { encoding: "utf8" });

  /** Type instantiations of a program that holds so many expressions, all of which must compile. */
  function instantiations(count: number): number {
    const file = join(folder, `${count}.ts`);
    writeFileSync(file, typicalFile(count));
    const options = {
      ...{ target: "ES2022", lib: ["ES2023"], types: [], module: "ESNext", moduleResolution: "Bundler" },
      ...{ strict: true, noUncheckedIndexedAccess: true, exactOptionalPropertyTypes: true, skipLibCheck: true },
      ...{ noEmit: true, extendedDiagnostics: true, paths: { "@tarewatt/units": [unitsSource] } },
    };
    const project = join(folder, `${count}.json`);
    writeFileSync(project, JSON.stringify({ compilerOptions: options, files: [file] }));
    const { stdout, status } = run("--project", project);
    expect(status, stdout).toBe(0);
    return Number(/^Instantiations:\s+(\d+)/m.exec(stdout)?.[1] ?? Number.NaN);
  }

  it("is measured with that version", () => {
    expect(run("--version").stdout).toContain(`Version ${version}.`);
  });

  it("of the package, and of 200 and 2,000 expressions, stays below its ceilings", { timeout: 120_000 }, () => {
    const alone = instantiations(0);
    const measured = { 0: alone, 200: instantiations(200) - alone, 2000: instantiations(2000) - alone };
    for (const count of [0, 200, 2000] as const) {
      expect(measured[count], `${count} expressions`).toBeGreaterThan(ceilings[count] / 2);
      expect(measured[count], `${count} expressions`).toBeLessThanOrEqual(ceilings[count]);
    }
  });
});
