import type { Cycle } from "./cycle.js";
import { WLTC3B_SPEEDS } from "./table/wltc-3b.js";
import { tabledCycle } from "./tabled-cycle.js";

/** End of the medium phase, in s. */
const CITY_END = 1022;

/**
 * City cycle of the world-wide procedure, class 3b: the low and medium phases of {@link wltc3b}; 1022 s, 7.85 km.
 *
 * @example
 * wltc3bCity.distance.in("km"); // 7.85
 */
export const wltc3bCity: Cycle = /* @__PURE__ */ tabledCycle({
  name: "WLTC class 3b, city",
  source: { document: "UN GTR No. 15; UN R154", section: "annex 1, tables A1/7, A1/9", status: "quoted" },
  notes: ["That the city cycle is the low and the medium phase is from memory of annex 8."],
  unit: "km/h",
  phases: [
    { name: "low", from: 0, to: 589 },
    { name: "medium", from: 589, to: CITY_END },
  ],
  speeds: () => WLTC3B_SPEEDS.slice(0, CITY_END + 1),
});
