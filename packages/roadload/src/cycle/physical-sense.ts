/**
 * Accelerations that deserve a second look, in m/s². Road tyres hold about one g on dry road, so a road car can neither gain
 * nor lose speed much faster; 30 m/s² is a fault of the log, whatever the vehicle. Common practice, no source.
 */
const DOUBTFUL = 10;
/** Grades beyond this are steeper than public roads; a noisy altitude makes them. Common practice, no source. */
const STEEP = 0.35;

/** A step this much longer than the usual one of its log, and than this many seconds, is a gap and no slow logger. */
const GAP = { times: 20, seconds: 30 };
/** Hills are longer than this, in m: what goes up and down within is noise or the steps of an altimeter. */
const HILL = 100;
/** Metres up and down for each kilometre that may be lost between the log and its stretches of 100 m. */
const ROUGH = 10;

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
    ...gapsIn(time, speed),
    ...roughness(time, speed, grade),
  ];
}

/** Gaps while the vehicle moves: the speed between their ends is a guess, and so is the way. */
function gapsIn(time: readonly number[], speed: readonly number[]): string[] {
  const steps = time.slice(1).map((each, row) => each - (time[row] as number));
  const usual = Float64Array.from(steps).sort()[steps.length >> 1] as number;
  const least = Math.max(GAP.seconds, GAP.times * usual);
  const gaps = steps.flatMap((step, row) => {
    const moves = (speed[row] as number) > 0 || (speed[row + 1] as number) > 0;
    return step > least && moves ? [row + 1] : [];
  });
  if (gaps.length === 0) return [];
  const longest = Math.max(...gaps.map((row) => steps[row - 1] as number));
  return [
    `there are gaps of up to ${shown(longest)} s after ${rowsOf(gaps)}, where the vehicle moves: speed and way in them are ` +
      "guessed along a straight line",
  ];
}

/** Ups and downs that are too short for hills, as altitudes in coarse steps or with noise make them. */
function roughness(time: readonly number[], speed: readonly number[], grade: readonly number[]): string[] {
  let [way, climbed, smooth, sinceHill, rise] = [0, 0, 0, 0, 0];
  for (let row = 0; row < grade.length; row++) {
    const seconds = (time[row + 1] as number) - (time[row] as number);
    const metres = (((speed[row] as number) + (speed[row + 1] as number)) / 2) * seconds;
    way += metres;
    sinceHill += metres;
    climbed += Math.abs((grade[row] as number) * metres);
    rise += (grade[row] as number) * metres;
    if (sinceHill < HILL && row < grade.length - 1) continue;
    smooth += Math.abs(rise);
    sinceHill = 0;
    rise = 0;
  }
  if (climbed - smooth <= (ROUGH * way) / 1000) return [];
  return [
    `the road goes ${shown(climbed)} m up and down in its rows, but ${shown(smooth)} m over stretches of ${HILL} m: altitudes in ` +
      "coarse steps or with noise do that, and cost energy here; smooth them first, or leave them out",
  ];
}

function rowsOf(rows: readonly number[]): string {
  const first = rows.slice(0, 3).join(", ");
  return rows.length === 1 ? `row ${first}` : `${rows.length} rows (${first}${rows.length > 3 ? ", …" : ""})`;
}

function shown(value: number): string {
  return String(Number(value.toPrecision(3))).replace("-", "−");
}
