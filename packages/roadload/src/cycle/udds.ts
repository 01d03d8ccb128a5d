import type { Cycle } from "./cycle.js";
import { UDDS_SPEEDS } from "./table/udds.js";
import { tabledCycle } from "./tabled-cycle.js";

/**
 * Urban Dynamometer Driving Schedule (UDDS), US city cycle: 1369 s, 7.45 mi.
 *
 * @example
 * udds.distance.in("mi"); // 7.45
 */
export const udds: Cycle = /* @__PURE__ */ tabledCycle({
  name: "UDDS",
  source: { document: "40 CFR part 86", section: "appendix I (a)", status: "quoted" },
  notes: ["The table is the agency's column file; its first 187 rows were compared with the regulation."],
  unit: "mph",
  phases: [
    { name: "transient (bag 1)", from: 0, to: 505 },
    { name: "stabilized (bag 2)", from: 505, to: 1369 },
  ],
  speeds: UDDS_SPEEDS,
});
