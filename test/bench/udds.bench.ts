/**
 * The energy of vehicles over the UDDS cycle, through the public call, against scalar C: once against the plain loop over all pieces,
 * which is what a program without this library would run, and once against the library's own way, which looks at few of them. Both
 * give the same energies.
 */
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
  operations: VEHICLES,
  work: (times: number): number => {
    let sum = 0;
    for (let i = 0; i < times; i++) sum += wheelEnergies(udds, vehicles).driving[i % VEHICLES] ?? Number.NaN;
    return sum;
  },
};

/** The resistance that the library sorts pieces by, in 1/m. */
const TYPICAL = 2.2e-4;

/** The lists that the library works on, from the table of the cycle: see udds.c. */
function sorted(): number[] {
  const { time, speed } = udds;
  const pieces = time
    .slice(1)
    .map((end, row) => [speed[row] as number, speed[row + 1] as number, end - (time[row] as number)] as const)
    .filter(([from, to]) => from !== 0 || to !== 0)
    .map(([from, to, dt]) => ({ acceleration: (to - from) / dt, from, to, dt }))
    .map((piece) => ({ ...piece, key: piece.acceleration + (TYPICAL * (piece.from ** 2 + piece.to ** 2)) / 2 }))
    .sort((one, other) => one.key - other.key)
    .map(({ acceleration, from, to, dt }) => {
      const squares = from * from + to * to;
      const integrals = [(dt * (from + to)) / 2, (dt * (squares + from * to)) / 3, (dt * (from + to) * squares) / 4];
      return { acceleration, ends: [from, to, dt], integrals, kinetic: ((to - from) * (to + from)) / 2 };
    });
  const before = [[0, 0, 0, 0]];
  for (const { integrals, kinetic } of pieces) {
    const last = before.at(-1) ?? [];
    before.push([...integrals, kinetic].map((integral, i) => (last[i] ?? Number.NaN) + integral));
  }
  const rows = pieces.map(({ acceleration, integrals }) => [acceleration, ...integrals]);
  return [rows, pieces.map(({ ends }) => ends), before].flat(2);
}

/** Compiles the loop and hands it the very numbers that the library works on; undefined without a compiler. */
function compiled(
  folder: string,
): { run: (repetitions: number, ...mode: string[]) => [nanoseconds: number, sum: number] } | undefined {
  const program = join(folder, "udds");
  const source = fileURLToPath(new URL("udds.c", import.meta.url));
  const compiler = spawnSync(COMPILER, ["-O2", "-o", program, source, "-lm"], { encoding: "utf8" });
  if (compiler.error !== undefined) return undefined;
  if (compiler.status !== 0) throw new Error(`udds.c does not compile: ${compiler.stderr}`);
  const { constant, linear, quadratic, inertiaMass } = vehicles;
  const data = [udds.segments.count, VEHICLES, udds.maximumSpeed.in("m/s"), TYPICAL, ...sorted()];
  const file = join(folder, "data");
  writeFileSync(file, Float64Array.from([...data, ...constant, ...linear, ...quadratic, ...inertiaMass]));
  return {
    run: (repetitions, ...mode) =>
      execFileSync(program, [file, String(repetitions), ...mode], { encoding: "utf8" })
        .trim()
        .split(" ")
        .map(Number) as [number, number],
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
    for (const mode of [[], ["all"]]) {
      const [, sum] = c.run(1, ...mode);
      if (!(Math.abs(sum / wanted - 1) < 1e-10)) throw new Error(`C computes ${sum}, the library ${wanted}`);
    }
    const plain: Timed = { name: "C, cc -O2, all pieces", nanoseconds: () => c.run(10, "all")[0] };
    const same: Timed = { name: "C, cc -O2, the same way", nanoseconds: () => c.run(100)[0] };
    return [
      race("UDDS energy of a vehicle", 1.2, ours, [plain]),
      race("UDDS energy of a vehicle, the same way in C", 1.2, ours, [same]),
    ];
  } finally {
    rmSync(folder, { recursive: true });
  }
}
