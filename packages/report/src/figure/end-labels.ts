import type { LinePoint } from "./figure.js";
import type { Frame } from "./frame.js";
import { type Layer, rules, texts } from "./layers.js";
import type { LinePanel } from "./line-spec.js";
import { strokeOf } from "./palette.js";
import { letters } from "./paper.js";
import type { ReadSize } from "./picture-size.js";
import { keepInside, spreadApart } from "./spread-apart.js";
import { lineWidth, wrapTo } from "./text-width.js";

const GAP = 5;
/** Room for the leaders between the plot and its labels. */
const LEADER = 20;
// Up to so many bands each one is labelled where it is; more would only repeat what the caption says.
const MOST_BAND_LABELS = 2;
const WIDEST = 0.3;
const LEAD = 1.3;

/** @internal A label at the right edge, not yet placed: its lines, and the end of the line or rule that it belongs to. */
export interface EndLabel {
  readonly name: readonly string[];
  readonly small: readonly string[];
  readonly height: number;
  readonly end: { readonly x: number | undefined; readonly y: number };
  /** Colour of the leader between the end and the label. */
  readonly colour: string;
}

/** @internal Names of the series and labels of the horizontal targets, with the room that they take. */
export function endLabels(
  { series, targets, band }: LinePanel,
  { width: whole, scale, look }: ReadSize,
): { readonly labels: readonly EndLabel[]; readonly width: number; readonly height: number } {
  const bands = series.filter(({ points }) => points[0]?.low !== undefined).length;
  const most = WIDEST * whole;
  const sizes = { name: letters.label * scale, small: letters.small * scale };
  const named = series.map(({ name, points }, index) => {
    const last = points.at(-1) as LinePoint;
    const small =
      last.low !== undefined && bands <= MOST_BAND_LABELS ? wrapTo(`shaded: ${band}`, most, sizes.small) : [];
    const colour = strokeOf(look, index, scale).colour;
    return { name: wrapTo(name, most, sizes.name, "bold"), small, end: { x: last.x, y: last.y }, colour };
  });
  const ruled = targets.flatMap(({ label, value }) =>
    value === undefined
      ? []
      : [{ name: [], small: wrapTo(label, most, sizes.small), end: { x: undefined, y: value }, colour: look.axis }],
  );
  const labels = [...named, ...ruled].map((label) => ({
    ...label,
    height: (label.name.length * sizes.name + label.small.length * sizes.small) * LEAD,
  }));
  const widths = labels.flatMap(({ name, small }) => [
    ...name.map((text) => lineWidth(text, sizes.name, "bold")),
    ...small.map((text) => lineWidth(text, sizes.small)),
  ]);
  const height = labels.reduce((sum, label) => sum + label.height + GAP * scale, 0);
  return { labels, width: Math.ceil(Math.max(...widths)) + LEADER * scale, height };
}

/** @internal The labels as layers: thin leaders where a label stands away from its line, then the texts. */
export function labelLayers(labels: readonly EndLabel[], frame: Frame, { scale, look }: ReadSize): readonly Layer[] {
  const wishes = labels.map(({ end, height }) => ({ centre: frame.y.toPixel(end.y) - frame.top, height }));
  const gap = GAP * scale;
  const centres = keepInside(wishes, spreadApart(wishes, gap), { gap, room: frame.height });
  const left = frame.width + LEADER * scale;
  const placed = labels.map((label, index) => ({ ...label, centre: frame.top + (centres[index] as number) }));
  const lines = placed.flatMap(({ name, small, centre, height }) => {
    let top = centre - height / 2;
    return [...name.map((text) => ({ text, bold: true })), ...small.map((text) => ({ text, bold: false }))].map(
      (line) => {
        const lead = (line.bold ? letters.label : letters.small) * scale * LEAD;
        top += lead;
        return { ...line, x: left, y: top - lead / 2 };
      },
    );
  });
  return [
    ...placed.flatMap(({ end, centre, colour }) => leader({ end, centre, colour }, frame, scale)),
    ...texts(
      lines.filter(({ bold }) => bold),
      { size: letters.label * scale, color: look.text, bold: true },
    ),
    ...texts(
      lines.filter(({ bold }) => !bold),
      { size: letters.small * scale, color: look.quiet },
    ),
  ];
}

/**
 * A leader has the colour of its line, so that it can be followed where several lines end close together. Where the line ends
 * early it is only dotted: nobody must take it for more of the line.
 */
function leader(
  { end, centre, colour }: Pick<EndLabel, "end" | "colour"> & { readonly centre: number },
  frame: Frame,
  scale: number,
): readonly Layer[] {
  const x = end.x === undefined ? frame.width : frame.x.toPixel(end.x);
  const y = frame.y.toPixel(end.y);
  const early = x < frame.width - 1e-6;
  if (!early && Math.abs(centre - y) <= 3 * scale) return [];
  const line = { x: x + 4 * scale, y, x2: frame.width + (LEADER - 4) * scale, y2: centre };
  return rules([line], { color: colour, width: 1.25 * scale, dash: early ? [scale, 4 * scale] : [] });
}
