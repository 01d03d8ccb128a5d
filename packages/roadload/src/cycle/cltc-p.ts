import type { Cycle } from "./cycle.js";
import { CLTC_P_SPEEDS } from "./table/cltc-p.js";
import { tabledCycle } from "./tabled-cycle.js";

/**
 * China light-duty vehicle test cycle for passenger cars (CLTC-P): 1800 s, 14.48 km.
 *
 * @example
 * cltcP.meanSpeed.in("km/h"); // 28.96
 */
export const cltcP: Cycle = /* @__PURE__ */ tabledCycle({
  name: "CLTC-P",
  source: { document: "GB/T 38146.1-2019", section: "annex A", status: "quoted" },
  notes: [
    "One copy of the table, which met every published statistic; it was not compared with a complete second copy.",
  ],
  unit: "km/h",
  phases: [
    { name: "low", from: 0, to: 674 },
    { name: "medium", from: 674, to: 1367 },
    { name: "high", from: 1367, to: 1800 },
  ],
  speeds: CLTC_P_SPEEDS,
});
