import type { Source } from "@tarewatt/units";

const source: Source = /* @__PURE__ */ Object.freeze({
  document: "Regulation (EU) 2017/1151, annex XXI, sub-annex 4",
  section: "2.5.1",
  status: "seen",
});

/**
 * Equivalent mass of the rotating parts as part of the vehicle's mass, used where nothing better is known.
 *
 * The regulation allows 3 % of the mass in running order plus 25 kg; here it is taken of the mass that is moved.
 */
export const defaultRotatingMassFraction = /* @__PURE__ */ Object.freeze({
  /** Part of the mass. */
  value: 0.03,
  /** Where the value is from. */
  source,
} as const);
