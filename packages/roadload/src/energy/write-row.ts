import type { Run } from "./run.js";
import type { DriveSeries } from "./series.js";

/** Sums at the end of the row before. */
interface Marks {
  wheel: number;
  brakes: number;
  battery: number;
}

/** @internal */
export const emptyMarks = (): Marks => ({ wheel: 0, brakes: 0, battery: 0 });

/** @internal */
export function mark(marks: Marks, run: Run): void {
  marks.wheel = run.driving + run.braking;
  marks.brakes = run.brakes;
  marks.battery = run.drivetrain;
}

/** @internal */
export function writeRow(
  series: DriveSeries,
  row: number,
  time: number,
  seconds: number,
  run: Run,
  marks: Marks,
): void {
  series.time[row] = time;
  series.speed[row] = run.speed;
  series.distance[row] = run.distance;
  if (seconds > 0) {
    series.wheelPower[row] = (run.driving + run.braking - marks.wheel) / seconds;
    series.frictionBrakePower[row] = (run.brakes - marks.brakes) / seconds;
    series.batteryPower[row] = (run.drivetrain - marks.battery) / seconds + run.auxiliary;
  }
  if (series.stateOfCharge !== undefined) series.stateOfCharge[row] = run.stateOfCharge;
}
