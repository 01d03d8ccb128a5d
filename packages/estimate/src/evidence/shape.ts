/**
 * @internal A distribution on plain numbers. Draws are made by its quantile alone, so that one uniform number, addressed by seed, input
 * and index, gives one value.
 */
export interface Shape {
  /** What it is called. */
  readonly name: ShapeName;
  /** The value below which a share u lies, 0 ≤ u ≤ 1. */
  readonly quantile: (u: number) => number;
  /** The share that lies at or below x. */
  readonly cdf: (x: number) => number;
  /** Mean and standard deviation. */
  readonly moments: () => Moments;
  /** Where it ends, infinite where it does not. */
  readonly ends: readonly [from: number, to: number];
}

/** How the spread of a piece of evidence is shaped. */
export type ShapeName =
  | "exact"
  | "low/likely/high"
  | "at least"
  | "at most"
  | "uniform"
  | "triangular"
  | "PERT"
  | "normal"
  | "log-normal"
  | "samples";

/** @internal */
export interface Moments {
  readonly mean: number;
  readonly standardDeviation: number;
}

/** @internal All at one value. */
export function exactShape(value: number): Shape {
  return {
    name: "exact",
    quantile: () => value,
    cdf: (x) => (x < value ? 0 : 1),
    moments: () => ({ mean: value, standardDeviation: 0 }),
    ends: [value, value],
  };
}

const NODES = 4096;

/** @internal Mean and standard deviation from the quantile alone, by the midpoint rule: 1e-4 of the deviation, or better. */
export function momentsOf(quantile: (u: number) => number): Moments {
  const values = Array.from({ length: NODES }, (_, i) => quantile((i + 0.5) / NODES));
  const mean = values.reduce((sum, each) => sum + each, 0) / NODES;
  const variance = values.reduce((sum, each) => sum + (each - mean) ** 2, 0) / NODES;
  return { mean, standardDeviation: Math.sqrt(variance) };
}

/**
 * @internal The part of a distribution between two limits, made whole again: u becomes F(from) + u·(F(to) − F(from)).
 * Undefined when less of it is there than `leastShare`.
 */
export function cutShape(shape: Shape, from: number, to: number, leastShare: number): Shape | undefined {
  if (shape.ends[0] >= from && shape.ends[1] <= to) return shape;
  const below = from === Number.NEGATIVE_INFINITY ? 0 : shape.cdf(from);
  const share = (to === Number.POSITIVE_INFINITY ? 1 : shape.cdf(to)) - below;
  if (!(share >= leastShare)) return undefined;
  const quantile = (u: number): number => Math.min(to, Math.max(from, shape.quantile(below + u * share)));
  return {
    name: shape.name,
    quantile,
    cdf: (x) => Math.min(1, Math.max(0, (shape.cdf(x) - below) / share)),
    moments: () => momentsOf(quantile),
    ends: [Math.max(from, shape.ends[0]), Math.min(to, shape.ends[1])],
  };
}
