import type { Source } from "@tarewatt/units";
import { frozen } from "../check/frozen.js";
import type { OpenCircuitCurve } from "./curve.js";

/** Means of slow charge and discharge; the knots of the piecewise-linear fit were read from the data set. */
const knots: Source = {
  document: "open data set of an article on battery fuel gauges, IEEE Trans. Instrum. Meas. (2025)",
  section: "knots of the piecewise-linear open-circuit voltage",
  status: "seen",
};

/**
 * Open-circuit voltage against state of charge of cells that were published, by chemistry.
 *
 * Dimension of `voltage`: volts of one cell; of `stateOfCharge`: 0 (empty) to 1 (full). Rest voltages at room temperature of
 * new cells. The three with many knots are means of slow charge and discharge: the hysteresis of iron phosphate, tens of
 * millivolts, is not in them. That the two nickel-rich cylinders are nickel-rich is inferred from their voltages.
 *
 * @example
 * openCircuitCurves.ironPhosphate.voltage.at(-1); // 3.5981
 */
export const openCircuitCurves: {
  /** Cylinder of 1.2 Ah, iron phosphate on graphite. */
  readonly ironPhosphate: OpenCircuitCurve;
  /** Cylinder 21700 of 4.2 Ah, nickel-rich on graphite. */
  readonly nickelRich: OpenCircuitCurve;
  /** Cylinder 21700 of 4.0 Ah, nickel-rich on graphite: a second cell, to see how far two differ. */
  readonly nickelRichSecond: OpenCircuitCurve;
  /** Cylinder 21700 of 5 Ah, NMC811 on graphite with silicon oxide, from fits of its half cells. */
  readonly nmc811SiliconGraphite: OpenCircuitCurve;
  /** Pouch of about 27.6 Ah, NMC on graphite. */
  readonly nmcPouch: OpenCircuitCurve;
} = /* @__PURE__ */ frozen({
  ironPhosphate: {
    name: "LFP on graphite, cylinder 18650 of 1.2 Ah, C/32, room temperature",
    source: knots,
    stateOfCharge: [0, 0.0033, 0.0117, 0.0267, 0.0534, 0.0885, 0.2972, 0.9833, 0.995, 1],
    voltage: [2.0102, 2.4177, 2.7405, 2.9299, 3.0872, 3.1942, 3.2772, 3.3511, 3.418, 3.5981],
  },
  nickelRich: {
    name: "nickel-rich on graphite (inferred), cylinder 21700 of 4.2 Ah, C/32, room temperature",
    source: knots,
    stateOfCharge: [0, 0.0151, 0.0452, 0.0955, 0.1508, 0.2915, 0.4573, 0.8342, 0.9497, 1],
    voltage: [2.5061, 2.8981, 3.1461, 3.3231, 3.4218, 3.5737, 3.7017, 4.0637, 4.1009, 4.1932],
  },
  nickelRichSecond: {
    name: "nickel-rich on graphite (inferred), cylinder 21700 of 4.0 Ah, C/20, room temperature",
    source: knots,
    stateOfCharge: [0, 0.005, 0.0352, 0.0854, 0.1357, 0.2915, 0.4523, 0.8392, 0.9548, 1],
    voltage: [2.5, 2.808, 3.1179, 3.3182, 3.4193, 3.5826, 3.6941, 4.0664, 4.1121, 4.2],
  },
  nmc811SiliconGraphite: {
    name: "NMC811 on graphite with silicon oxide, cylinder 21700 of 5 Ah, 25 °C",
    source: {
      document: "fits of the half cells, J. Electrochem. Soc. 167 (2020) 080534, as open codes quote them",
      section:
        "positive minus negative electrode, stoichiometry of the negative 0.0279 to 0.9014, of the positive 0.9084 to 0.2661 (window from memory)",
      status: "quoted",
    },
    stateOfCharge: [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1],
    voltage: [2.498, 3.258, 3.449, 3.548, 3.634, 3.708, 3.809, 3.924, 4.022, 4.094, 4.193],
  },
  nmcPouch: {
    name: "NMC on graphite, pouch of about 27.6 Ah, 20 °C",
    source: { document: "open table of an equivalent-circuit cell that many programs copy", status: "quoted" },
    stateOfCharge: [0, 0.1, 0.25, 0.5, 0.75, 0.9, 1],
    voltage: [3.5, 3.57, 3.63, 3.71, 3.93, 4.08, 4.19],
  },
});
