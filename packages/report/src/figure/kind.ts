import type { Grid } from "../table/grid.js";
import type { VegaLiteSpec } from "./figure.js";
import type { ReadSize } from "./picture-size.js";

/** @internal A figure of any kind, read again: what its printed forms and its picture are made from. */
export interface ReadFigure {
  readonly title: string;
  readonly caption: string;
  readonly description: string;
  readonly grid: () => Grid;
  readonly records: () => readonly (readonly string[])[];
  readonly spec: (size: ReadSize) => VegaLiteSpec;
}
