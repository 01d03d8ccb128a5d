import { describeGiven, InputError } from "@tarewatt/units";
import { readRecord } from "../check/read.js";
import { readBarFigure } from "./bar-kind.js";
import { readBridgeFigure } from "./bridge-kind.js";
import { readDistributionFigure } from "./distribution-kind.js";
import type { Figure } from "./figure.js";
import { readIntervalFigure } from "./interval-kind.js";
import type { ReadFigure } from "./kind.js";
import { readLayoutFigure } from "./layout-kind.js";
import { readLineFigure } from "./line-kind.js";
import { readPanelFigure } from "./panel-kind.js";
import { readPointFigure } from "./point-kind.js";
import { readStackFigure } from "./stack-kind.js";
import { type MadeWords, readMadeWords } from "./words.js";

/** @internal A figure that is to be drawn or printed: of any copy of the library, or changed by hand, so it is read again. */
export function readFigure(given: Figure): ReadFigure {
  const figure = readRecord("figure", given);
  switch (figure.kind) {
    case "line":
      return readLineFigure(figure);
    case "interval":
      return readIntervalFigure(figure);
    case "stack":
      return readStackFigure(figure);
    case "bridge":
      return readBridgeFigure(figure);
    case "bar":
      return readBarFigure(figure);
    case "distribution":
      return readDistributionFigure(figure);
    case "point":
      return readPointFigure(figure);
    case "layout":
      return readLayoutFigure(figure);
    case "panel":
      return readPanelFigure(figure);
    default:
      throw notAFigure(figure);
  }
}

/** @internal The words of a figure alone, which is all that a page prints beside a picture. */
export function readFigureWords(given: Figure): MadeWords {
  const figure = readRecord("figure", given);
  const kinds: readonly unknown[] = [
    "line",
    "interval",
    "stack",
    "bridge",
    "bar",
    "distribution",
    "point",
    "layout",
    "panel",
  ] satisfies Figure["kind"][];
  if (!kinds.includes(figure.kind)) throw notAFigure(figure);
  return readMadeWords(figure);
}

function notAFigure({ kind }: { readonly kind?: unknown }): InputError {
  return new InputError(
    "WRONG_CHOICE",
    `figure must be made by a function of the library such as lineFigure: its kind is ${describeGiven(kind)}`,
    { name: "figure" },
  );
}
