import { InputError } from "@tarewatt/units";
import { readKeys, readList, readRecord, readString, refuseRepeats } from "../check/read.js";
import { type DataTable, dataColumns } from "./data-table.js";
import type { VegaLiteSpec } from "./figure.js";
import { type ReadFigure, readOf } from "./kind.js";
import { readTargets, rowsOf, targetNote } from "./line-kind.js";
import { panelsSpec } from "./line-spec.js";
import type { Panel, PanelFigure, PanelFigureRow } from "./panel.js";
import type { ReadSize } from "./picture-size.js";
import { readAxis, readSeries } from "./read-line.js";
import { readMadeWords } from "./words.js";

/** @internal What a panel figure is drawn and printed from. */
export type PanelContent = Omit<PanelFigure, "spec">;

const MOST_PANELS = 4;

/** @internal Reads a figure that was made before. */
export function readPanelFigure(given: PanelFigure): ReadFigure {
  const figure = readRecord("figure", given);
  const { x, panels, band } = figure;
  const read = readPanels(panels);
  const content: PanelContent = {
    kind: "panel",
    ...readMadeWords(figure),
    x: readAxis("x", x),
    panels: read,
    band: readString("band", band),
    rows: panelRows(read),
  };
  const data = panelData(content);
  return readOf(content, data, panelSpec);
}

/** @internal */
export function readPanels(given: readonly Panel[]): readonly Panel[] {
  const panels = readList("panels", given).map((panel, index) => {
    const where = `panels[${index}]`;
    readKeys(where, panel, ["y", "series", "targets?"]);
    const targets = readTargets(panel.targets ?? []);
    return Object.freeze({ y: readAxis(`${where}.y`, panel.y), series: readSeries(panel.series), targets });
  });
  if (panels.length > MOST_PANELS) {
    throw new InputError(
      "OUT_OF_RANGE",
      `panels must be at most ${MOST_PANELS}: got ${panels.length}; make two figures`,
      {
        given: panels.length,
      },
    );
  }
  refuseRepeats(
    "the vertical axis",
    panels.map(({ y }) => y.title),
  );
  return Object.freeze(panels);
}

/** @internal All points of all panels, row by row. */
export function panelRows(panels: readonly Panel[]): readonly PanelFigureRow[] {
  const rows = panels.flatMap(({ y, series }) =>
    rowsOf(series).map((row): PanelFigureRow => Object.freeze({ panel: y.title, ...row })),
  );
  return Object.freeze(rows);
}

function panelData({ x, panels, rows }: PanelContent): DataTable {
  const unitOf = (panel: string) => panels.find(({ y }) => y.title === panel)?.y.unit ?? "";
  return {
    columns: dataColumns([
      { title: "Panel", unit: "", values: rows.map(({ panel }) => [panel, unitOf(panel)].filter(notOne).join(", ")) },
      { title: "Series", unit: "", values: rows.map(({ series }) => series) },
      { title: x.title, unit: x.unit, values: rows.map((row) => row.x) },
      { title: "Value", unit: "", values: rows.map(({ y }) => y) },
      { title: "Low", unit: "", values: rows.map(({ low }) => low) },
      { title: "High", unit: "", values: rows.map(({ high }) => high) },
    ]),
    notes: panels.flatMap(({ y, targets = [] }) => targets.map((target) => targetNote(target, { x, y }))),
  };
}

function notOne(text: string): boolean {
  return text !== "" && text !== "1";
}

/** @internal */
export function panelSpec(
  { title, caption, description, x, panels, band }: PanelContent,
  size: ReadSize,
): VegaLiteSpec {
  const drawn = panels.map(({ y, series, targets = [] }) => ({ y, series, targets, band }));
  return panelsSpec({ title, caption, description, x, panels: drawn }, size);
}
