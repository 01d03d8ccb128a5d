import { frozen } from "../check/frozen.js";

/** @internal How one series is drawn. */
export interface Stroke {
  readonly name: string;
  readonly colour: string;
  /** Lengths of dash and gap in pixels; empty for a full line. */
  readonly dash: readonly number[];
}

/**
 * @internal Strokes in the order they are used. The colours are those that Okabe and Ito chose to be told apart by people of
 * any colour vision ("Color Universal Design", 2008; remembered, not checked), without their yellow, which is lost on white.
 * The order alternates dark and light and the dashes differ, so that a print in grey can be read.
 */
export const strokes: readonly Stroke[] = /* @__PURE__ */ frozen([
  { name: "deep blue", colour: "#0072b2", dash: [] },
  { name: "brick", colour: "#d55e00", dash: [9, 4] },
  { name: "soot", colour: "#000000", dash: [2, 3] },
  { name: "pine", colour: "#009e73", dash: [14, 4, 3, 4] },
  { name: "plum", colour: "#cc79a7", dash: [6, 3] },
  { name: "amber", colour: "#e69f00", dash: [] },
  { name: "pale sky", colour: "#56b4e9", dash: [3, 5] },
]);

/** @internal The stroke of a series by its place. */
export function strokeOf(index: number): Stroke {
  return strokes[index % strokes.length] as Stroke;
}

/** @internal Colours of everything that is not data. */
export const inks = /* @__PURE__ */ Object.freeze({
  text: "#1c2128",
  quiet: "#57606a",
  grid: "#e4e7eb",
  axis: "#8b949e",
} as const);
