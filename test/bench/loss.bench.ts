/** The energy of vehicles at the battery, through a loss model of their drivetrain, against the same loop compiled from C. */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import {
  batteryEnergies,
  type Cycle,
  inductionMotor100kW,
  joinCycles,
  lossDrivetrain,
  udds,
  wltc3b,
} from "@tarewatt/roadload";
import { q } from "@tarewatt/units";
import { type BenchRow, race, type Timed } from "./race.js";

/** The C compiler of the system, whichever it is. */
const COMPILER = "cc";

/** A power of two, as the numbers of repetitions are. */
const VEHICLES = 64;

const lists = (count: number) => {
  // The same span for any number, so that no more of many vehicles lack power than of few.
  const list = (first: number, last: number) =>
    Float64Array.from({ length: count }, (_, i) => first + ((last - first) * i) / count);
  return {
    constant: list(120, 220),
    linear: list(0.5, 2.5),
    quadratic: list(0.35, 0.5),
    inertiaMass: list(1600, 2600),
  };
};
const vehicles = lists(VEHICLES);
const drivetrain = lossDrivetrain({
  ...{ motor: inductionMotor100kW, gearRatio: 9.5, wheelRadius: q("0.33 m"), spin: "here" },
  gears: { meshEfficiency: 0.97, spinTorque: q("0.5 N·m") },
  inverter: { efficiency: 0.98, standby: q("50 W") },
  ...{ maximumTorque: q("300 N·m"), maximumPower: q("150 kW") },
});
/** Without the limit of power, which the program in C does not look at either. */
const { maximumWheelPower: _, ...unlimited } = drivetrain;
const accessories = q("0 W");

const ours = {
  name: "tarewatt",
  operations: VEHICLES,
  work: (times: number): number => {
    let sum = 0;
    for (let i = 0; i < times; i++) {
      const { battery } = batteryEnergies({ cycle: udds, vehicles, drivetrain: unlimited, accessories });
      sum += battery[i % VEHICLES] ?? Number.NaN;
    }
    return sum;
  },
};

/** Compiles the loop and hands it the table of the cycle; undefined without a compiler. */
function compiled(folder: string): { run: (repetitions: number) => [nanoseconds: number, sum: number] } | undefined {
  const program = join(folder, "loss");
  const source = fileURLToPath(new URL("loss.c", import.meta.url));
  const compiler = spawnSync(COMPILER, ["-O2", "-o", program, source, "-lm"], { encoding: "utf8" });
  if (compiler.error !== undefined) return undefined;
  if (compiler.status !== 0) throw new Error(`loss.c does not compile: ${compiler.stderr}`);
  const { time, speed } = udds;
  const pieces = time
    .slice(1)
    .map((end, row) => [end - (time[row] as number), speed[row] as number, speed[row + 1] as number] as const)
    .filter(([, from, to]) => from !== 0 || to !== 0);
  const { copper, iron, windage, constant: c } = inductionMotor100kW;
  const model = [9.5 / 0.33, 0.97, 0.5, copper, iron, windage, c, 0.98, 50, 300, 150_000];
  const { constant, linear, quadratic, inertiaMass } = vehicles;
  const data = [pieces.length, VEHICLES, ...model, ...pieces.flat()];
  const file = join(folder, "data");
  writeFileSync(file, Float64Array.from([...data, ...constant, ...linear, ...quadratic, ...inertiaMass]));
  return {
    run: (repetitions) =>
      execFileSync(program, [file, String(repetitions)], { encoding: "utf8" })
        .trim()
        .split(" ")
        .map(Number) as [number, number],
  };
}

/** Exponent of the power law through points, by least squares in logarithms: 1 is linear. */
function exponent(points: readonly (readonly [size: number, milliseconds: number])[]): number {
  const [x, y] = [points.map(([n]) => Math.log(n)), points.map(([, t]) => Math.log(t))];
  const mean = (list: readonly number[]) => list.reduce((a, b) => a + b, 0) / list.length;
  const [mx, my] = [mean(x), mean(y)];
  const product = x.reduce((sum, value, i) => sum + (value - mx) * ((y[i] as number) - my), 0);
  return product / x.reduce((sum, value) => sum + (value - mx) ** 2, 0);
}

/** Milliseconds of the fastest of some runs: others on the machine can only slow one down. */
function fastest(cycle: Cycle, count: number): number {
  const options = { cycle, vehicles: lists(count), drivetrain, accessories };
  const times = Array.from({ length: 3 }, () => {
    const start = performance.now();
    batteryEnergies(options);
    return performance.now() - start;
  });
  return Math.min(...times);
}

/** Prints what 10 000 vehicles cost on WLTC, and how the cost grows with vehicles and with the length of the cycle. */
function printScaling(): void {
  const shown = (points: readonly (readonly [number, number])[]) =>
    points.map(([n, t]) => `${n} in ${t.toFixed(1)} ms`).join(", ");
  const vehicles = [1250, 2500, 5000, 10_000].map((count) => [count, fastest(wltc3b, count)] as const);
  console.log(`  WLTC through a loss model with limits, vehicles: ${shown(vehicles)}`);
  console.log(`    cost grows as vehicles^${exponent(vehicles).toFixed(2)}`);
  const cycles = [1, 2, 4, 8].map((times) => joinCycles({ name: "WLTC again", cycles: Array(times).fill(wltc3b) }));
  const steps = cycles.map((cycle) => [cycle.segments.count, fastest(cycle, 500)] as const);
  console.log(`  500 vehicles, steps: ${shown(steps)}`);
  console.log(`    cost grows as steps^${exponent(steps).toFixed(2)}`);
}

export function run(): readonly BenchRow[] {
  printScaling();
  const folder = mkdtempSync(join(tmpdir(), "tarewatt-bench-"));
  try {
    const c = compiled(folder);
    if (c === undefined) {
      console.log("  skipped: there is no C compiler (cc) on this machine to compare with");
      return [];
    }
    const { battery } = batteryEnergies({ cycle: udds, vehicles, drivetrain: unlimited, accessories });
    const wanted = battery.reduce((sum, energy) => sum + energy, 0);
    const [, sum] = c.run(1);
    if (!(Math.abs(sum / wanted - 1) < 1e-10)) throw new Error(`C computes ${sum}, the library ${wanted}`);
    const loop: Timed = { name: "C, cc -O2", nanoseconds: () => c.run(16)[0] };
    return [race("UDDS through a loss model, a vehicle", 2, ours, [loop])];
  } finally {
    rmSync(folder, { recursive: true });
  }
}
