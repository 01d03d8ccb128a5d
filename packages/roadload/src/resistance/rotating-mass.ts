import type { Source } from "@tarewatt/units";

const source: Source = /* @__PURE__ */ Object.freeze({
  document: "Regulation (EU) 2017/1151, annex XXI, sub-annex 4",
  section: "2.5.1",
  status: "seen",
});

/** The same figure, of the mass that is taken here. */
const basisSource: Source = /* @__PURE__ */ Object.freeze({
  document: "UN GTR No. 15",
  section: "annex 7, 5: inertia term 1.03·TM·a",
  status: "memory",
});

/**
 * Equivalent mass of the rotating parts as part of the vehicle's mass, used where nothing better is known.
 *
 * Two rules have the figure: Regulation (EU) 2017/1151 allows 3 % of the mass in running order plus 25 kg for the coast-down
 * (seen), and UN GTR No. 15 annex 7 takes 1.03 times the test mass for the cycle energy (from memory). This is the second: it
 * is taken of the whole mass that is moved. With 300 kg above running order the first gives about 8 kg less.
 */
export const defaultRotatingMassFraction = /* @__PURE__ */ Object.freeze({
  /** Part of the mass. */
  value: 0.03,
  /** Where the value is from: its 3 % are of the mass in running order plus 25 kg. */
  source,
  /** Where the mass that it is taken of here, the one that is moved, is from. */
  basisSource,
} as const);
