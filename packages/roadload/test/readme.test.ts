import { readFileSync } from "node:fs";
import * as units from "@tarewatt/units";
import { expect, it } from "vitest";
import * as roadload from "../src/index.js";

const modules: Readonly<Record<string, object>> = { "@tarewatt/roadload": roadload, "@tarewatt/units": units };
const readme = readFileSync(new URL("../README.md", import.meta.url), "utf8");
const blockOf = (language: string): string =>
  new RegExp(`\`\`\`${language}\n([^]*?)\`\`\``).exec(readme)?.[1] ?? "none";

it("the script of the README prints what the README says", () => {
  const printed: string[] = [];
  // The script is run as it stands, but for its imports, which become the sources of this package.
  const script = blockOf("ts").replace(/import (\{.*?\}) from "(.*?)";/g, 'const $1 = modules["$2"];');
  new Function("modules", "console", script)(modules, {
    log: (...parts: unknown[]) => printed.push(`${parts.join(" ")}\n`),
  });
  expect(printed.join("")).toBe(blockOf("text"));
});
