/**
 * Tables, figures, working and pages: one result in many forms.
 *
 * @packageDocumentation
 */

export { ReportError, type ReportErrorCode } from "./check/errors.js";
export type { Remark, RemarkWithText } from "./check/remark.js";
export type {
  Axis,
  Figure,
  FigureRow,
  JsonValue,
  LevelTarget,
  LineFigureOptions,
  LinePoint,
  LineSeries,
  LineTarget,
  PlaceTarget,
  VegaLiteSpec,
} from "./figure/figure.js";
export { figureToCsv } from "./figure/figure-csv.js";
export { type FigureHtmlOptions, figureToHtml } from "./figure/figure-html.js";
export { figureToMarkdown } from "./figure/figure-markdown.js";
export { figureToText } from "./figure/figure-text.js";
export type { PictureSize } from "./figure/frame.js";
export { lineFigure } from "./figure/line-figure.js";
export { figureToSvg, type SvgOptions } from "./figure/to-svg.js";
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
