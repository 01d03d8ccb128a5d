import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { scoreOnDayOne } from "./day-one.js";
import { scoreOfLabels } from "./label.js";
import { readRows } from "./rows.js";
import { scoreOf } from "./scores.js";
import { earlierRows, otherRows, scoreWithComparators } from "./with-comparators.js";

/**
 * Predicts the certified rows of a file, and prints how well as one JSON object:
 *
 * - by default from road load, test weight, rated power and year alone;
 * - `--hindcast`: from the same maker's earlier model years as well, siblings left out; rows that have none are not scored;
 * - `--calibrate`: from any other configuration of the same maker as well;
 * - `--day-one`: with the road load hidden, from class, test weight, rated power, year and the maker's earlier model years;
 * - `--label`: the label range, from road load, test weight and V×Ah of the pack, the method of the label unknown.
 *
 * A row of a maker that the fit has seen is predicted by a fit without that maker.
 */
const kinds = ["hindcast", "calibrate", "day-one", "label"] as const;
const flag = { type: "boolean", default: false } as const;
const { values } = parseArgs({
  options: { rows: { type: "string" }, all: flag, hindcast: flag, calibrate: flag, "day-one": flag, label: flag },
});
const asked = kinds.filter((kind) => values[kind]);
if (values.rows === undefined || asked.length > 1) {
  console.error(`usage: npm run -s score -- --rows FILE [--all] [${kinds.map((kind) => `--${kind}`).join(" | ")}]`);
  process.exit(2);
}
const rows = readRows(readFileSync(values.rows, "utf8"));
const keep = values.all ? "all" : "core";
const score = {
  alone: () => scoreOf(rows, keep),
  hindcast: () => scoreWithComparators(rows, keep, earlierRows),
  calibrate: () => scoreWithComparators(rows, keep, otherRows),
  "day-one": () => scoreOnDayOne(rows, keep),
  label: () => scoreOfLabels(rows, keep),
}[asked[0] ?? "alone"];
console.log(JSON.stringify(score()));
