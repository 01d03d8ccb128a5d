import type { Cycle } from "./cycle.js";
import { WLTC3B_SPEEDS } from "./table/wltc-3b.js";
import { tabledCycle } from "./tabled-cycle.js";

/**
 * Worldwide harmonised light-duty test cycle (WLTC), class 3b: 1800 s, 23.27 km. All battery-electric cars with a
 * maximum speed of 120 km/h or more are in this class.
 *
 * @example
 * wltc3b.phases.map(({ name }) => name).join(", "); // "low, medium, high, extra high"
 */
export const wltc3b: Cycle = /* @__PURE__ */ tabledCycle({
  name: "WLTC class 3b",
  source: { document: "UN GTR No. 15; UN R154", section: "annex 1, tables A1/7, A1/9, A1/11, A1/12", status: "quoted" },
  notes: ["Two independent copies agree; the sum of speeds of every phase is that of the regulation, as quoted."],
  unit: "km/h",
  phases: [
    { name: "low", from: 0, to: 589 },
    { name: "medium", from: 589, to: 1022 },
    { name: "high", from: 1022, to: 1477 },
    { name: "extra high", from: 1477, to: 1800 },
  ],
  speeds: WLTC3B_SPEEDS,
});
