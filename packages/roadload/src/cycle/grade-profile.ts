import {
  describeGiven,
  InputError,
  type Length,
  type Quantity,
  quantity,
  readOptions,
  type Source,
} from "@tarewatt/units";
import { readWordsIfGiven } from "../check/read-words.js";
import type { Cycle } from "./cycle.js";
import { makeCycle } from "./make-cycle.js";
import { doubtsOf } from "./physical-sense.js";
import { GRADE_BASES, GRADE_DISTANCES, GRADE_PERCENTS } from "./table/grade-us-1037.js";
import { gradesOfRows, rowsOf, speedUnitOf } from "./table-of.js";

/** Grade of a road over distance, linear between the rows. Plain data. */
export interface GradeProfile {
  /** Name, as it appears in results. */
  readonly name: string;
  /** Distance of every row from the start, in m, increasing. */
  readonly distance: readonly number[];
  /** Grade at every row: rise over run, positive uphill. */
  readonly grade: readonly number[];
  /** Where the table is from. */
  readonly source: Source;
  /** What a reader should doubt. */
  readonly warnings: readonly string[];
}

/** How a row of {@link usHighwayGrade} is known. */
export type GradeRowBasis = "seen" | "moved" | "inferred";

const bases = { s: "seen", o: "moved", i: "inferred" } as const satisfies Readonly<Record<string, GradeRowBasis>>;

/**
 * Grades of the US highway cruise cycles of heavy-duty vehicles, over 21.2 km. Partial: `basis` says how each row is known.
 * 123 of 213 rows were read in the regulation; 25 were read in its edition of 2016 and moved by 402 m, as all rows are that
 * were read in both; 65 were not read and are the mirror image, with the opposite sign, about 10 806 m.
 *
 * @example
 * usHighwayGrade.basis.filter((basis) => basis === "seen").length; // 123
 */
export const usHighwayGrade: GradeProfile & {
  /** How each row is known. */
  readonly basis: readonly GradeRowBasis[];
} = /* @__PURE__ */ (() =>
  Object.freeze({
    name: "US highway grade profile",
    distance: Object.freeze([...GRADE_DISTANCES]),
    grade: Object.freeze(GRADE_PERCENTS.map((percent) => percent / 100)),
    basis: Object.freeze([...GRADE_BASES].map((letter) => bases[letter as keyof typeof bases])),
    source: Object.freeze({
      document: "40 CFR part 1037",
      section: "appendix D (86 FR 34497); 123 of 213 rows",
      status: "seen",
    } as const),
    warnings: Object.freeze([
      "90 of the 213 rows of the grade profile were not read in the regulation: 25 come from its older edition, 65 are inferred by symmetry; the last 1.2 km are the least certain",
    ]),
  }))();

/** Options of {@link gradeCycle}. */
export interface GradeCycleOptions {
  /** The cycle. */
  readonly cycle: Cycle;
  /** The road. */
  readonly profile: Pick<GradeProfile, "name" | "distance" | "grade"> & {
    /** What a reader should doubt; the cycle on the road warns of it, too. */
    readonly warnings?: readonly string[];
  };
  /** Distance on the profile at which the cycle starts; its start when left out. */
  readonly from?: Quantity<Length> | undefined;
}

/**
 * A cycle driven on a road of changing grade: the grade between two rows is the mean of the profile over the distance
 * between them, so that the height gained is exact. At rest it is the grade of the place.
 *
 * @param options - the cycle and the road
 * @returns the cycle, with its grades
 * @throws InputError `OUT_OF_RANGE` when the road is shorter than the cycle, `INCONSISTENT` when the profile's lists do not
 *   fit, `EMPTY`, `NOT_A_NUMBER`, `WRONG_CHOICE`, `NEGATIVE`, and what `readOptions` throws
 * @example
 * gradeCycle({ cycle: hwfet, profile: usHighwayGrade }).grade?.length; // 766
 */
export function gradeCycle(options: GradeCycleOptions): Cycle {
  const { from = 0 } = readOptions("gradeCycle", options, { from: { unit: "m", atLeast: 0, optional: true } }, [
    "cycle",
    "profile",
  ]);
  const { cycle } = options;
  const { time, speed } = rowsOf(cycle);
  const profile = readProfile(options.profile);
  const end = profile.distance.at(-1) as number;
  const begin = profile.distance[0] as number;
  if (from < begin) {
    throw new InputError(
      "OUT_OF_RANGE",
      `from must lie on the road '${profile.name}', which begins at ${begin} m: got ${from} m`,
      {
        from,
        begin,
      },
    );
  }
  const needed = from + cycle.distance.in("m");
  if (needed > end * (1 + 1e-9)) {
    throw new InputError(
      "OUT_OF_RANGE",
      `the road '${profile.name}' ends at ${quantity(end, "m")}: the cycle needs ${needed} m of it; cut the cycle`,
      { end, needed },
    );
  }
  let place = from;
  const grade = time.slice(1).map((t, row) => {
    const length = (((speed[row] as number) + (speed[row + 1] as number)) / 2) * (t - (time[row] as number));
    const start = place;
    place += length;
    if (length < 1e-6) return profile.at(start);
    return (profile.height(place) - profile.height(start)) / length;
  });
  return makeCycle({
    name: `${cycle.name} on ${profile.name}`,
    source: cycle.source,
    notes: cycle.notes,
    warnings: [...doubtsOf(time, speed, grade), ...profile.warnings],
    grade: gradesOfRows(grade),
    unit: speedUnitOf(cycle),
    phases: cycle.phases,
    table: () => ({ time: [...time], speed: [...speed] }),
  });
}

interface ReadProfile {
  readonly name: string;
  readonly distance: readonly number[];
  readonly warnings: readonly string[];
  at(place: number): number;
  /** ∫ grade over distance from the first row, in m. */
  height(place: number): number;
}

function readProfile(given: GradeCycleOptions["profile"]): ReadProfile {
  const { name, distance, grade, warnings = [] } = (given ?? {}) as Partial<GradeProfile>;
  const lists = Array.isArray(distance) && Array.isArray(grade) && Array.isArray(warnings);
  if (!lists) {
    throw new InputError("WRONG_CHOICE", "profile must hold the arrays distance, in m, and grade, rise over run", {
      name: "profile",
    });
  }
  const xs = distance as readonly number[];
  const gs = grade as readonly number[];
  if (xs.length < 2) throw new InputError("EMPTY", "profile must have at least two rows", { length: xs.length });
  if (xs.length !== gs.length) {
    throw new InputError(
      "INCONSISTENT",
      `profile must have as many grades as distances: got ${gs.length} and ${xs.length}`,
      { distance: xs.length, grade: gs.length },
    );
  }
  const heights = [0];
  for (let row = 0; row < xs.length; row++) {
    const [x, g] = [xs[row], gs[row]];
    if (!Number.isFinite(x) || !Number.isFinite(g)) {
      const got = `${describeGiven(x)} and ${describeGiven(g)}`;
      throw new InputError("NOT_A_NUMBER", `profile must hold finite numbers: got ${got} in row ${row + 1}`, { row });
    }
    if (Math.abs(g as number) > 1) {
      throw new InputError("OUT_OF_RANGE", `profile grades are rise over run, -1 to 1: got ${g} in row ${row + 1}`, {
        row,
      });
    }
    if (row === 0) continue;
    const step = (x as number) - (xs[row - 1] as number);
    if (!(step > 0)) {
      throw new InputError("INCONSISTENT", `profile distances must increase: got ${x} in row ${row + 1}`, { row });
    }
    heights.push((heights[row - 1] as number) + (step * ((g as number) + (gs[row - 1] as number))) / 2);
  }
  const rowAt = (place: number): number => {
    let [low, high] = [0, xs.length - 2];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((xs[middle] as number) <= place) low = middle;
      else high = middle - 1;
    }
    return low;
  };
  const at = (place: number): number => {
    const row = rowAt(place);
    const part = (place - (xs[row] as number)) / ((xs[row + 1] as number) - (xs[row] as number));
    return (gs[row] as number) + part * ((gs[row + 1] as number) - (gs[row] as number));
  };
  return {
    name: readWordsIfGiven("profile.name", name) ?? "a road",
    distance: xs,
    warnings: warnings.filter((each) => typeof each === "string"),
    at,
    height: (place) => {
      const row = rowAt(place);
      return (heights[row] as number) + ((place - (xs[row] as number)) * ((gs[row] as number) + at(place))) / 2;
    },
  };
}
