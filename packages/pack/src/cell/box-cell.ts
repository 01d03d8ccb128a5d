import { readOptions } from "@tarewatt/units";
import { boxVolume } from "./box-volume.js";
import type { BoxDimensions, CellProperties } from "./cell.js";
import { type BoxCellOptions, cellRules, cellTexts, LENGTH } from "./cell-options.js";
import { cellProperties } from "./cell-properties.js";

/** @internal What prismatic and pouch cells share: both are boxes. */
export function boxCell<const Form extends "prismatic" | "pouch">(
  where: string,
  form: Form,
  options: BoxCellOptions,
): Readonly<{ form: Form; dimensions: BoxDimensions } & CellProperties> {
  readOptions(where, options, { thickness: LENGTH, width: LENGTH, height: LENGTH, ...cellRules }, cellTexts);
  const { thickness, width, height } = options;
  const dimensions = Object.freeze({ thickness, width, height });
  return Object.freeze({
    form,
    dimensions,
    ...cellProperties(options, {
      form,
      sizes: [thickness, width, height],
      volume: boxVolume(dimensions),
      volumeStep: () => boxVolume.explain(dimensions),
    }),
  });
}
