/**
 * Runs every `*.bench.ts` beside this file, one after the other, in one process, and writes out/bench.json.
 * `run.ts NAME` runs those whose name holds NAME, and writes nothing. The packages must be built: it is the build that is measured.
 */
import { mkdirSync, readdirSync, writeFileSync } from "node:fs";
import type { BenchRow } from "./race.js";

/** What a file of benchmarks exports. */
interface Benchmarks {
  readonly run: () => readonly BenchRow[];
}

const wanted = process.argv[2] ?? "";
const files = readdirSync(new URL(".", import.meta.url))
  .filter((name) => name.endsWith(".bench.ts") && name.includes(wanted))
  .sort();
if (files.length === 0)
  throw new Error(`No benchmark named like "${wanted}": expected a file *.bench.ts in test/bench.`);

const rows: BenchRow[] = [];
for (const name of files) {
  console.log(`\n${name}`);
  const { run }: Benchmarks = await import(new URL(name, import.meta.url).href);
  rows.push(...run());
}
if (wanted === "") {
  const out = new URL("../../out/", import.meta.url);
  mkdirSync(out, { recursive: true });
  writeFileSync(new URL("bench.json", out), `${JSON.stringify(rows, null, 2)}\n`);
}
console.log(`\n${rows.filter(({ holds }) => holds).length} of ${rows.length} goals hold`);
