import { describeGiven, InputError, readOptions } from "@tarewatt/units";
import type { FigureContent } from "./line-spec.js";
import { apart, roundTicks, type Ticks } from "./ticks.js";

/** Size of a picture, and what it holds. */
export interface PictureSize {
  /** Width of the plot between its axes, in pixels, 200 to 4000; 640 when left out. Labels stand to the right of it. */
  readonly width?: number | undefined;
  /** Height of the plot, in pixels, 120 to 4000; 360 when left out. */
  readonly height?: number | undefined;
  /** Print the caption below the picture; `false` where the page around it prints the caption. */
  readonly caption?: boolean | undefined;
}

/** One direction of the plot. */
interface Direction {
  readonly domain: readonly [number, number];
  readonly ticks: Ticks;
  readonly toPixel: (value: number) => number;
  readonly ofPixel: (pixel: number) => number;
}

/** @internal The plot: its size and its two scales. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly x: Direction;
  readonly y: Direction;
}

/** @internal */
export function readSize(
  where: string,
  size: object,
  others: readonly string[] = [],
): { width: number; height: number } {
  const rules = {
    width: { unit: "1", atLeast: 200, atMost: 4000, optional: true },
    height: { unit: "1", atLeast: 120, atMost: 4000, optional: true },
  } as const;
  const { width, height } = readOptions(where, size, rules, ["caption?", ...others]);
  const { caption } = size as PictureSize;
  if (caption !== undefined && typeof caption !== "boolean") {
    throw new InputError("WRONG_CHOICE", `caption must be true or false: got ${describeGiven(caption)}`, {});
  }
  return { width: width ?? 640, height: height ?? 360 };
}

/** @internal */
export function frameOf({ rows, targets }: FigureContent, size: PictureSize): Frame {
  const { width, height } = readSize("the picture", size);
  const xs = [...rows.map(({ x }) => x), ...targets.flatMap(({ x }) => (x === undefined ? [] : [x]))];
  const ys = [
    ...rows.flatMap(({ y, low, high }) => [y, low ?? y, high ?? y]),
    ...targets.flatMap(({ value }) => (value === undefined ? [] : [value])),
  ];
  const across = apart(...boundsOf(xs));
  const up = roundTicks(...fromZero(...apart(...boundsOf(ys))), height / 60);
  const [first = 0, last = 1] = [up.values[0], up.values.at(-1)];
  return {
    width,
    height,
    x: direction(across, roundTicks(...across, width / 80), 0, width),
    y: direction([first, last], up, height, 0),
  };
}

function direction(domain: readonly [number, number], ticks: Ticks, start: number, end: number): Direction {
  const [low, high] = domain;
  return {
    domain,
    ticks,
    toPixel: (value) => start + ((value - low) / (high - low)) * (end - start),
    ofPixel: (pixel) => low + ((pixel - start) / (end - start)) * (high - low),
  };
}

// A loop and not Math.min(...values): the arguments of a call are limited, the points of a figure are not.
function boundsOf(values: readonly number[]): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return [low, high];
}

/** An axis that would begin near zero begins at zero. */
function fromZero(low: number, high: number): readonly [number, number] {
  return low > 0 && low < 0.4 * high ? [0, high] : [low, high];
}
