import { describeGiven, InputError, readNumber } from "@tarewatt/units";
import { type RecordNumberName, recordNumbers } from "./columns.js";
import { csvField } from "./csv-text.js";
import { isNumber, type Key } from "./record-cells.js";
import { type VehicleRecord, vehicleRecord } from "./vehicle-record.js";

/**
 * Documented vehicles as CSV (RFC 4180), with units in the heads; {@link vehicleRecordsFromCsv} reads it. A text that a spreadsheet would
 * run as a formula gets an apostrophe before it, which reading takes away again.
 *
 * @param records - the vehicles
 * @returns a line of heads and a line for each vehicle, ended by CR LF; only columns that hold something
 * @throws InputError as {@link vehicleRecord} does; `WRONG_CHOICE` for no list
 * @example
 * vehicleRecordsToCsv([{ name: "=cmd()", curbMass: q("2.31 t") }]); // "name,curb mass (kg)\r\n'=cmd(),2310\r\n"
 */
export function vehicleRecordsToCsv(records: readonly VehicleRecord[]): string {
  if (!Array.isArray(records)) {
    throw new InputError("WRONG_CHOICE", `records must be a list: got ${describeGiven(records)}`, {});
  }
  const checked = Array.from(records as readonly VehicleRecord[], vehicleRecord);
  const order: readonly Key[] = [
    ...(["name"] as const),
    ...(Object.keys(recordNumbers) as RecordNumberName[]),
    ...(["body", "construction", "equipment", "source", "grade", "date"] as const),
  ];
  const used = order.filter((key) => checked.some((record) => record[key] !== undefined));
  const heads = used.map((key) => {
    if (!isNumber(key)) return key;
    const { head, unit } = recordNumbers[key];
    return unit === "1" ? head : `${head} (${unit})`;
  });
  const rows = checked.map((record) => used.map((key) => cellOf(record, key)));
  return [heads, ...rows].map((row) => `${row.map(csvField).join(",")}\r\n`).join("");
}

function cellOf(record: VehicleRecord, key: Key): string {
  const value: unknown = record[key];
  if (value === undefined) return "";
  if (key === "equipment") return (value as readonly string[]).join(" | ");
  return isNumber(key) ? String(readNumber(key, value, { unit: recordNumbers[key].unit })) : (value as string);
}
