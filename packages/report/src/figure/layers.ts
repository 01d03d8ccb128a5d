import type { JsonValue } from "./figure.js";

/** @internal A layer of a specification. */
export type Layer = { readonly [key: string]: JsonValue };

/** @internal A place in the plot, in pixels from its upper left corner. */
export interface PlacedText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

/** @internal How texts look. */
export interface TextLook {
  readonly size: number;
  readonly color: string;
  readonly align?: "left" | "center" | "right";
  readonly bold?: boolean;
}

const PIXELS = { type: "quantitative", scale: null } as const;

/** @internal A channel whose numbers are pixels. */
export function pixels(field: string): Layer {
  return { field, ...PIXELS };
}

/** @internal Texts at places in pixels, centred on their height. */
export function texts(
  values: readonly PlacedText[],
  { size, color, align = "left", bold = false }: TextLook,
): readonly Layer[] {
  if (values.length === 0) return [];
  return [
    {
      data: { values: values.map(({ text, x, y }) => ({ text, x, y })) },
      mark: { type: "text", align, baseline: "middle", fontSize: size, color, fontWeight: bold ? "bold" : "normal" },
      encoding: { x: pixels("x"), y: pixels("y"), text: { field: "text" } },
    },
  ];
}

/** @internal A straight line between two places in pixels. */
export interface PlacedRule {
  readonly x: number;
  readonly y: number;
  readonly x2: number;
  readonly y2: number;
}

/** @internal */
export function rules(
  values: readonly PlacedRule[],
  {
    color,
    width = 1,
    dash = [],
  }: { readonly color: string; readonly width?: number; readonly dash?: readonly number[] },
): readonly Layer[] {
  if (values.length === 0) return [];
  return [
    {
      data: { values: values.map(({ x, y, x2, y2 }) => ({ x, y, x2, y2 })) },
      mark: { type: "rule", color, strokeWidth: width, strokeDash: dash },
      encoding: { x: pixels("x"), y: pixels("y"), x2: { field: "x2" }, y2: { field: "y2" } },
    },
  ];
}

/** @internal The layers that have something to draw. */
export function withData(layers: readonly Layer[]): readonly Layer[] {
  return layers.filter(({ data }) => (data as { readonly values: readonly unknown[] }).values.length > 0);
}
