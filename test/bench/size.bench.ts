/** What `import { q }` adds to a page, against the general libraries that also read units from texts. */
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { buildSync } from "esbuild";
import type { BenchRow } from "./race.js";

const here = fileURLToPath(new URL(".", import.meta.url));

/** Bytes of a minified, gzipped bundle of what one line exports. */
function gzipped(line: string): number {
  const { outputFiles } = buildSync({
    ...{ stdin: { contents: line, resolveDir: here }, bundle: true, minify: true, write: false },
    ...{ format: "esm", target: "es2022", platform: "browser", logLevel: "silent" },
  });
  return gzipSync(outputFiles[0]?.contents ?? "", { level: 9 }).length;
}

export function run(): readonly BenchRow[] {
  const ours = gzipped('export { q } from "@tarewatt/units"');
  const others = [
    { name: "js-quantities", bytes: gzipped('export { default } from "js-quantities"') },
    { name: "unitmath", bytes: gzipped('export { default } from "unitmath"') },
    { name: "mathjs", bytes: gzipped('export { unit } from "mathjs"') },
  ].sort((one, other) => one.bytes - other.bytes);
  const [smallest] = others;
  if (smallest === undefined) throw new Error("there is nothing to compare with");
  const id = "import { q }, gzipped";
  const ratio = ours / smallest.bytes;
  console.log(`  ${id}: tarewatt ${ours} B, ${others.map(({ name, bytes }) => `${name} ${bytes} B`).join(", ")}`);
  console.log(`    ${ratio.toFixed(3)} of ${smallest.name}; wanted at most 1: ${ratio <= 1 ? "holds" : "MISSED"}`);
  const row = { id, ours, reference: smallest.bytes, referenceName: smallest.name, unit: "B" } as const;
  return [{ ...row, ratio, goal: 1, holds: ratio <= 1 }];
}
