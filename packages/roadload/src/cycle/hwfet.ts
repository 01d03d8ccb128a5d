import type { Cycle } from "./cycle.js";
import { HWFET_SPEEDS } from "./table/hwfet.js";
import { tabledCycle } from "./tabled-cycle.js";

/**
 * Highway Fuel Economy Driving Schedule (HWFET), US highway cycle: 765 s, 10.26 mi.
 *
 * @example
 * hwfet.meanSpeed.in("mph"); // 48.27
 */
export const hwfet: Cycle = /* @__PURE__ */ tabledCycle({
  name: "HWFET",
  source: { document: "40 CFR part 600", section: "appendix I", status: "quoted" },
  notes: ["The table is the agency's column file; the regulation's own print was not compared."],
  unit: "mph",
  speeds: HWFET_SPEEDS,
});
