import type { Cycle } from "./cycle.js";
import { US06_SPEEDS } from "./table/us06.js";
import { tabledCycle } from "./tabled-cycle.js";

/** Where the highway part begins and ends, in s; the vehicle is at rest at both. */
const HIGHWAY = { from: 130, to: 495 } as const;
const source = {
  document: "40 CFR part 86; 40 CFR 1066 subpart I",
  section: "speeds of appendix I (g), quoted; their division into city and highway from memory",
  status: "memory",
} as const;
const SPLIT = "where US06 is divided into city and highway is from memory of 40 CFR 1066 subpart I";

/**
 * City part of the US06 driving schedule: what lies before and after its highway part, put together; 231 s, 1.77 mi.
 *
 * @example
 * us06City.distance.in("mi"); // 1.772
 */
export const us06City: Cycle = /* @__PURE__ */ tabledCycle({
  name: "US06, city part",
  source,
  notes: ["Cut from the table of US06."],
  warnings: [SPLIT],
  unit: "mph",
  speeds: () => [...US06_SPEEDS.slice(0, HIGHWAY.from + 1), ...US06_SPEEDS.slice(HIGHWAY.to + 1)],
});

/**
 * Highway part of the US06 driving schedule: 365 s, 6.24 mi.
 *
 * @example
 * us06Highway.distance.in("mi"); // 6.236
 */
export const us06Highway: Cycle = /* @__PURE__ */ tabledCycle({
  name: "US06, highway part",
  source,
  notes: ["Cut from the table of US06."],
  warnings: [SPLIT],
  unit: "mph",
  speeds: () => US06_SPEEDS.slice(HIGHWAY.from, HIGHWAY.to + 1),
});
