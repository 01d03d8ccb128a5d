import type { Cycle } from "./cycle.js";
import { SC03_SPEEDS } from "./table/sc03.js";
import { tabledCycle } from "./tabled-cycle.js";

/**
 * SC03 driving schedule, driven with the air conditioning on: 596 s, 3.58 mi. Only its speeds are here: the heat and the sun
 * of the test are not.
 *
 * @example
 * sc03.distance.in("mi"); // 3.58
 */
export const sc03: Cycle = /* @__PURE__ */ tabledCycle({
  name: "SC03",
  source: { document: "40 CFR part 86", section: "appendix I (h)", status: "quoted" },
  notes: [
    "One copy of the agency's column file, which met every published statistic; it was not compared with a second copy.",
    "The column file runs on at rest to 600 s; it is cut here at the official duration of 596 s.",
  ],
  unit: "mph",
  speeds: SC03_SPEEDS,
});
