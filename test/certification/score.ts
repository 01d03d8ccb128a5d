import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { readRows } from "./rows.js";
import { scoreOf } from "./scores.js";

/**
 * Predicts the certified rows of a file from their road load, test weight, rated power and year, and prints how well as one JSON
 * object. A row of a maker that the fit has seen is predicted by a fit without that maker.
 */
const { values } = parseArgs({ options: { rows: { type: "string" }, all: { type: "boolean", default: false } } });
if (values.rows === undefined) {
  console.error("usage: npm run -s score -- --rows FILE [--all]");
  process.exit(2);
}
const rows = readRows(readFileSync(values.rows, "utf8"));
console.log(JSON.stringify(scoreOf(rows, values.all ? "all" : "core")));
