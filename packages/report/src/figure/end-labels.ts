import type { JsonValue, LinePoint } from "./figure.js";
import type { Frame } from "./frame.js";
import type { FigureContent } from "./line-spec.js";
import { inks, strokeOf } from "./palette.js";
import { spreadApart } from "./spread-apart.js";
import { wrap } from "./wrap.js";

const MOST_LETTERS = 26;
const GAP = 5;
// Up to so many bands each one is labelled where it is; more would only repeat what the caption says.
const MOST_BAND_LABELS = 2;
const NAME = { size: 14, lead: 18 };
const SMALL = { size: 13, lead: 16 };

/** @internal A label at the right edge: its lines, where it stands and what it belongs to. */
export interface EndLabel {
  readonly name: readonly string[];
  readonly small: readonly string[];
  readonly height: number;
  /** Height of its centre in the plot, in pixels from the top. */
  readonly centre: number;
  /** End of the line or rule that it belongs to, in data. */
  readonly end: { readonly x: number; readonly y: number };
  /** Colour of the leader between the end and the label. */
  readonly colour: string;
}

/** @internal Names of the series and labels of the horizontal targets, kept apart from each other. */
export function endLabels({ series, targets, band }: FigureContent, frame: Frame): readonly EndLabel[] {
  const bands = series.filter(({ points }) => points[0]?.low !== undefined).length;
  const named = series.map(({ name, points }, index) => {
    const last = points.at(-1) as LinePoint;
    const small = last.low !== undefined && bands <= MOST_BAND_LABELS ? wrap(`shaded: ${band}`, MOST_LETTERS) : [];
    return { name: wrap(name, MOST_LETTERS), small, end: { x: last.x, y: last.y }, colour: strokeOf(index).colour };
  });
  const ruled = targets.flatMap(({ label, value }) =>
    value === undefined
      ? []
      : [{ name: [], small: wrap(label, MOST_LETTERS), end: { x: frame.x.domain[1], y: value }, colour: inks.axis }],
  );
  const all = [...named, ...ruled].map((label) => ({
    ...label,
    height: label.name.length * NAME.lead + label.small.length * SMALL.lead,
  }));
  const centres = spreadApart(
    all.map(({ end, height }) => ({ centre: frame.y.toPixel(end.y), height })),
    GAP,
  );
  return all.map((label, index) => ({ ...label, centre: centres[index] as number }));
}

type Channels = Readonly<Record<"at" | "up", (field: string) => { readonly [key: string]: JsonValue }>>;

/** @internal The labels as layers: thin leaders where a label stands away from its line, then the texts. */
export function labelLayers(labels: readonly EndLabel[], frame: Frame, { at, up }: Channels): readonly JsonValue[] {
  const edge = frame.x.domain[1];
  const lines = labels.flatMap(({ name, small, centre, height }) => {
    let top = centre - height / 2;
    return [...name.map((text) => ({ text, ...NAME })), ...small.map((text) => ({ text, ...SMALL }))].map((line) => {
      top += line.lead;
      return { text: line.text, size: line.size, x: edge, y: frame.y.ofPixel(top - line.lead / 2) };
    });
  });
  const texts = ([NAME, SMALL] as const).flatMap(({ size }): JsonValue[] => {
    const values = lines.filter((line) => line.size === size).map(({ text, x, y }) => ({ text, x, y }));
    const look = size === NAME.size ? { color: inks.text, fontWeight: "bold" } : { color: inks.quiet };
    const mark = { type: "text", align: "left", baseline: "middle", dx: 20, fontSize: size, ...look };
    return values.length === 0
      ? []
      : [{ data: { values }, mark, encoding: { x: at("x"), y: up("y"), text: { field: "text" } } }];
  });
  return [...leaderLayers(labels, frame, { at, up }), ...texts];
}

/**
 * A leader has the colour of its line, so that it can be followed where several lines end close together. Where the line ends
 * early it is only dotted: nobody must take it for more of the line.
 */
function leaderLayers(labels: readonly EndLabel[], frame: Frame, { at, up }: Channels): readonly JsonValue[] {
  const edge = frame.x.domain[1];
  const leaders = labels
    .filter(({ end, centre }) => end.x < edge || Math.abs(centre - frame.y.toPixel(end.y)) > 3)
    .map(({ end, centre, colour }) => ({ x: end.x, y: end.y, edge, y2: frame.y.ofPixel(centre), colour }));
  const color = { field: "colour", type: "nominal", scale: null };
  const encoding = { x: at("x"), x2: { field: "edge" }, y: up("y"), y2: { field: "y2" }, color };
  const mark = { type: "rule", strokeWidth: 1.25, xOffset: 4, x2Offset: 16 };
  return [
    { data: { values: leaders.filter(({ x }) => x < edge) }, mark: { ...mark, strokeDash: [1, 4] }, encoding },
    { data: { values: leaders.filter(({ x }) => x === edge) }, mark, encoding },
  ].filter(({ data }) => data.values.length > 0);
}
