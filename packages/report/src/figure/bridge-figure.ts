import { frozen } from "../check/frozen.js";
import { readKeys } from "../check/read.js";
import { showFigure } from "../notebook/show-figure.js";
import type { BridgeFigure, BridgeFigureOptions } from "./bridge.js";
import { bridgeRows, bridgeSpec } from "./bridge-kind.js";
import { readValueAxis } from "./measure.js";
import { readSize } from "./picture-size.js";
import { readWords, wordKeys } from "./words.js";

/**
 * A bridge from one figure to another, one cause a row: what each adds or takes away, and the running total.
 *
 * @param options - title, axis, where the bridge begins, the signed causes in order, the name of where it ends, caption, source, date
 * and a description; bare numbers are in the unit of the axis, quantities are converted to it
 * @returns an immutable figure; the last total is the sum of the start and all changes
 * @throws ReportError `NOT_A_TEXT`, `NO_ROOM`
 * @throws InputError `EMPTY` without steps, `NOT_A_NUMBER`, `OUT_OF_RANGE` beyond 10¹⁵, `UNKNOWN_OPTION`, `MISSING_OPTION`
 * @throws QuantityError when a quantity measures something else than the axis
 * @example
 * const bridge = bridgeFigure({
 *   title: "From the announced range to ours",
 *   x: { title: "Range", unit: "km", also: "mi" },
 *   from: { label: "Announced", value: 480 },
 *   steps: [{ label: "Smaller usable energy", change: -35 }, { label: "Less drag", change: q("12 km") }],
 *   to: "Our estimate",
 *   description: "The announced 480 km come down to 457 km, mostly for a smaller usable energy.",
 * });
 * bridge.rows.at(-1)?.total; // 457
 */
export function bridgeFigure(options: BridgeFigureOptions): BridgeFigure {
  readKeys("bridgeFigure", options, [...wordKeys, "x", "from", "steps", "to"]);
  const x = readValueAxis("x", options.x);
  const rows = bridgeRows(options, x.unit);
  const words = readWords(options, "Filled: adds; hollow: takes away; upright marks: the two ends");
  const content = { kind: "bridge" as const, ...words, x, rows };
  return showFigure({ ...content, spec: frozen(bridgeSpec(content, readSize("the picture", {}))) });
}
