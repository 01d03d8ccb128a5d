/** The energy of vehicles over the UDDS cycle, against the same loop compiled from C. */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { udds, wheelEnergies } from "@tarewatt/roadload";
import { type BenchRow, race, type Timed } from "./race.js";

/** The C compiler of the system, whichever it is. */
const COMPILER = "cc";

/** A power of two, as the numbers of repetitions are. */
const VEHICLES = 512;

/** Invented vehicles that differ, so that no result can be used twice. */
const list = (first: number, step: number) => Float64Array.from({ length: VEHICLES }, (_, i) => first + step * i);
const vehicles = {
  constant: list(120, 0.2),
  linear: list(0.5, 0.004),
  quadratic: list(0.35, 0.0003),
  inertiaMass: list(1600, 2),
};

const ours = {
  name: "tarewatt",
  work: (times: number): number => {
    // The time a vehicle is asked for, so a batch counts as many.
    const batches = Math.ceil(times / VEHICLES);
    let sum = 0;
    for (let i = 0; i < batches; i++) sum += wheelEnergies(udds, vehicles).driving[i % VEHICLES] ?? Number.NaN;
    return sum;
  },
};

/** Acceleration, first and last speed and duration of every piece of the cycle, by rising acceleration. */
function byAcceleration(): number[] {
  const { time, speed } = udds;
  return time
    .slice(1)
    .map((end, row) => [speed[row] as number, speed[row + 1] as number, end - (time[row] as number)] as const)
    .filter(([from, to]) => from !== 0 || to !== 0)
    .map(([from, to, seconds]) => [(to - from) / seconds, from, to, seconds])
    .sort(([a], [b]) => (a as number) - (b as number))
    .flat();
}

/** Compiles the loop and hands it the very numbers that the library works on; undefined without a compiler. */
function compiled(folder: string): { run: (repetitions: number) => [nanoseconds: number, sum: number][] } | undefined {
  const program = join(folder, "udds");
  const source = fileURLToPath(new URL("udds.c", import.meta.url));
  const compiler = spawnSync(COMPILER, ["-O2", "-o", program, source, "-lm"], { encoding: "utf8" });
  if (compiler.error !== undefined) return undefined;
  if (compiler.status !== 0) throw new Error(`udds.c does not compile: ${compiler.stderr}`);
  const { constant, linear, quadratic, inertiaMass } = vehicles;
  const { integrals, count } = udds.segments;
  const vmax = udds.maximumSpeed.in("m/s");
  const data = [count, VEHICLES, integrals.length / 4, vmax, ...integrals, ...byAcceleration()];
  const file = join(folder, "data");
  writeFileSync(file, Float64Array.from([...data, ...constant, ...linear, ...quadratic, ...inertiaMass]));
  return {
    run: (repetitions) =>
      execFileSync(program, [file, String(repetitions)], { encoding: "utf8" })
        .trim()
        .split("\n")
        .map((line) => line.split(" ").map(Number) as [number, number]),
  };
}

export function run(): readonly BenchRow[] {
  const folder = mkdtempSync(join(tmpdir(), "tarewatt-bench-"));
  try {
    const c = compiled(folder);
    if (c === undefined) {
      console.log("  skipped: there is no C compiler (cc) on this machine to compare with");
      return [];
    }
    const { driving, braking } = wheelEnergies(udds, vehicles);
    const wanted = [...driving, ...braking].reduce((sum, energy) => sum + energy, 0);
    for (const [, sum] of c.run(1)) {
      if (!(Math.abs(sum / wanted - 1) < 1e-10)) throw new Error(`C computes ${sum}, the library ${wanted}`);
    }
    const loops = ["C, cc -O2, by sign", "C, cc -O2, in pairs"].map(
      (name, index): Timed => ({ name, nanoseconds: () => c.run(40)[index]?.[0] ?? Number.NaN }),
    );
    return [race("UDDS energy of a vehicle", 1.2, ours, loops)];
  } finally {
    rmSync(folder, { recursive: true });
  }
}
