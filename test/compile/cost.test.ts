import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

/**
 * What two hundred typical expressions cost the compiler, in type instantiations: the number behind slow editors. It does not
 * depend on the machine, only on the version of TypeScript. A ceiling is the measured number and a tenth; a change that needs
 * a higher one says why in its commit.
 */
const ceilings: Readonly<Record<string, number>> = {
  "6.0": 47_500,
};

const tsc = createRequire(import.meta.url).resolve("typescript/bin/tsc");
const source = fileURLToPath(new URL("../../packages/units/src/index.ts", import.meta.url));

/** Twenty expressions of the trade; each is written ten times, with other numbers and partly other units. */
const typical: readonly ((i: number) => string)[] = [
  (i) => `q("${i + 2000} kg")`,
  (i) => `q("${i + 4000} lb").in("kg")`,
  (i) => `q("15.${i} kWh/100 km").in("Wh/mi")`,
  (i) => `q("24${i} Wh/mi").inverse().in("mi/kWh")`,
  (i) => `q("25${i} Wh/kg").times(q("40${i} kg")).in("kWh")`,
  (i) => `q("9${i} kWh").per(q("50${i} kg")).to("Wh/kg")`,
  (i) => `q("0.2${i}").times(q("2.${i} m²"))`,
  (i) => `q("1.1${i} kg/m³").times(q("0.7${i} m²")).times(q("3${i} m/s")).times(q("3${i} m/s")).times(0.5).to("N")`,
  (i) => `q("45${i} N").times(q("11${i} km/h")).in("kW")`,
  (i) => `q("34.${i} lbf").plus(q("0.2${i} lbf/mph").times(q("6${i} mph")))`,
  (i) => `q("0.02${i} lbf/mph²").in("N/(m/s)²")`,
  (i) => `q("2${i} °C").minus(q("1${i} °F")).in("ΔK")`,
  (i) => `q("6${i} W/K").times(q("Δ1${i} K")).plus(q("35${i} W"))`,
  (i) => `q("3.6${i} V").times(q("14${i} A h")).to("Wh")`,
  (i) => `q("25${i} kW").per(q("35${i} V")).in("A")`,
  (i) => `q("0.8${i} mΩ").times(q("28${i} A")).times(q("28${i} A")).in("W")`,
  (i) => `q("50${i} N·m").times(q("90${i} rpm")).in("hp")`,
  (i) => `quantity(${i}, "MJ/kg").ratioTo(quantity(${i + 1}, "kWh/kg"))`,
  (i) => `q("11${i} MPGe").inverse().in("kWh/100 mi")`,
  (i) => `q("9${i}0 J/(kg·K)").times(q("40${i} kg")).in("kJ/K")`,
];

describe("compile-time cost", () => {
  let folder = "";
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "tarewatt-compile-"));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  /** Type instantiations of a program that holds these expressions, all of which must compile. */
  function instantiations(name: string, expressions: readonly string[]): number {
    const file = join(folder, `${name}.ts`);
    const lines = expressions.map((expression, i) => `export const x${i} = ${expression};`);
    writeFileSync(file, `import { q, quantity } from "@tarewatt/units";\nvoid [q, quantity];\n${lines.join("\n")}\n`);
    const options = {
      ...{ target: "ES2022", lib: ["ES2023"], types: [], module: "ESNext", moduleResolution: "Bundler" },
      ...{ strict: true, noUncheckedIndexedAccess: true, exactOptionalPropertyTypes: true, skipLibCheck: true },
      ...{ noEmit: true, extendedDiagnostics: true, paths: { "@tarewatt/units": [source] } },
    };
    const project = join(folder, `${name}.json`);
    writeFileSync(project, JSON.stringify({ compilerOptions: options, files: [file] }));
    const { stdout, status } = spawnSync(process.execPath, [tsc, "--project", project], { encoding: "utf8" });
    expect(status, stdout).toBe(0);
    return Number(/^Instantiations:\s+(\d+)/m.exec(stdout)?.[1] ?? Number.NaN);
  }

  it("of 200 expressions stays below the ceiling of this version of TypeScript", { timeout: 120_000 }, () => {
    const version = ts.version.split(".").slice(0, 2).join(".");
    const ceiling = ceilings[version];
    expect(ceiling, `no ceiling is known for TypeScript ${version}: measure it and add a tenth`).toBeDefined();
    const expressions = typical.flatMap((write) => Array.from({ length: 10 }, (_, i) => write(i)));
    expect(new Set(expressions)).toHaveLength(200);
    const cost = instantiations("typical", expressions) - instantiations("empty", []);
    expect(cost).toBeGreaterThan(1000);
    expect(cost).toBeLessThanOrEqual(ceiling ?? 0);
  });
});
