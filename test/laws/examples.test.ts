import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import * as estimate from "@tarewatt/estimate";
import * as pack from "@tarewatt/pack";
import * as report from "@tarewatt/report";
import * as roadload from "@tarewatt/roadload";
import * as units from "@tarewatt/units";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { packages } from "../packages.js";
import { agrees, type Example, examples, examplesOf, exportedNames, moduleOf, runExample } from "./examples.js";

/** The examples in the documentation are run as they stand, and give what the comments beside them say. */

const modules = { units, roadload, pack, estimate, report };
const root = fileURLToPath(new URL("../../", import.meta.url));

/** What is wrong with an example: nothing when it runs and says the truth. */
async function faults(example: Example): Promise<string[]> {
  try {
    const values = await runExample(example, modules);
    return values.flatMap(({ value, comment }) =>
      agrees(value, comment) === false ? [`${example.place}: gives ${String(value)}, not ${comment}`] : [],
    );
  } catch (error) {
    return [`${example.place}: ${String(error)}`];
  }
}

describe("the reader of examples", () => {
  const made = (code: string): Example => ({ directory: "units", place: "here", code });

  it("finds code between the tag and the next tag or the end", () => {
    const text =
      "/**\n * Some.\n * @example\n * f(1); // 2\n *   g();\n * @throws never\n */\n/** @example\n * h();\n */";
    expect(examplesOf("p", "a.ts", text).map(({ code }) => code)).toEqual(["f(1); // 2\n  g();", "h();"]);
    expect(examplesOf("p", "a.ts", text)[0]?.place).toBe("p/src/a.ts:3");
  });

  it.each<[string, string]>([
    ["a wrong number", 'q("5 kg").in("g"); // 500'],
    ["a wrong text", 'String(q("5 kg")); // "6 kg"'],
    ["a wrong object", 'q("5 kg").toJSON(); // { value: 6, unit: "kg", kind: "" }'],
    ["a wrong quantity", 'q("5 kg").to("lb"); // 12.0 lb'],
    ["wrong first digits", 'q("5,974 lb").in("kg"); // 2708.9...'],
    ["a wrong value in a block", 'try { q<string>("5"); } finally {\n  isQuantity(5); // true\n}'],
    ["a name that is nowhere", "nowhere(5);"],
    ["an error", 'q<string>("5 kgg");'],
  ])("sees %s", async (_, code) => {
    expect(await faults(made(code))).toHaveLength(1);
  });

  it.each<[string, string]>([
    ["a number", 'q("5 kg").in("g"); // 5000'],
    ["a quantity", 'q("5 kg").to("lb"); // 11.0 lb'],
    ["prose", 'q("5 kg"); // a mass'],
    ["something awaited", 'await Promise.resolve(q("5 kg").in("kg")); // 5'],
  ])("lets %s pass", async (_, code) => {
    expect(await faults(made(code))).toEqual([]);
  });
});

describe.each([...exportedNames.keys()])("examples of %s", (directory) => {
  const own = examples.filter((example) => example.directory === directory);

  it("run, and give what they say", { timeout: 60_000 }, async () => {
    const found = (await Promise.all(own.map(faults))).flat();
    expect(found).toEqual([]);
  });

  it("state plain values, so that each is compared", { timeout: 60_000 }, async () => {
    const prose = await Promise.all(
      own.map(async (example) =>
        (await runExample(example, modules))
          .filter(({ value, comment }) => agrees(value, comment) === undefined)
          .map(({ comment }) => `${example.place}: ${comment}`),
      ),
    );
    expect(prose.flat()).toEqual([]);
    expect(own.filter(({ code }) => !code.includes("//")).map(({ place }) => place)).toEqual([]);
  });

  it("compile", { timeout: 60_000 }, () => {
    const folder = join(root, "out/documented");
    mkdirSync(folder, { recursive: true });
    const files = own.map((example, i) => {
      const file = join(folder, `${directory}-${i}.ts`);
      writeFileSync(file, `// ${example.place}\n${moduleOf(example)}`);
      return file;
    });
    const { config } = ts.readConfigFile(join(root, "tsconfig.base.json"), ts.sys.readFile);
    const { options } = ts.parseJsonConfigFileContent({ ...config, files: [] }, ts.sys, root);
    const program = ts.createProgram(files, { ...options, noEmit: true, verbatimModuleSyntax: false });
    const wrong = ts.getPreEmitDiagnostics(program).map(({ file, messageText }) => {
      const place = file?.text.split("\n", 1)[0] ?? "";
      return `${place}: ${ts.flattenDiagnosticMessageText(messageText, "\n")}`;
    });
    expect(wrong).toEqual([]);
  });

  it("are there for every exported function", () => {
    const shown = own.map(({ code }) => code).join("\n");
    const functions = Object.entries(modules[directory as keyof typeof modules]).filter(
      ([, thing]) => typeof thing === "function",
    );
    expect(functions.map(([name]) => name).filter((name) => !new RegExp(`\\b${name}\\b`).test(shown))).toEqual([]);
  });
});

describe("documentation of what is exported", () => {
  it.each(packages)("$directory marks nothing of it as internal", ({ directory, source }) => {
    const names = exportedNames.get(directory) ?? new Set();
    const marked = readdirSync(source, { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".ts"))
      .flatMap((name) => {
        const text = readFileSync(new URL(name, source), "utf8");
        const found = text.matchAll(
          /\/\*\*(?:(?!\*\/)[\s\S])*@internal(?:(?!\*\/)[\s\S])*\*\/\s*export (?:const|function|class|type|interface) (\w+)/g,
        );
        return [...found].map((match) => match[1] ?? "").filter((each) => names.has(each));
      });
    expect(marked).toEqual([]);
  });
});
