import type { Cycle } from "./cycle.js";
import { makeCycle } from "./make-cycle.js";
import { NEDC_EXTRA_URBAN, NEDC_URBAN } from "./table/nedc.js";

/** Times the urban cycle is driven, and how long it lasts, in s. */
const URBAN_TIMES = 4;
const URBAN_DURATION = 195;
const EXTRA_URBAN_FROM = 780;
const KMH = 3.6;

/**
 * New European Driving Cycle (NEDC): four urban cycles and an extra-urban one; 1180 s, 11.03 km. The table is modal: its rows
 * are the ends of operations of constant acceleration.
 *
 * @example
 * nedc.distance.in("km"); // 11.03
 */
export const nedc: Cycle = /* @__PURE__ */ makeCycle({
  name: "NEDC",
  source: { document: "UN R83", section: "annex 4a, tables 1 and 2", status: "memory" },
  notes: [
    "The breakpoints are from memory; the regulation's time in each operation, seen, is met exactly.",
    "Speed is held during gear changes: 11.028 km. The regulation prints 11.007 km; straight lines across gear changes would give 10.932 km.",
  ],
  unit: "km/h",
  phases: [
    { name: "urban, 1st", from: 0, to: 195 },
    { name: "urban, 2nd", from: 195, to: 390 },
    { name: "urban, 3rd", from: 390, to: 585 },
    { name: "urban, 4th", from: 585, to: EXTRA_URBAN_FROM },
    { name: "extra-urban", from: EXTRA_URBAN_FROM, to: 1180 },
  ],
  table: () => {
    const rows = [
      ...Array.from({ length: URBAN_TIMES }, (_, round) =>
        NEDC_URBAN.slice(round === 0 ? 0 : 1).map(([t, v]) => [t + round * URBAN_DURATION, v] as const),
      ).flat(),
      ...NEDC_EXTRA_URBAN.slice(1).map(([t, v]) => [t + EXTRA_URBAN_FROM, v] as const),
    ];
    return { time: rows.map(([t]) => t), speed: rows.map(([, v]) => v / KMH) };
  },
});
