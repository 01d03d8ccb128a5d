import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { figureToSvg } from "@tarewatt/report";
import { describe, expect, it } from "vitest";
import { rangeFigure } from "../../docs/examples/touring-van-figures.js";

const root = resolve(import.meta.dirname, "../..");
const readme = readFileSync(resolve(root, "README.md"), "utf8");

function block(language: string): string {
  const found = new RegExp(`\`\`\`${language}\\n(.*?)\`\`\``, "s").exec(readme)?.[1];
  if (found === undefined) throw new Error(`README has no ${language} block`);
  return found;
}

describe("README", () => {
  it("shows a script that runs, and what it prints", () => {
    mkdirSync(resolve(root, "out"), { recursive: true });
    const file = resolve(root, "out/readme-example.ts");
    writeFileSync(file, block("ts"));
    const printed = execFileSync(process.execPath, ["--import", "tsx", file], { cwd: root, encoding: "utf8" });
    expect(printed).toBe(block("text"));
  });

  it("shows the picture that the example draws", async () => {
    await expect(await figureToSvg(rangeFigure())).toMatchFileSnapshot(resolve(root, "docs/range-at-steady-speed.svg"));
  });

  it("names files that are there", () => {
    const links = [...readme.matchAll(/\]\(([^)]+)\)/g)].map((match) => match[1] as string);
    expect(links.length).toBeGreaterThan(4);
    for (const link of links) expect(() => readFileSync(resolve(root, link))).not.toThrow();
  });
});
