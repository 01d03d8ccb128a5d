import { InputError, isQuantity, readNumber } from "@tarewatt/units";
import type { Cycle } from "./cycle.js";
import { cutIntoPieces, type Pieces } from "./pieces.js";
import { readTable } from "./read-table.js";

/** The pieces of a cycle, out of reach for everybody else; they go when the cycle goes. */
const kept = /* @__PURE__ */ new WeakMap<object, () => Pieces>();

/** Pieces by the list of speeds that they were cut from, for copies of a cycle that share its frozen table. */
const cut = /* @__PURE__ */ new WeakMap<
  object,
  { readonly time: unknown; readonly grade: unknown; readonly pieces: Pieces }
>();

/** Remembers how the pieces of a cycle are had. @internal */
export function keepPieces(cycle: Cycle, pieces: () => Pieces): void {
  kept.set(cycle, pieces);
}

/** The pieces of a cycle, of any copy of this package; what is no cycle is refused. @internal */
export function piecesOf(cycle: Cycle): Pieces {
  const own = kept.get(cycle);
  return own === undefined ? cutAgain(cycle) : own();
}

/** A cycle of another copy of this package, or a changed copy of one: cut from its table, which is checked, and kept if it is frozen. */
function cutAgain(cycle: Cycle): Pieces {
  const { name, time, speed, grade, distance, duration } = (cycle ?? {}) as Partial<Cycle>;
  if (typeof name !== "string" || !isQuantity(distance) || !isQuantity(duration)) {
    throw new InputError("WRONG_CHOICE", "cycle must be a cycle, such as wltc3b, or made by speedTrace", {
      name: "cycle",
    });
  }
  const known = cut.get(Object(speed));
  if (known !== undefined && known.time === time && known.grade === grade) return known.pieces;
  const read = readTable({ time, speed, timeUnit: "s", speedUnit: "m/s" });
  const pieces = cutIntoPieces(read.time, read.speed, grade === undefined ? undefined : readGrades(grade, read.time));
  // Only what cannot change any more is worth remembering.
  if ([time, speed, grade ?? time].every(Object.isFrozen)) cut.set(Object(speed), { time, grade, pieces });
  return pieces;
}

function readGrades(grade: readonly number[], time: readonly number[]): readonly number[] {
  if (!Array.isArray(grade) || grade.length !== time.length) {
    throw new InputError("INCONSISTENT", "cycle.grade must have one number for every row of the cycle", {
      expected: time.length,
    });
  }
  return grade.map((value: unknown, row) =>
    readNumber(`cycle.grade[${row}]`, value, { unit: "1", atLeast: -1, atMost: 1 }),
  );
}
