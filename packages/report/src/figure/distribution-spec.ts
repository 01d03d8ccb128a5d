import { formatNumber } from "@tarewatt/units";
import type { ReadDistributionTarget } from "./distribution.js";
import type { DistributionContent } from "./distribution-kind.js";
import type { VegaLiteSpec } from "./figure.js";
import { LABEL_ROW, labelRowLayers, labelRows } from "./label-rows.js";
import { type Layer, pixels, rules, withData } from "./layers.js";
import { letters, paper } from "./paper.js";
import type { ReadSize } from "./picture-size.js";
import { printerOf } from "./print-value.js";
import { lineWidth } from "./text-width.js";
import { apart, boundsOf } from "./ticks.js";
import { acrossAxis, axisRoom, fittingTicks, tickText } from "./value-axis.js";

const USUAL = 260;
const LEAST = 100;

/** @internal A target in words. */
export function targetText({ label, chance }: ReadDistributionTarget): string {
  return chance === undefined ? label : `${label}; at least that: ${percent(chance)}`;
}

/** A chance that is not certain does not print as 0 % or 100 %. */
function percent(chance: number): string {
  if (chance > 0 && chance < 0.005) return "less than 1 %";
  if (chance < 1 && chance > 0.995) return "more than 99 %";
  return `${formatNumber(100 * chance, chance < 0.095 ? 1 : 2)} %`;
}

/** @internal The area of a distribution with its median, its interval, and what it is compared with. */
export function distributionSpec(content: DistributionContent, size: ReadSize): VegaLiteSpec {
  const { rows, x, median, low, high, targets } = content;
  const { scale, look } = size;
  const marks = [median, low, high, ...targets.map(({ value }) => value)].filter((value) => value !== undefined);
  const bounds = apart(...boundsOf([...rows.map((row) => row.x), ...marks]));
  const ticks = fittingTicks(...bounds, size.width, letters.small * scale);
  const overhang = Math.max(...ticks.values.map((tick) => lineWidth(tickText(tick, ticks), letters.small * scale))) / 2;
  const width = size.width - 32 * scale - 2 * overhang;
  const across = acrossAxis(x, bounds, width, size);
  const printer = printerOf(marks, x);
  const labels = labelRows(
    [
      ...(median === undefined ? [] : [{ text: `Median: ${printer.value(median)}`, pixel: across.toPixel(median) }]),
      ...targets.map((target) => ({ text: targetText(target), pixel: across.toPixel(target.value) })),
    ],
    width,
    scale,
  );
  const top = (labels.count * LABEL_ROW + 6) * scale;
  const edges = { left: overhang, right: overhang, top, bottom: axisRoom(x, width, size) };
  const sheet = paper(content, size, edges, { needs: LEAST * scale, usual: USUAL * scale });
  const [, most] = boundsOf(rows.map(({ density }) => density));
  const heightOf = (density: number) => sheet.height * (1 - density / most);
  const area = (outline: DistributionContent["rows"], opacity: number): Layer => ({
    data: {
      values: outline.map((row) => ({ x: row.x, density: row.density, y: heightOf(row.density), y2: sheet.height })),
    },
    mark: { type: "area", color: look.accent, opacity, line: false },
    encoding: { x: across.channel("x"), y: pixels("y"), y2: { field: "y2" } },
  });
  const outline: Layer = {
    data: { values: rows.map((row) => ({ x: row.x, y: heightOf(row.density) })) },
    mark: { type: "line", color: look.accent, strokeWidth: 2 * scale },
    encoding: { x: across.channel("x"), y: pixels("y") },
  };
  const upright = (value: number) => ({ x: across.toPixel(value), x2: across.toPixel(value), y: 0, y2: sheet.height });
  const dash = [5 * scale, 4 * scale];
  return sheet.draw([
    ...across.layers(sheet.height),
    ...withData([area(rows, 0.16), area(clipped(rows, low, high), 0.34), outline]),
    ...rules(median === undefined ? [] : [upright(median)], { color: look.text, width: 2 * scale }),
    ...rules(
      targets.map(({ value }) => upright(value)),
      { color: look.text, width: 1.5 * scale, dash },
    ),
    ...labelRowLayers(labels, size),
  ]);
}

/** The part of an outline between two values, cut where they are. */
function clipped(
  rows: DistributionContent["rows"],
  low: number | undefined,
  high: number | undefined,
): DistributionContent["rows"] {
  if (low === undefined || high === undefined) return [];
  const inside = rows.filter(({ x }) => x > low && x < high);
  return [cut(rows, low), ...inside, cut(rows, high)].filter((row) => row !== undefined);
}

function cut(rows: DistributionContent["rows"], at: number): DistributionContent["rows"][number] | undefined {
  for (const [index, right] of rows.slice(1).entries()) {
    const left = rows[index] as typeof right;
    if (left.x > at || right.x < at || left.x === right.x) continue;
    const share = (at - left.x) / (right.x - left.x);
    return { x: at, density: left.density + share * (right.density - left.density) };
  }
  return undefined;
}
