import { frozen } from "../check/frozen.js";
import type { Look } from "./look.js";

/** @internal How one series is drawn. */
export interface Stroke {
  readonly colour: string;
  /** Lengths of dash and gap in pixels; empty for a full line. */
  readonly dash: readonly number[];
}

/** @internal Dashes in the order they are used: each its own, so that lines can be told apart without any colour. */
export const dashes: readonly (readonly number[])[] = /* @__PURE__ */ frozen([
  [],
  [9, 4],
  [2, 3],
  [14, 4, 3, 4],
  [6, 3],
  [18, 3],
  [3, 6],
]);

/** @internal The stroke of a series by its place. */
export function strokeOf({ lines }: Look, index: number, scale: number): Stroke {
  const dash = dashes[index % dashes.length] as readonly number[];
  return { colour: lines[index % lines.length] as string, dash: dash.map((length) => length * scale) };
}
