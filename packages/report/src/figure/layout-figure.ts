import { frozen } from "../check/frozen.js";
import { readKeys } from "../check/read.js";
import { showFigure } from "../notebook/show-figure.js";
import type { LayoutFigure, LayoutFigureOptions } from "./layout.js";
import { readViews, shapeRows } from "./layout-kind.js";
import { layoutSpec } from "./layout-spec.js";
import { readSize } from "./picture-size.js";
import { readWords, wordKeys } from "./words.js";

/**
 * A figure of rectangles and circles to scale: the cells of a pack from above and from the side, say. All views have one scale,
 * which a bar shows. Thousands of cells are drawn as one path.
 *
 * @param options - title, views with the size of the space and the shapes in it, caption, source, date and a description; all
 * lengths are plain numbers in millimetres, counted from the lower left corner of the space
 * @returns an immutable figure
 * @throws ReportError `REPEATED_NAME` when two views have one title, `NOT_A_TEXT`, `NO_ROOM`
 * @throws InputError `EMPTY` without views or shapes, `NOT_A_NUMBER`, `OUT_OF_RANGE` for a size of 0 or less, beyond 10⁶ mm, or
 * more than three views, `WRONG_CHOICE`, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @example
 * const cells = layoutFigure({
 *   title: "Two cells in a box",
 *   views: [{
 *     ...{ title: "Plan", width: 100, height: 50 },
 *     shapes: [{ shape: "circle", x: 0, y: 0, diameter: 46 }, { shape: "rectangle", x: 50, y: 0, width: 48, height: 46 }],
 *   }],
 *   description: "A round cell and a square one stand side by side in a box of 100 mm by 50 mm.",
 * });
 * cells.rows[0]?.width; // 46
 */
export function layoutFigure(options: LayoutFigureOptions): LayoutFigure {
  readKeys("layoutFigure", options, [...wordKeys, "views"]);
  const views = readViews(options.views);
  const rows = shapeRows(options.views);
  const content = { kind: "layout" as const, ...readWords(options, "To scale"), views, rows };
  return showFigure({ ...content, spec: frozen(layoutSpec(content, readSize("the picture", {}))) });
}
