import { type Length, type Quantity, quantity, type Source, type Speed } from "@tarewatt/units";
import type { Cycle, CyclePhase, CycleSegments } from "./cycle.js";
import { segmentsOf } from "./segments.js";

/** Units that a table of speeds can be in. */
export type SpeedUnit = "m/s" | "km/h" | "mph";

interface CycleTable {
  readonly time: readonly number[];
  /** In m/s. */
  readonly speed: readonly number[];
  /** When somebody has computed them already. */
  readonly segments?: CycleSegments;
}

/** @internal */
export interface CycleDefinition {
  readonly name: string;
  readonly source: Source;
  readonly notes?: readonly string[];
  /** Unit that distances and speeds are shown in. */
  readonly unit: SpeedUnit;
  readonly phases?: readonly { readonly name: string; readonly from: number; readonly to: number }[];
  /** Called once, when the table is first needed: a cycle that is not used costs nothing. */
  readonly table: () => CycleTable;
}

interface Computed extends CycleTable {
  readonly segments: CycleSegments;
  readonly distance: Quantity<Length>;
  readonly meanSpeed: Quantity<Speed>;
  readonly maximumSpeed: Quantity<Speed>;
  readonly phases: readonly CyclePhase[];
}

/** Builds a cycle whose numbers are computed once, when first asked for. @internal */
export function makeCycle(definition: CycleDefinition): Cycle {
  const { name, source, notes = [] } = definition;
  let known: Computed | undefined;
  const computed = (): Computed => {
    known ??= compute(definition);
    return known;
  };
  return Object.freeze({
    name,
    source: Object.freeze({ ...source }),
    notes: Object.freeze([...notes]),
    get time() {
      return computed().time;
    },
    get speed() {
      return computed().speed;
    },
    get distance() {
      return computed().distance;
    },
    get duration() {
      return quantity(computed().segments.total.duration, "s");
    },
    get meanSpeed() {
      return computed().meanSpeed;
    },
    get maximumSpeed() {
      return computed().maximumSpeed;
    },
    get phases() {
      return computed().phases;
    },
    get segments() {
      return computed().segments;
    },
  });
}

function compute({ unit, table, phases = [] }: CycleDefinition): Computed {
  const { time, speed, segments = segmentsOf(time, speed) } = table();
  const { total } = segments;
  const speedQuantity = (value: number) => quantity(value, "m/s").to(unit);
  const lengthQuantity = (value: number) => quantity(value, "m").to(unit === "mph" ? "mi" : "km");
  return Object.freeze({
    time: Object.freeze(time),
    speed: Object.freeze(speed),
    segments,
    distance: lengthQuantity(total.distance),
    meanSpeed: speedQuantity(total.distance / total.duration),
    maximumSpeed: speedQuantity(speed.reduce((a, b) => Math.max(a, b))),
    phases: Object.freeze(
      phases.map(({ name, from, to }) =>
        Object.freeze({ name, from, to, distance: lengthQuantity(distanceBetween(time, speed, from, to)) }),
      ),
    ),
  });
}

function distanceBetween(time: readonly number[], speed: readonly number[], from: number, to: number): number {
  let distance = 0;
  for (let row = 1; row < time.length; row++) {
    const start = time[row - 1] as number;
    const end = time[row] as number;
    if (start >= from && end <= to)
      distance += ((end - start) * ((speed[row] as number) + (speed[row - 1] as number))) / 2;
  }
  return distance;
}
