/** Which figure of an output crosses a target. */
export type CrossingLine = "likely" | "p10" | "p50" | "p90";

/** @internal Where a line through points meets a target, by straight lines between them; gaps are no crossings. */
export function crossingsOf(
  xs: readonly number[],
  ys: readonly (number | undefined)[],
  target: number,
): readonly { readonly value: number; readonly rising: boolean }[] {
  return xs.slice(1).flatMap((x, i) => {
    const [x0, y0, y1] = [xs[i] as number, ys[i], ys[i + 1]];
    if (y0 === undefined || y1 === undefined) return [];
    const [a, b] = [y0 - target, y1 - target];
    // A point that lies on the target belongs to the piece that begins there; the last point to the piece that ends there.
    const last = i === xs.length - 2;
    if (!(a * b < 0 || (a === 0 && b !== 0) || (last && b === 0 && a !== 0))) return [];
    return [{ value: x0 + ((x - x0) * a) / (a - b), rising: b > a }];
  });
}
