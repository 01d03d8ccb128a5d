import { execFileSync } from "node:child_process";
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { figureToSvg } from "@tarewatt/report";
import { describe, expect, it } from "vitest";
import { rangeFigure } from "../../docs/examples/touring-van-figures.js";

const root = resolve(import.meta.dirname, "../..");
const filesOf = (folder: string): string[] => readdirSync(resolve(root, folder)).map((file) => `${folder}/${file}`);
const pages = [
  "README.md",
  "DEVELOPERS.md",
  ...filesOf("docs"),
  ...filesOf("packages").map((each) => `${each}/README.md`),
].filter((file) => file.endsWith(".md") && file !== "docs/validation.md");

/** Each script of a page that is followed by what it prints. */
function scripts(text: string): { readonly code: string; readonly prints: string }[] {
  const pairs = text.matchAll(/```ts\n(.*?)```(?:(?!```).)*```text\n(.*?)```/gs);
  return [...pairs].map(([, code = "", prints = ""]) => ({ code, prints }));
}

describe.each(pages)("%s", (page) => {
  const text = readFileSync(resolve(root, page), "utf8");

  it.each(scripts(text))("shows a script that runs, and what it prints", ({ code, prints }) => {
    mkdirSync(resolve(root, "out"), { recursive: true });
    const file = resolve(root, "out", `${page.replace(/\W/g, "-")}-example.ts`);
    writeFileSync(file, code);
    const printed = execFileSync(process.execPath, ["--import", "tsx", file], { cwd: root, encoding: "utf8" });
    expect(printed).toBe(prints);
  });

  it("shows no script without what it prints", () => {
    expect(scripts(text)).toHaveLength(text.match(/```ts\n/g)?.length ?? 0);
  });

  it("names files that are there", () => {
    const links = [...text.matchAll(/\]\((?!https:)([^)#]+)/g)].map(([, link = ""]) => link);
    for (const link of links) expect(() => readFileSync(resolve(root, dirname(page), link))).not.toThrow();
  });
});

describe("the picture in README", () => {
  it("is the one that the example draws", async () => {
    await expect(await figureToSvg(rangeFigure())).toMatchFileSnapshot(resolve(root, "docs/range-at-steady-speed.svg"));
  });
});
