/**
 * Tables, figures, working and pages: one result in many forms.
 *
 * @packageDocumentation
 */

export { ReportError, type ReportErrorCode } from "./check/errors.js";
export type { Remark, RemarkWithText } from "./check/remark.js";
export type { BarFigure, BarFigureOptions, BarFigureRow, BarRow } from "./figure/bar.js";
export { barFigure } from "./figure/bar-figure.js";
export type { BridgeFigure, BridgeFigureOptions, BridgeFigureRow, BridgeStart, BridgeStep } from "./figure/bridge.js";
export { bridgeFigure } from "./figure/bridge-figure.js";
export type {
  DensityPoint,
  DistributionFigure,
  DistributionFigureOptions,
  DistributionFigureRow,
  DistributionTarget,
  HistogramBin,
  ReadDistributionTarget,
} from "./figure/distribution.js";
export { distributionFigure } from "./figure/distribution-figure.js";
export type {
  Axis,
  Figure,
  FigureParts,
  FigureRow,
  FigureWords,
  JsonValue,
  LevelTarget,
  LineFigure,
  LineFigureOptions,
  LinePoint,
  LineSeries,
  LineTarget,
  PlaceTarget,
  ValueAxis,
  VegaLiteSpec,
} from "./figure/figure.js";
export { figureToCsv } from "./figure/figure-csv.js";
export { type FigureHtmlOptions, figureToHtml } from "./figure/figure-html.js";
export { figureToMarkdown } from "./figure/figure-markdown.js";
export { figureToText } from "./figure/figure-text.js";
export type { IntervalFigure, IntervalFigureOptions, IntervalFigureRow, IntervalRow } from "./figure/interval.js";
export { intervalFigure } from "./figure/interval-figure.js";
export type {
  LayoutCircle,
  LayoutFigure,
  LayoutFigureOptions,
  LayoutFigureRow,
  LayoutRectangle,
  LayoutShape,
  LayoutView,
} from "./figure/layout.js";
export { layoutFigure } from "./figure/layout-figure.js";
export { lineFigure } from "./figure/line-figure.js";
export type { FigureTheme } from "./figure/look.js";
export type { Panel, PanelFigure, PanelFigureOptions, PanelFigureRow } from "./figure/panel.js";
export { panelFigure } from "./figure/panel-figure.js";
export type { PictureSize } from "./figure/picture-size.js";
export type { LabelledPoint, PointFigure, PointFigureOptions, PointFigureRow } from "./figure/point.js";
export { pointFigure } from "./figure/point-figure.js";
export type { StackBar, StackFigure, StackFigureOptions, StackFigureRow, StackPart } from "./figure/stack.js";
export { stackFigure } from "./figure/stack-figure.js";
export { figureToSvg } from "./figure/to-svg.js";
export { figureToVegaLite } from "./figure/to-vega-lite.js";
export { type ShownResult, type ShowOptions, show } from "./notebook/show.js";
export type { Block, FigureBlock, ListBlock, TableBlock, TextBlock, WorkingBlock } from "./page/blocks.js";
export { type Answer, type PageOptions, page, type Section } from "./page/page.js";
export type { SpreadLike, TableCell } from "./table/cell.js";
export type { Align, Column } from "./table/column.js";
export { type Table, type TableOptions, table } from "./table/table.js";
export { tableToCsv } from "./table/to-csv.js";
export { tableToHtml } from "./table/to-html.js";
export { tableToMarkdown } from "./table/to-markdown.js";
export { tableToText } from "./table/to-text.js";
export { references } from "./working/references.js";
export { workingToHtml } from "./working/to-html.js";
export { workingToMarkdown } from "./working/to-markdown.js";
export { workingToText } from "./working/to-text.js";
