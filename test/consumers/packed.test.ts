import { createContext, runInContext } from "node:vm";
import { gzipSync } from "node:zlib";
import { buildSync } from "esbuild";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Consumers, notBuilt } from "./packed.js";
import { both, commonJs, crossed, esModule, firstEstimate, mistakeCodes, mistakes, versions } from "./programs.js";
import { complaints, typePrograms } from "./types.js";

/** Other engines, fetched from the registry (about 200 MB) only when somebody asks. */
const others = [
  { name: "Deno", engine: /^Deno 2\./, command: ["npx", "-y", "deno@2.9.6", "run", "--allow-read", "--allow-env"] },
  {
    name: "Node 24, of long-term support",
    engine: /^Node v24\./,
    command: ["npx", "-y", "-p", "node@24.21.0", "--", "node"],
  },
] as const;
const asked = process.env.OTHER_RUNTIMES === "1";
const notAsked = asked ? "" : " (skipped: fetches it from the registry; set OTHER_RUNTIMES=1 to run it)";

describe("the whole check", () => {
  it("has built the packages, so that nothing below is skipped", () => {
    if (process.env.WHOLE_CHECK === "1") expect(notBuilt).toBe("");
  });
});

describe.skipIf(notBuilt !== "")(`the packages as they are packed${notBuilt}`, () => {
  let consumers: Consumers;
  beforeAll(() => {
    consumers = new Consumers();
  }, 120_000);
  afterAll(() => consumers?.remove());

  const study = ["527 kg", "true", "function function"];

  it("work as ES modules", () => {
    expect(consumers.run("program.mjs", esModule)).toEqual(study);
  });

  it("work as CommonJS modules", () => {
    expect(consumers.run("program.cjs", commonJs)).toEqual(study);
  });

  it("work as both in one process, and quantities cross both ways", () => {
    expect(consumers.run("both.mjs", both)).toEqual([...crossed, "true"]);
  });

  it("work as two versions in one process, and quantities cross both ways", () => {
    expect(consumers.run("versions.mjs", versions)).toEqual(crossed);
  });

  it("refuse the mistakes of plain JavaScript with coded errors", () => {
    expect(consumers.run("mistakes.cjs", mistakes)).toEqual(mistakeCodes.map((code) => `true ${code}`));
  });

  it.each(["node16", "nodenext", "bundler"] as const)(
    "have types that hold under '%s'",
    { timeout: 120_000 },
    (mode) => {
      const files = typePrograms.filter(({ modes }) => modes.includes(mode));
      expect(files.length).toBeGreaterThan(0);
      expect(complaints(consumers, files, mode)).toEqual([]);
    },
  );

  /** What a program says when it is bundled for a browser and run with nothing of Node, and what it weighs, compressed. */
  const bundled = (use: string): { readonly said: readonly unknown[]; readonly size: number } => {
    const file = consumers.write("bundled.mjs", use);
    const options = {
      bundle: true,
      minify: true,
      write: false,
      format: "iife",
      platform: "browser",
      target: "es2022",
    } as const;
    const { outputFiles } = buildSync({ ...options, entryPoints: [file], logLevel: "silent" });
    const [{ text } = { text: "" }] = outputFiles;
    const said: unknown[] = [];
    runInContext(text, createContext({ out: (thing: unknown) => said.push(thing) }));
    return { said, size: gzipSync(text).length };
  };

  // Ceilings: the measured size and a twentieth.
  it.each([
    { use: `import { isQuantity } from "@tarewatt/units"; out(isQuantity(5));`, says: [false], bytes: 325 },
    { use: `import { q } from "@tarewatt/units"; out(q("5 kg").in("g"));`, says: [5000], bytes: 8_300 },
    { use: `import { standardGravity as g } from "@tarewatt/roadload"; out(typeof g);`, says: ["object"], bytes: 175 },
    { use: `import { grades } from "@tarewatt/estimate"; out(grades.length > 0);`, says: [true], bytes: 390 },
  ])("make a small bundle that runs without Node: $use", ({ use, says, bytes }) => {
    const { said, size } = bundled(use);
    expect(said).toEqual(says);
    expect(size).toBeLessThanOrEqual(bytes);
  });

  it("make a bundle of at most 60 kB for a first estimate, which says what it says in Node", () => {
    const { said, size } = bundled(firstEstimate);
    expect(said).toEqual(consumers.run("first-estimate.mjs", `const out = console.log;\n${firstEstimate}`));
    // The limit that was set for a page, with everything that the estimate needs: not the measured size and a twentieth.
    expect(size).toBeLessThanOrEqual(60_000);
  });

  describe.skipIf(!asked)(`elsewhere${notAsked}`, () => {
    it.each(others)("work in $name", { timeout: 120_000 }, ({ engine, command }) => {
      const which = "console.log(globalThis.Deno ? 'Deno ' + Deno.version.deno : 'Node ' + process.version);";
      expect(consumers.run("engine.mjs", which, command)[0]).toMatch(engine);
      expect(consumers.run("elsewhere.mjs", esModule, command)).toEqual(study);
      expect(consumers.run("elsewhere-versions.mjs", versions, command)).toEqual(crossed);
    });
  });
});
