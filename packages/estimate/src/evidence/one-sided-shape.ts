import type { Shape } from "./shape.js";

/** Share of the whole reach of a falling half-triangle within which nine tenths of it lie. */
const NINE_TENTHS = 1 - /* @__PURE__ */ Math.sqrt(0.1);

/**
 * @internal A bound that is most likely just met: from it the density falls in a line to nothing, and nine times in ten the value lies
 * between the bound and `rarely`.
 */
export function oneSidedShape(name: "at least" | "at most", bound: number, rarely: number): Shape {
  const reach = (rarely - bound) / NINE_TENTHS;
  const end = bound + reach;
  const rises = name === "at least";
  /** Share that lies beyond x, seen from the bound. */
  const beyond = (x: number): number => (1 - Math.min(1, Math.max(0, (x - bound) / reach))) ** 2;
  return {
    name,
    quantile: (u) => bound + reach * (1 - Math.sqrt(rises ? 1 - u : u)),
    cdf: (x) => (rises ? 1 - beyond(x) : beyond(x)),
    moments: () => ({ mean: bound + reach / 3, standardDeviation: Math.abs(reach) / Math.sqrt(18) }),
    ends: rises ? [bound, end] : [end, bound],
  };
}
