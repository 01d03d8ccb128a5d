import { type FamilyMember, type FamilyPrior, vehicleFamily } from "./vehicle-family.js";

/** A vehicle and how much it counts. @internal */
export interface Weighted {
  readonly member: FamilyMember;
  readonly weight: number;
}

/**
 * The vehicle with the one property that makes it show the figure; undefined when none between the limits does. It counts as
 * much as the family has vehicles with that property per change of the figure: as if a large family had been searched for
 * those that show it.
 * @internal
 */
export function fitted(
  member: FamilyMember,
  free: "dragArea" | "efficiency",
  figureOf: (member: FamilyMember) => number,
  wanted: number,
): Weighted | undefined {
  const prior = vehicleFamily[free];
  const width = prior.high - prior.low;
  const off = (value: number): number => figureOf({ ...member, [free]: value }) - wanted;
  const found = rootBetween(prior.low, prior.high, off, TOLERANCE * wanted);
  if (found === undefined) return undefined;
  const slope = Math.abs(off(found + STEP * width) - off(found - STEP * width)) / (2 * STEP * width);
  return { member: { ...member, [free]: found }, weight: density(found, prior) / slope };
}

/** How exactly the figure is met, in parts of it. */
const TOLERANCE = 1e-7;

/**
 * Where a function that rises or falls throughout is zero, by false position in its Illinois form: a figure is nearly a
 * straight line over a property, so a few steps do. Undefined when it is not zero between the limits.
 */
function rootBetween(from: number, to: number, off: (value: number) => number, tolerance: number): number | undefined {
  let [a, b, atA, atB] = [from, to, off(from), off(to)];
  if (atA * atB > 0) return undefined;
  for (let step = 0; step < 60; step++) {
    const c = (a * atB - b * atA) / (atB - atA);
    const atC = off(c);
    if (Math.abs(atC) <= tolerance) return c;
    if (atC * atB < 0) [a, atA] = [b, atB];
    else atA /= 2;
    [b, atB] = [c, atC];
  }
  return b;
}

/** Step of the numerical slope, in parts of the width of a prior. */
const STEP = 1e-3;

/** Density of a triangular prior. */
function density(value: number, { low, likely, high }: FamilyPrior): number {
  const height = 2 / (high - low);
  return value < likely ? (height * (value - low)) / (likely - low) : (height * (high - value)) / (high - likely);
}

/** The value below which this part of the weight lies, the values sorted. @internal */
export function percentile(
  sorted: readonly { readonly value: number; readonly weight: number }[],
  part: number,
): number {
  const all = sorted.reduce((sum, { weight }) => sum + weight, 0);
  let below = 0;
  for (const { value, weight } of sorted) {
    below += weight;
    if (below >= part * all) return value;
  }
  return (sorted.at(-1) as { readonly value: number }).value;
}
