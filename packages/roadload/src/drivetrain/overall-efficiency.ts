import type { Source } from "@tarewatt/units";
import type { Loss } from "../resistance/loss.js";

const source: Source = /* @__PURE__ */ Object.freeze({
  document:
    "common practice, no source: about 80 % of the battery's energy reaches the wheels of a modern battery-electric car",
  status: "common practice",
});
const contains = /* @__PURE__ */ Object.freeze([
  "wheel bearings",
  "driveline spin",
  "gears",
  "motor",
  "inverter",
  "battery",
  "accessories",
] as const satisfies readonly Loss[]);

/**
 * Part of the battery's energy that reaches the wheels of a modern battery-electric car, all losses and accessories in.
 * Common practice, no source. Give 0 W of accessories with it: they are contained. A road load from a coast-down holds
 * wheel bearings and driveline spin too: leave them out of `contains` there, and expect a little more than this.
 */
export const overallEfficiencyPrior = /* @__PURE__ */ Object.freeze({
  /** Low end. */
  low: 0.75,
  /** Most likely value. */
  likely: 0.8,
  /** High end. */
  high: 0.86,
  /** What the value holds. */
  contains,
  /** Where the values are from. */
  source,
} as const);
