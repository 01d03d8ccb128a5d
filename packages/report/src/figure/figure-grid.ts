import { plainLine } from "../escape/plain.js";
import { withUnit } from "../escape/with-unit.js";
import type { Grid } from "../table/grid.js";
import { commonPlaces, formatPlaces, formatSpread } from "../table/number.js";
import type { LineTarget } from "./figure.js";
import type { FigureContent } from "./line-spec.js";

const DIGITS = 4;
const MOST_DIGITS_OF_X = 6;

/** @internal The points of a figure as a table, the targets as notes. */
export function figureGrid({ title, x, y, rows, targets, caption }: FigureContent): Grid {
  const xPlaces = commonPlaces(
    rows.map((row) => row.x),
    MOST_DIGITS_OF_X,
  );
  const yPlaces = commonPlaces(
    rows.map((row) => row.y),
    DIGITS,
  );
  return {
    title,
    heads: [
      { title: "Series", unit: "", align: "left" },
      { title: plainLine(x.title), unit: x.unit, align: "right" },
      { title: plainLine(y.title), unit: y.unit, align: "right" },
    ],
    rows: rows.map(({ series, x: place, y: p50, low, high }) => [
      plainLine(series),
      formatPlaces(place, xPlaces),
      low === undefined || high === undefined
        ? formatPlaces(p50, yPlaces)
        : formatSpread({ p10: low, p50, p90: high }, DIGITS),
    ]),
    caption,
    notes: targets.map((target) => targetNote(target, { x, y })),
  };
}

function targetNote({ label, value, x: across }: LineTarget, { x, y }: Pick<FigureContent, "x" | "y">): string {
  const [axis, at] = value === undefined ? [x, across ?? 0] : [y, value];
  const place = withUnit(formatPlaces(at, commonPlaces([at], MOST_DIGITS_OF_X)), axis.unit);
  return `${label} (rule at ${axis.title.toLowerCase()} ${place})`;
}
