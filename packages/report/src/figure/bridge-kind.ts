import { readKeys, readList, readRecord, readText } from "../check/read.js";
import type { BridgeFigure, BridgeFigureOptions, BridgeFigureRow } from "./bridge.js";
import { type DataTable, dataColumns } from "./data-table.js";
import type { VegaLiteSpec } from "./figure.js";
import { type ReadFigure, readOf } from "./kind.js";
import { type Layer, pixels, rules, withData } from "./layers.js";
import { readMeasure, readOptionalMeasure, readValueAxis } from "./measure.js";
import type { ReadSize } from "./picture-size.js";
import { printerOf } from "./print-value.js";
import { rowPicture } from "./row-plot.js";
import { boundsOf } from "./ticks.js";
import { readMadeWords } from "./words.js";

/** @internal What a bridge is drawn and printed from. */
export type BridgeContent = Omit<BridgeFigure, "spec">;

const THICKNESS = 20;

/** @internal Reads a figure that was made before. */
export function readBridgeFigure(given: BridgeFigure): ReadFigure {
  const figure = readRecord("figure", given);
  const { x, rows } = figure;
  const axis = readValueAxis("x", x);
  const content: BridgeContent = {
    kind: "bridge",
    ...readMadeWords(figure),
    x: axis,
    rows: readBridgeRows(rows, axis.unit),
  };
  const data = bridgeData(content);
  return readOf(content, data, bridgeSpec);
}

/** @internal The rows of a bridge, from its two ends and the causes between. */
export function bridgeRows({ from, steps, to }: BridgeFigureOptions, unit: string): readonly BridgeFigureRow[] {
  readKeys("from", from, ["label", "value"]);
  let total = readMeasure("from.value", from.value, unit);
  const start = { label: readText("from.label", from.label), total };
  const causes = readList("steps", steps).map((step, index) => {
    const where = `steps[${index}]`;
    readKeys(where, step, ["label", "change"]);
    const change = readMeasure(`${where}.change`, step.change, unit);
    total += change;
    return { label: readText(`${where}.label`, step.label), change, total };
  });
  return readBridgeRows([start, ...causes, { label: readText("to", to), total }], unit);
}

function readBridgeRows(given: readonly BridgeFigureRow[], unit: string): readonly BridgeFigureRow[] {
  const rows = readList("rows", given).map((row, index): BridgeFigureRow => {
    const where = `rows[${index}]`;
    readKeys(where, row, ["label", "change?", "total"]);
    const change = readOptionalMeasure(`${where}.change`, row.change, unit);
    const total = readMeasure(`${where}.total`, row.total, unit);
    return Object.freeze({
      label: readText(`${where}.label`, row.label),
      ...(change === undefined ? {} : { change }),
      total,
    });
  });
  return Object.freeze(rows);
}

function bridgeData({ x, rows }: BridgeContent): DataTable {
  return {
    columns: dataColumns([
      { title: "Cause", unit: "", values: rows.map(({ label }) => label) },
      { title: "Change", unit: x.unit, values: rows.map(({ change }) => change) },
      { title: x.title, unit: x.unit, values: rows.map(({ total }) => total) },
    ]),
    notes: [],
  };
}

/** @internal */
export function bridgeSpec(content: BridgeContent, size: ReadSize): VegaLiteSpec {
  const { rows, x } = content;
  const { scale, look } = size;
  const half = (THICKNESS / 2) * scale;
  // The steps are what a bridge is about. Bars that began at zero would leave no room for them, so the ends are rules.
  const bounds = boundsOf(rows.map(({ total }) => total));
  const printer = printerOf(
    rows.flatMap(({ change, total }) => [change ?? 0, total]),
    x,
  );
  return rowPicture(
    {
      words: content,
      axis: x,
      rows: rows.map(({ label, change, total }) => ({
        label,
        note: change === undefined ? printer.value(total) : printer.change(change),
      })),
      bounds,
      mark: 26,
      marks: (across, centres) => {
        const placed = rows.map(({ label, change = 0, total }, index) => {
          const y = centres[index] as number;
          return { label, change, from: total - change, total, y: y - half, y2: y + half };
        });
        const isEnd = (index: number) => rows[index]?.change === undefined;
        const bars = (
          values: readonly (typeof placed)[number][],
          mark: { readonly [key: string]: string | number },
        ): Layer => ({
          data: { values },
          mark: { type: "rect", ...mark },
          encoding: { x: across.channel("from"), x2: { field: "total" }, y: pixels("y"), y2: { field: "y2" } },
        });
        const steps = placed.filter((_, index) => !isEnd(index));
        const ends = placed.filter((_, index) => isEnd(index));
        const links = placed.slice(1).map(({ from, y }, index) => {
          const pixel = across.toPixel(from);
          return { x: pixel, x2: pixel, y: placed[index]?.y2 ?? y, y2: y };
        });
        return withData([
          ...rules(links, { color: look.axis, width: scale }),
          // Filled where something is added, hollow where it is taken away: to be told apart without colour.
          bars(
            steps.filter(({ change }) => change >= 0),
            { color: look.accent },
          ),
          bars(
            steps.filter(({ change }) => change < 0),
            {
              fill: look.ground,
              stroke: look.accent,
              strokeWidth: 2.5 * scale,
            },
          ),
          {
            data: { values: ends },
            mark: { type: "rule", color: look.text, strokeWidth: 5 * scale },
            encoding: { x: across.channel("total"), y: pixels("y"), y2: { field: "y2" } },
          },
        ]);
      },
    },
    size,
  );
}
