import type { Pieces } from "../cycle/pieces.js";

/**
 * What happened, step by step, in SI units. The first row is the start; every other row ends a step of at most 1 s, or a
 * standstill. Powers are means since the row before. The lists are yours: nothing else reads them.
 */
export interface DriveSeries {
  /** Time, in s. */
  readonly time: Float64Array;
  /** Speed, in m/s. */
  readonly speed: Float64Array;
  /** Distance since the start, in m. */
  readonly distance: Float64Array;
  /** Power at the wheels, in W; negative while braking. */
  readonly wheelPower: Float64Array;
  /** Heat of the friction brakes, in W. */
  readonly frictionBrakePower: Float64Array;
  /** Power of the battery at its terminals, in W, accessories and climate included; negative while it is charged. */
  readonly batteryPower: Float64Array;
  /** State of charge; only with a battery. */
  readonly stateOfCharge?: Float64Array;
}

/** Lists of the right length for the pieces of a cycle. @internal */
export function newSeries({ count, start, duration, total }: Pieces, begin: number, battery: boolean): DriveSeries {
  // A standstill before, between or after the pieces is a row of its own.
  let rows = 1 + count;
  let now = begin;
  for (let i = 0; i < count; i++) {
    if (isGap(start[i] as number, now)) rows++;
    now = (start[i] as number) + (duration[i] as number);
  }
  if (isGap(begin + total.duration, now)) rows++;
  const list = () => new Float64Array(rows);
  return {
    ...{ time: list(), speed: list(), distance: list(), wheelPower: list() },
    ...{ frictionBrakePower: list(), batteryPower: list() },
    ...(battery ? { stateOfCharge: list() } : {}),
  };
}

/** Whether time passes between the end of one piece and the start of the next; more than rounding. @internal */
export function isGap(start: number, end: number): boolean {
  return start - end > 1e-9 * Math.max(1, Math.abs(start));
}
