import { describeGiven, InputError, quantity, readNumber, readOptions } from "@tarewatt/units";
import type { MapAxis, MapDrivetrainOptions } from "./map-drivetrain.js";

/** Largest map: a hundred thousand points. */
const MOST_POINTS = 100_000;

/** @internal */
export function readAxis(
  name: string,
  given: MapAxis,
  units: readonly string[],
): { readonly values: readonly number[]; readonly unit: string } {
  readOptions(name, given, {}, ["values", "unit"]);
  const { values, unit } = given;
  if (!Array.isArray(values) || values.length < 2) {
    throw new InputError("EMPTY", `${name}.values must be a list of two numbers at least`, { name });
  }
  if (values.length > MOST_POINTS) {
    throw new InputError("TOO_LONG", `${name}.values must be at most ${MOST_POINTS}: got ${values.length}`, { name });
  }
  if (typeof unit !== "string") throw new InputError("WRONG_CHOICE", `${name}.unit must be a text`, { name });
  const wanted =
    units.find((each) => quantity<string>(1, unit).dimension.kind === quantity<string>(1, each).dimension.kind) ??
    units[0];
  const read = values.map((value: unknown, index) => {
    const at = `${name}.values[${index}]`;
    return readNumber(at, quantity<string>(number(at, value), unit), { unit: wanted as string });
  });
  for (let i = 1; i < read.length; i++) {
    if ((read[i] as number) > (read[i - 1] as number)) continue;
    throw new InputError("INCONSISTENT", `${name}.values must rise: got ${values[i]} after ${values[i - 1]}`, { name });
  }
  return { values: read, unit: wanted as string };
}

/** @internal */
export function readTable(
  given: MapDrivetrainOptions["table"],
  rows: number,
  columns: number,
): { readonly efficiency: boolean; readonly numbers: Float64Array } {
  readOptions("table", given, {}, ["of", "rows", "unit?"]);
  const efficiency = given.of === "efficiency";
  if (!efficiency && given.of !== "loss") {
    throw new InputError("WRONG_CHOICE", "table.of must be 'efficiency' or 'loss'", { name: "table.of" });
  }
  const unit = given.of === "loss" ? given.unit : "1";
  if (typeof unit !== "string")
    throw new InputError("WRONG_CHOICE", "table.unit must be a text, such as 'W'", { name: "table.unit" });
  if (!Array.isArray(given.rows) || given.rows.length !== rows) {
    throw new InputError("INCONSISTENT", `table.rows must have one list for each angular velocity, ${rows}`, { rows });
  }
  const rule = efficiency ? { unit: "1", above: 0, atMost: 1 } : { unit: "W", atLeast: 0 };
  const numbers = new Float64Array(rows * columns);
  given.rows.forEach((row: unknown, i) => {
    if (!Array.isArray(row) || row.length !== columns) {
      throw new InputError("INCONSISTENT", `table.rows[${i}] must have one number for each load, ${columns}`, {
        columns,
      });
    }
    for (let j = 0; j < columns; j++) {
      const at = `table.rows[${i}][${j}]`;
      numbers[i * columns + j] = readNumber(at, quantity<string>(number(at, row[j]), unit), rule);
    }
  });
  return { efficiency, numbers };
}

/** A hole in a map is refused: nobody knows what should fill it. */
function number(at: string, given: unknown): number {
  if (typeof given === "number" && Number.isFinite(given)) return given;
  throw new InputError(
    "NOT_A_NUMBER",
    `${at} must be a finite number, a map has no holes: got ${describeGiven(given)}`,
    { name: at },
  );
}
