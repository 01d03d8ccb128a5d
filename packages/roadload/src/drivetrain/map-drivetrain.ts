import { InputError, type Length, type Quantity, readOptions } from "@tarewatt/units";
import { readWordsIfGiven } from "../check/read-words.js";
import { type Loss, readLosses } from "../resistance/loss.js";
import type { Drivetrain } from "./drivetrain.js";
import { readAxis, readTable } from "./read-map.js";

/** Values along one side of a map, in a unit. */
export interface MapAxis {
  /** Rising values, two at least. */
  readonly values: readonly number[];
  /** Their unit, such as `"rpm"`, `"N·m"` or `"kW"`. */
  readonly unit: string;
}

/** Options of {@link mapDrivetrain}. */
export interface MapDrivetrainOptions {
  /** Angular velocity of the shaft, one row of the table each. */
  readonly angularVelocity: MapAxis;
  /** Torque or power at the shaft, one column of the table each; negative ones brake. */
  readonly load: MapAxis;
  /** What is tabled, one list a row: efficiencies, or losses with their unit. Between the points it is bilinear. */
  readonly table:
    | {
        /** Power out per power in, more than 0 and at most 1. */
        readonly of: "efficiency";
        /** One list for every angular velocity, one number for every load. */
        readonly rows: readonly (readonly number[])[];
      }
    | {
        /** Power that is lost. */
        readonly of: "loss";
        /** Unit of the numbers, such as `"kW"`. */
        readonly unit: string;
        /** One list for every angular velocity, one number for every load. */
        readonly rows: readonly (readonly number[])[];
      };
  /** What happens outside the table: its edge is taken, and results warn; or an error. */
  readonly outside: "edge" | "refuse";
  /** Turns of the shaft per turn of the wheel. */
  readonly gearRatio: number;
  /** Rolling radius of the wheels. */
  readonly wheelRadius: Quantity<Length>;
  /** Losses that the table holds. */
  readonly contains: readonly Loss[];
  /** What the model is, in words. */
  readonly name?: string | undefined;
}

const MIRRORED = "the map tables no braking: its driving side was taken for braking, too";

/**
 * A drivetrain from your own map of efficiency or loss over angular velocity and torque or power.
 *
 * Bilinear in what is tabled, so a table of efficiencies gives efficiencies between them. At rest nothing is taken. A map
 * without negative loads is mirrored for braking, with a warning. The motors take all braking: see {@link limitRegeneration}.
 *
 * @param options - axes, table, what happens outside it, gear and wheel
 * @returns the drivetrain; asked outside the table it refuses with `OUT_OF_RANGE`, if so chosen
 * @throws InputError `NOT_A_NUMBER` for a hole (it names row and column), `INCONSISTENT` when rows and columns do not fit the
 *   axes or an axis does not rise, `EMPTY`, `TOO_LONG`, `NOT_A_FRACTION`, `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_CHOICE`, `WRONG_DIMENSION`, and what `readOptions` throws
 * @example
 * const drivetrain = mapDrivetrain({
 *   angularVelocity: { values: [0, 1000], unit: "rad/s" }, load: { values: [0, 100], unit: "kW" },
 *   table: { of: "loss", unit: "kW", rows: [[0.2, 4], [1.2, 8]] }, outside: "edge",
 *   gearRatio: 10, wheelRadius: q("0.3 m"), contains: ["motor", "inverter"],
 * });
 * drivetrain.batteryPower(50_000, 15); // 53350
 */
export function mapDrivetrain(options: MapDrivetrainOptions): Drivetrain {
  const { gearRatio, wheelRadius } = readOptions(
    "mapDrivetrain",
    options,
    { gearRatio: { unit: "1", above: 0, atMost: 100 }, wheelRadius: { unit: "m", above: 0, atMost: 2 } },
    ["angularVelocity", "load", "table", "outside", "contains", "name?"],
  );
  const omegas = readAxis("angularVelocity", options.angularVelocity, ["rad/s"]);
  const loads = readAxis("load", options.load, ["W", "N·m"]);
  const byTorque = loads.unit === "N·m";
  const { efficiency, numbers } = readTable(options.table, omegas.values.length, loads.values.length);
  const { outside } = options;
  if (outside !== "edge" && outside !== "refuse") {
    throw new InputError("WRONG_CHOICE", "outside must be 'edge' or 'refuse'", { name: "outside" });
  }
  const name = readWordsIfGiven("name", options.name) ?? "map";
  const mirrored = (loads.values[0] as number) >= 0;
  const perSpeed = gearRatio / wheelRadius;
  const loadOf = (power: number, omega: number): number => {
    const load = byTorque ? power / omega : power;
    return mirrored ? Math.abs(load) : load;
  };
  const covers = (power: number, speed: number): boolean =>
    speed <= 0 || (within(omegas.values, speed * perSpeed) && within(loads.values, loadOf(power, speed * perSpeed)));
  return Object.freeze({
    name,
    contains: readLosses("contains", options.contains),
    warnings: Object.freeze(mirrored ? [MIRRORED] : []),
    batteryPower: (wheelPower: number, speed: number): number => {
      if (speed <= 0) return 0;
      const omega = speed * perSpeed;
      const load = loadOf(wheelPower, omega);
      if (outside === "refuse" && !covers(wheelPower, speed)) refusePoint(name, wheelPower, speed);
      const tabled = bilinear(omegas.values, loads.values, numbers, omega, load);
      if (!efficiency) return wheelPower + tabled;
      return wheelPower > 0 ? wheelPower / tabled : wheelPower * tabled;
    },
    frictionBrakePower: () => 0,
    covers,
  });
}

const within = (axis: readonly number[], value: number): boolean =>
  value >= (axis[0] as number) && value <= (axis.at(-1) as number);

/** Bilinear between the four points around; outside, the edge. */
function bilinear(xs: readonly number[], ys: readonly number[], table: Float64Array, x: number, y: number): number {
  const i = intervalOf(xs, x);
  const j = intervalOf(ys, y);
  const s = partOf(xs, i, x);
  const t = partOf(ys, j, y);
  const at = i * ys.length + j;
  const below = (table[at] as number) * (1 - t) + (table[at + 1] as number) * t;
  const above = (table[at + ys.length] as number) * (1 - t) + (table[at + ys.length + 1] as number) * t;
  return below * (1 - s) + above * s;
}

function intervalOf(axis: readonly number[], value: number): number {
  let low = 0;
  let high = axis.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >>> 1;
    if ((axis[middle] as number) <= value) low = middle;
    else high = middle;
  }
  return low;
}

function partOf(axis: readonly number[], interval: number, value: number): number {
  const from = axis[interval] as number;
  return Math.min(1, Math.max(0, (value - from) / ((axis[interval + 1] as number) - from)));
}

function refusePoint(name: string, wheelPower: number, speed: number): never {
  throw new InputError(
    "OUT_OF_RANGE",
    `the drivetrain '${name}' has no point for ${wheelPower} W at the wheels and ${speed} m/s: give a larger map, or outside: 'edge'`,
    { wheelPower, speed },
  );
}
