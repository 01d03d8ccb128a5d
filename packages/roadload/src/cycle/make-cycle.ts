import { type Length, type Quantity, quantity, type Source, type Speed } from "@tarewatt/units";
import type { Cycle, CyclePhase, CycleSegments } from "./cycle.js";
import { cutIntoPieces, type Pieces } from "./pieces.js";
import { keepPieces } from "./pieces-of.js";
import type { SpeedUnit } from "./speed-unit.js";

interface CycleTable {
  readonly time: readonly number[];
  /** In m/s. */
  readonly speed: readonly number[];
  /** When somebody has cut the table already. */
  readonly pieces?: Pieces;
}

/** @internal */
export interface CycleDefinition {
  readonly name: string;
  readonly source: Source;
  readonly notes?: readonly string[];
  readonly warnings?: readonly string[];
  /** Grade of the road from the row before to every row. */
  readonly grade?: readonly number[] | undefined;
  /** Unit that distances and speeds are shown in. */
  readonly unit: SpeedUnit;
  readonly phases?: readonly { readonly name: string; readonly from: number; readonly to: number }[];
  /** Called once, when the table is first needed: a cycle that is not used costs nothing. */
  readonly table: () => CycleTable;
}

interface Computed extends CycleTable {
  readonly pieces: Pieces;
  readonly segments: CycleSegments;
  readonly distance: Quantity<Length>;
  readonly meanSpeed: Quantity<Speed>;
  readonly maximumSpeed: Quantity<Speed>;
  readonly phases: readonly CyclePhase[];
}

/** Builds a cycle whose numbers are computed once, when first asked for. @internal */
export function makeCycle(definition: CycleDefinition): Cycle {
  const { name, source, notes = [], warnings = [], grade } = definition;
  let known: Computed | undefined;
  const computed = (): Computed => {
    known ??= compute(definition);
    return known;
  };
  const cycle: Cycle = Object.freeze({
    name,
    source: Object.freeze({ ...source }),
    notes: Object.freeze([...notes]),
    warnings: Object.freeze([...warnings]),
    ...(grade === undefined ? {} : { grade: Object.freeze([...grade]) }),
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
      return quantity(computed().pieces.total.duration, "s");
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
  keepPieces(cycle, () => computed().pieces);
  return cycle;
}

function compute({ unit, table, grade, phases = [] }: CycleDefinition): Computed {
  const { time, speed, pieces = cutIntoPieces(time, speed, grade) } = table();
  const { total } = pieces;
  const speedQuantity = (value: number) => quantity(value, "m/s").to(unit);
  const lengthQuantity = (value: number) => quantity(value, "m").to(unit === "mph" ? "mi" : "km");
  return Object.freeze({
    time: Object.freeze(time),
    speed: Object.freeze(speed),
    pieces,
    segments: shownSegments(pieces),
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

/** What a reader may see: copies that cannot be changed, made when somebody asks for them. */
function shownSegments({ count, standstill, total, duration, integrals }: Pieces): CycleSegments {
  let durations: readonly number[] | undefined;
  let numbers: readonly number[] | undefined;
  return Object.freeze({
    count,
    standstill,
    total,
    get duration() {
      durations ??= Object.freeze([...duration]);
      return durations;
    },
    get integrals() {
      numbers ??= Object.freeze([...integrals]);
      return numbers;
    },
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
