import type { Cycle } from "./cycle.js";
import { US06_SPEEDS } from "./table/us06.js";
import { tabledCycle } from "./tabled-cycle.js";

/**
 * US06 driving schedule, high speed and hard acceleration: 596 s, 8.01 mi.
 *
 * @example
 * us06.maximumSpeed.in("mph"); // 80.3
 */
export const us06: Cycle = /* @__PURE__ */ tabledCycle({
  name: "US06",
  source: { document: "40 CFR part 86", section: "appendix I (g)", status: "quoted" },
  notes: [
    "The printed table runs on at rest to 600 s; it is cut here at the official duration of 596 s, so that mean speed and accessories see no more.",
    "The division into city and highway is from memory of 40 CFR 1066 subpart I.",
  ],
  unit: "mph",
  phases: [
    { name: "city, first part", from: 0, to: 130 },
    { name: "highway", from: 130, to: 495 },
    { name: "city, second part", from: 495, to: 596 },
  ],
  speeds: US06_SPEEDS,
});
