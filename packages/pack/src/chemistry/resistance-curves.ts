import type { Source } from "@tarewatt/units";
import { frozen } from "../check/frozen.js";
import type { ResistanceAgainstTemperature, ResistanceCurve } from "./curve.js";

const name =
  "one lithium-ion cell, by its resistance a large one; form, chemistry and length of the pulse are not stated";
const source: Source = { document: "open table of a battery company", status: "quoted" };

/** Resistance at half charge and 25 °C in mΩ, what every factor refers to. */
const REFERENCE = 1.38;

// biome-ignore format: the two lines belong column by column
const stateOfCharge = [   0, 0.05,  0.1,  0.2,  0.3,  0.4,  0.5,  0.6,  0.7,  0.8,  0.9,    1];
// biome-ignore format: as above
const chargeMilliohm = [3.74, 2.04, 1.74, 1.41, 1.41, 1.37, 1.38, 1.38, 1.46, 1.37, 1.36, 1.48];

// biome-ignore format: the two lines belong column by column
const temperature =        [  -25,   -20,  -10,    0,   10,   25,   35,   45,   60];
// biome-ignore format: as above
const temperatureMilliohm = [13.03, 10.83, 6.68, 3.90, 2.38, 1.38, 1.09, 0.92, 0.70];

/**
 * Resistance of one cell against its state of charge, at 25 °C, as a multiple of that at half charge (1.38 mΩ).
 *
 * Dimension: ratio. Flat above a fifth of the charge, 2.7 times as much when empty. One cell, and no more than an example of
 * the shape: another chemistry has another one.
 *
 * @example
 * resistanceAgainstCharge.factor[0]?.toFixed(2); // "2.71"
 */
export const resistanceAgainstCharge: ResistanceCurve = /* @__PURE__ */ frozen({
  name,
  source,
  stateOfCharge,
  factor: /* @__PURE__ */ chargeMilliohm.map((resistance) => resistance / REFERENCE),
});

/**
 * Resistance of the same cell against its temperature, at half charge, as a multiple of that at 25 °C (1.38 mΩ).
 *
 * Dimension: ratio. Published are −25 °C to 60 °C; one activation energy does not fit both ends.
 *
 * @example
 * resistanceAgainstTemperature.factor[3]?.toFixed(2); // "2.83"
 */
export const resistanceAgainstTemperature: ResistanceAgainstTemperature = /* @__PURE__ */ frozen({
  name,
  source,
  temperature,
  factor: /* @__PURE__ */ temperatureMilliohm.map((resistance) => resistance / REFERENCE),
});
