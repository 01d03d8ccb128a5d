import { headLine } from "../table/grid.js";
import { formatPlaces } from "../table/number.js";
import type { ValueAxis } from "./figure.js";
import { type Layer, rules, texts } from "./layers.js";
import { alsoIn } from "./measure.js";
import { letters } from "./paper.js";
import type { ReadSize } from "./picture-size.js";
import { lineWidth, wrapTo } from "./text-width.js";
import { roundTicks, type Ticks } from "./ticks.js";

/** @internal A horizontal axis of values: where they stand, and what is drawn for it. */
export interface AcrossAxis {
  readonly domain: readonly [number, number];
  readonly toPixel: (value: number) => number;
  /** Channel for a field of values. */
  readonly channel: (field: string) => Layer;
  readonly layers: (height: number) => readonly Layer[];
}

const MOST_TICKS = 9;

/** @internal Round ticks that hold the bounds, as many as can be printed side by side. */
export function fittingTicks(low: number, high: number, width: number, size: number): Ticks {
  for (let wanted = MOST_TICKS; wanted > 1; wanted -= 1) {
    const ticks = roundTicks(low, high, wanted);
    const widest = Math.max(...ticks.values.map((value) => lineWidth(tickText(value, ticks), size)));
    if ((widest + size) * (ticks.values.length - 1) <= width) return ticks;
  }
  return roundTicks(low, high, 1);
}

/** @internal A tick as it is printed. */
export function tickText(value: number, { format }: Ticks): string {
  if (format === "~e") return Number(value.toPrecision(4)).toExponential().replace("-", "−");
  return formatPlaces(value, Number(/\.(\d+)f/.exec(format)?.[1] ?? 0));
}

/** @internal Room that an axis takes below the plot. */
export function axisRoom(axis: ValueAxis, width: number, { scale }: ReadSize): number {
  const titles = titlesOf(axis, width, scale);
  return (
    titles.reduce((sum, lines) => sum + (TICK_ROOM + lines.length * LEAD) * scale, 0) + (titles.length - 1) * 10 * scale
  );
}

const TICK_ROOM = 28;
const LEAD = 18;

function titlesOf(axis: ValueAxis, width: number, scale: number): readonly (readonly string[])[] {
  const units = axis.also === undefined ? [axis.unit] : [axis.unit, axis.also];
  return units.map((unit) => wrapTo(headLine({ title: axis.title, unit }), width, letters.label * scale));
}

/** @internal */
export function acrossAxis(
  axis: ValueAxis,
  bounds: readonly [number, number],
  width: number,
  size: ReadSize,
): AcrossAxis {
  const { scale } = size;
  const ticks = fittingTicks(bounds[0], bounds[1], width, letters.small * scale);
  const domain: readonly [number, number] = [ticks.values[0] as number, ticks.values.at(-1) as number];
  const place =
    ([low, high]: readonly [number, number]) =>
    (value: number) =>
      ((value - low) / (high - low)) * width;
  const toPixel = place(domain);
  const convert = alsoIn(axis);
  const titles = titlesOf(axis, width, scale);
  return {
    domain,
    toPixel,
    channel: (field) => ({ field, type: "quantitative", scale: { domain, nice: false, zero: false }, axis: null }),
    layers: (height) => {
      const { look } = size;
      const grid = ticks.values.map((value) => ({ x: toPixel(value), x2: toPixel(value), y: 0, y2: height }));
      const first = scaleLayers(ticks, toPixel, titles[0] ?? [], { top: height, width, size });
      if (convert === undefined) return [...rules(grid, { color: look.grid, width: scale }), ...first];
      const ends = [convert(domain[0]), convert(domain[1])] as const;
      const inside = fittingTicks(Math.min(...ends), Math.max(...ends), width, letters.small * scale);
      const kept = { ...inside, values: inside.values.filter((value) => within(place(ends)(value), width)) };
      const top = height + (TICK_ROOM + (titles[0]?.length ?? 1) * LEAD + 10) * scale;
      const second = scaleLayers(kept, place(ends), titles[1] ?? [], { top, width, size });
      return [...rules(grid, { color: look.grid, width: scale }), ...first, ...second];
    },
  };
}

function within(pixel: number, width: number): boolean {
  return pixel > -1e-6 && pixel < width + 1e-6;
}

/** @internal A horizontal scale: its line, ticks, numbers and title. */
export function scaleLayers(
  ticks: Ticks,
  toPixel: (value: number) => number,
  title: readonly string[],
  { top, width, size }: { readonly top: number; readonly width: number; readonly size: ReadSize },
): readonly Layer[] {
  const { scale, look } = size;
  const marks = ticks.values.map((value) => ({ x: toPixel(value), x2: toPixel(value), y: top, y2: top + 5 * scale }));
  const labels = ticks.values.map((value) => ({
    text: tickText(value, ticks),
    x: toPixel(value),
    y: top + 15 * scale,
  }));
  const titles = title.map((text, line) => ({
    text,
    x: width / 2,
    y: top + (TICK_ROOM + (line + 0.5) * LEAD) * scale,
  }));
  const centred = { color: look.text, align: "center" } as const;
  return [
    ...rules([{ x: 0, x2: width, y: top, y2: top }, ...marks], { color: look.axis, width: scale }),
    ...texts(labels, { size: letters.small * scale, ...centred }),
    ...texts(titles, { size: letters.label * scale, ...centred }),
  ];
}
