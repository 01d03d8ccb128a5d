import type { LinePanel } from "./line-spec.js";
import { letters } from "./paper.js";
import { apart, boundsOf, roundTicks, type Ticks } from "./ticks.js";
import { fittingTicks } from "./value-axis.js";

/** One direction of the plot. */
interface Direction {
  readonly domain: readonly [number, number];
  readonly ticks: Ticks;
  /** Where the two ends of the domain stand, in pixels. */
  readonly range: readonly [number, number];
  readonly toPixel: (value: number) => number;
}

/** @internal One panel: its size, its upper edge in the plot, and its two scales. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly top: number;
  readonly x: Direction;
  readonly y: Direction;
}

/** @internal The horizontal scale that all panels share. */
export function acrossOf(panels: readonly LinePanel[], width: number, scale: number): Direction {
  const xs = panels.flatMap(({ series, targets }) => [
    ...series.flatMap(({ points }) => points.map(({ x }) => x)),
    ...targets.flatMap(({ x }) => (x === undefined ? [] : [x])),
  ]);
  const domain = apart(...boundsOf(xs));
  const round = fittingTicks(...domain, width, letters.small * scale);
  const inside = round.values.filter((tick) => tick >= domain[0] && tick <= domain[1]);
  return direction(domain, { ...round, values: inside }, [0, width]);
}

/** @internal The vertical scale of a panel. */
export function upOf(
  { series, targets }: LinePanel,
  { top, height, scale }: { readonly top: number; readonly height: number; readonly scale: number },
): Direction {
  const ys = [
    ...series.flatMap(({ points }) => points.flatMap(({ y, low, high }) => [y, low ?? y, high ?? y])),
    ...targets.flatMap(({ value }) => (value === undefined ? [] : [value])),
  ];
  const ticks = roundTicks(...fromZero(...apart(...boundsOf(ys))), Math.max(2, height / (60 * scale)));
  return direction([ticks.values[0] as number, ticks.values.at(-1) as number], ticks, [top + height, top]);
}

function direction(domain: readonly [number, number], ticks: Ticks, range: readonly [number, number]): Direction {
  const [low, high] = domain;
  const [start, end] = range;
  return { domain, ticks, range, toPixel: (value) => start + ((value - low) / (high - low)) * (end - start) };
}

/** An axis that would begin near zero begins at zero. */
function fromZero(low: number, high: number): readonly [number, number] {
  return low > 0 && low < 0.4 * high ? [0, high] : [low, high];
}
