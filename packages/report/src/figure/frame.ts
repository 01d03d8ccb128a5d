import type { LineContent } from "./line-spec.js";
import { apart, boundsOf, roundTicks, type Ticks } from "./ticks.js";

/** One direction of the plot. */
interface Direction {
  readonly domain: readonly [number, number];
  readonly ticks: Ticks;
  readonly toPixel: (value: number) => number;
}

/** @internal The plot: its size and its two scales. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly x: Direction;
  readonly y: Direction;
}

/** @internal The scales of a plot; `scale` is the size of its letters against those of a page. */
export function frameOf(
  { rows, targets }: Pick<LineContent, "rows" | "targets">,
  { width, height, scale }: { readonly width: number; readonly height: number; readonly scale: number },
): Frame {
  const xs = [...rows.map(({ x }) => x), ...targets.flatMap(({ x }) => (x === undefined ? [] : [x]))];
  const ys = [
    ...rows.flatMap(({ y, low, high }) => [y, low ?? y, high ?? y]),
    ...targets.flatMap(({ value }) => (value === undefined ? [] : [value])),
  ];
  const across = apart(...boundsOf(xs));
  const up = roundTicks(...fromZero(...apart(...boundsOf(ys))), Math.max(2, height / (60 * scale)));
  const [first = 0, last = 1] = [up.values[0], up.values.at(-1)];
  const round = roundTicks(...across, Math.max(2, width / (80 * scale)));
  const inside = round.values.filter((tick) => tick >= across[0] && tick <= across[1]);
  return {
    width,
    height,
    x: direction(across, { ...round, values: inside }, 0, width),
    y: direction([first, last], up, height, 0),
  };
}

function direction(domain: readonly [number, number], ticks: Ticks, start: number, end: number): Direction {
  const [low, high] = domain;
  return { domain, ticks, toPixel: (value) => start + ((value - low) / (high - low)) * (end - start) };
}

/** An axis that would begin near zero begins at zero. */
function fromZero(low: number, high: number): readonly [number, number] {
  return low > 0 && low < 0.4 * high ? [0, high] : [low, high];
}
