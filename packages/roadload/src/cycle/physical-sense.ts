/**
 * Accelerations that deserve a second look, in m/s². Road tyres hold about one g on dry road, so a road car can neither gain
 * nor lose speed much faster; 30 m/s² is a fault of the log, whatever the vehicle. Common practice, no source.
 */
const DOUBTFUL = 10;
/** Grades beyond this are steeper than public roads; a noisy altitude makes them. Common practice, no source. */
const STEEP = 0.35;

/** What to doubt in a table of speeds, in SI units, and of grades between the rows. @internal */
export function doubtsOf(time: readonly number[], speed: readonly number[], grade: readonly number[] = []): string[] {
  const rough: number[] = [];
  let largest = 0;
  for (let row = 1; row < time.length; row++) {
    const change = (speed[row] as number) - (speed[row - 1] as number);
    const acceleration = change / ((time[row] as number) - (time[row - 1] as number));
    if (Math.abs(acceleration) > DOUBTFUL) rough.push(row + 1);
    if (Math.abs(acceleration) > Math.abs(largest)) largest = acceleration;
  }
  const steep = grade.flatMap((each, row) => (Math.abs(each) > STEEP ? [row + 1] : []));
  return [
    ...(rough.length === 0
      ? []
      : [
          `speed changes at ${rowsOf(rough)} faster than ${DOUBTFUL} m/s², up to ${shown(largest)} m/s²: no road vehicle does; ` +
            "check the log, the units, and gaps in time",
        ]),
    ...(steep.length === 0
      ? []
      : [`the road is steeper than ${STEEP * 100} % after ${rowsOf(steep)}: check the altitudes, or leave them out`]),
  ];
}

function rowsOf(rows: readonly number[]): string {
  const first = rows.slice(0, 3).join(", ");
  return rows.length === 1 ? `row ${first}` : `${rows.length} rows (${first}${rows.length > 3 ? ", …" : ""})`;
}

function shown(value: number): string {
  return String(Number(value.toPrecision(3))).replace("-", "−");
}
