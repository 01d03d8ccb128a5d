import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { scoreOnDayOne } from "./day-one.js";
import { scoreOfLabels } from "./label.js";
import { readPackRows, scoreOfPacks } from "./packs.js";
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
 * - `--label`: the label range, from road load, test weight and V×Ah of the pack, the method of the label unknown;
 * - `--packs`: what is filed of packs, from published priors alone: energy per mass from year, chemistry and cell mass fraction, and the
 *   energy of a full charge at the wall from V×Ah; with it stands which rows are not trusted, and why.
 *
 * A row of a maker that the fit has seen is predicted by a fit without that maker.
 */
const kinds = ["hindcast", "calibrate", "day-one", "label", "packs"] as const;
const flag = { type: "boolean", default: false } as const;
const { values } = parseArgs({
  options: {
    rows: { type: "string" },
    ...{ all: flag, hindcast: flag, calibrate: flag, "day-one": flag, label: flag, packs: flag },
  },
});
const asked = kinds.filter((kind) => values[kind]);
if (values.rows === undefined || asked.length > 1) {
  console.error(`usage: npm run -s score -- --rows FILE [--all] [${kinds.map((kind) => `--${kind}`).join(" | ")}]`);
  process.exit(2);
}
const text = readFileSync(values.rows, "utf8");
const rows = readRows(text);
const keep = values.all ? "all" : "core";
const score = {
  alone: () => scoreOf(rows, keep),
  hindcast: () => scoreWithComparators(rows, keep, earlierRows),
  calibrate: () => scoreWithComparators(rows, keep, otherRows),
  "day-one": () => scoreOnDayOne(rows, keep),
  label: () => scoreOfLabels(rows, keep),
  packs: () => scoreOfPacks(readPackRows(text), keep),
}[asked[0] ?? "alone"];
console.log(JSON.stringify(score()));
