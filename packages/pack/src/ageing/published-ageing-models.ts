import { describeGiven, InputError, nearest } from "@tarewatt/units";
import { frozen } from "../check/frozen.js";
import { interpolate } from "../check/interpolate.js";
import { isArray } from "../check/is-array.js";
import { openCircuitCurves } from "../chemistry/open-circuit-curves.js";
import type { AgeingModel, AgeingUse } from "./ageing-model.js";
import { ironPhosphate2200CycleFade, ironPhosphate2200Source } from "./iron-phosphate-2200.js";
import {
  ironPhosphate26650CalendarFade,
  ironPhosphate26650CalendarResistance,
  ironPhosphate26650CycleFade,
  ironPhosphate26650Source,
} from "./iron-phosphate-26650.js";
import {
  nmc18650CalendarFade,
  nmc18650CalendarResistance,
  nmc18650CycleFade,
  nmc18650CycleResistance,
  nmc18650Source,
} from "./nmc-18650.js";

const DAYS = 365.25;
const kelvin = (celsius: number): number => celsius + 273.15;

const OLD_CELL = "a small cell of about 2010: its fade is a bound to think with, and no forecast of a vehicle's pack";

const ironPhosphate2200: AgeingModel = /* @__PURE__ */ frozen<AgeingModel>({
  name: "LFP 2.2 Ah, 2011",
  cell: "iron phosphate on graphite, cylinder of 2.2 Ah",
  covers: "cycling alone",
  notes: [OLD_CELL, "throughput is read as charge discharged (from memory), scaled by the capacity of the cell"],
  fitted: { temperature: [-30, 60], rate: [0.5, 10], years: 5 },
  source: ironPhosphate2200Source,
  fade: ({ rate, temperature, equivalentCycles }: AgeingUse) =>
    ironPhosphate2200CycleFade.of({ rate, temperature: kelvin(temperature), throughput: 2.2 * equivalentCycles }),
});

/** The voltage at which the NMC cell rests stands in its fit; a nickel-rich curve stands for its own, which is not at hand. */
const voltageOf = (stateOfCharge: number): number => {
  const curve = openCircuitCurves.nickelRich;
  return Math.max(3.15, interpolate(curve.stateOfCharge, curve.voltage, stateOfCharge));
};
const nmcCalendar = ({ stateOfCharge, temperature, years }: AgeingUse) => ({
  restVoltage: voltageOf(stateOfCharge),
  temperature: kelvin(temperature),
  time: years * DAYS,
});
const nmcCycling = ({ stateOfCharge, depth, equivalentCycles }: AgeingUse) => ({
  meanVoltage: voltageOf(stateOfCharge),
  depth,
  throughput: 2 * 2.05 * equivalentCycles,
});

const nmc18650: AgeingModel = /* @__PURE__ */ frozen<AgeingModel>({
  name: "NMC 18650 2.05 Ah, 2014",
  cell: "NMC on graphite, cylinder 18650 of 2.05 Ah",
  covers: "time and cycling",
  notes: [
    OLD_CELL,
    "throughput is read as charge and discharge together, the reading that loses more",
    "its voltage at rest is taken from another nickel-rich cell",
    "C-rate and temperature of cycling are not in it",
  ],
  fitted: { temperature: [35, 50], years: 2 },
  source: nmc18650Source,
  fade: (use: AgeingUse) => nmc18650CalendarFade.of(nmcCalendar(use)) + nmc18650CycleFade.of(nmcCycling(use)),
  resistanceGrowth: (use: AgeingUse) =>
    nmc18650CalendarResistance.of(nmcCalendar(use)) + nmc18650CycleResistance.of(nmcCycling(use)),
});

const phosphateCalendar = ({ stateOfCharge, temperature, years }: AgeingUse) => ({
  stateOfCharge,
  temperature: kelvin(temperature),
  time: years * DAYS * 86_400,
});

const ironPhosphate26650: AgeingModel = /* @__PURE__ */ frozen<AgeingModel>({
  name: "LFP 26650 3 Ah, 2018 and 2020",
  cell: "iron phosphate on graphite, cylinder 26650 of 3 Ah, made for stationary storage",
  covers: "time and cycling",
  notes: [
    OLD_CELL,
    "the growth of resistance by cycling differs between the codes that carry the model and is left out",
  ],
  fitted: { temperature: [0, 60], rate: [0.2, 1], years: 2.5 },
  source: ironPhosphate26650Source,
  fade: (use: AgeingUse) =>
    ironPhosphate26650CalendarFade.of(phosphateCalendar(use)) + ironPhosphate26650CycleFade.of(use),
  resistanceGrowth: (use: AgeingUse) => ironPhosphate26650CalendarResistance.of(phosphateCalendar(use)),
});

/**
 * Published models of ageing, by the cell that each was fitted to.
 *
 * Their functions take plain numbers: years, full equivalent cycles, °C, fractions, C-rate in 1/h; they return a share of
 * the capacity, or of the resistance when new. All were fitted to small cells of years ago, some to tests of two years: use
 * them to see how much models differ.
 *
 * @example
 * const use = { years: 8, equivalentCycles: 600, temperature: 20, stateOfCharge: 0.6, depth: 0.4, rate: 0.5 };
 * Object.values(publishedAgeingModels).map((model) => (1 - model.fade(use)).toFixed(2)); // ["0.96", "0.77", "0.86"]
 */
export const publishedAgeingModels: {
  /** Cycling alone of an iron-phosphate cylinder of 2.2 Ah. */
  readonly ironPhosphate2200: AgeingModel;
  /** Time and cycling of an NMC cylinder 18650 of 2.05 Ah. */
  readonly nmc18650: AgeingModel;
  /** Time and cycling of an iron-phosphate cylinder 26650 of 3 Ah. */
  readonly ironPhosphate26650: AgeingModel;
} = /* @__PURE__ */ Object.freeze({ ironPhosphate2200, nmc18650, ironPhosphate26650 });

/** Name of a model of {@link publishedAgeingModels}. */
export type AgeingModelName = keyof typeof publishedAgeingModels;

/** @internal The models of these names; all when none are given. */
export function readModels(names: unknown): readonly AgeingModel[] {
  if (names === undefined) return Object.values(publishedAgeingModels);
  if (!isArray(names)) {
    throw new InputError("WRONG_CHOICE", `models must be an array of names: got ${describeGiven(names)}`, {
      name: "models",
    });
  }
  return Array.from(names, (name: unknown, i) => {
    if (typeof name === "string" && Object.hasOwn(publishedAgeingModels, name)) {
      return publishedAgeingModels[name as AgeingModelName];
    }
    const known = Object.keys(publishedAgeingModels);
    const [near] = typeof name === "string" ? nearest(name, known) : [];
    const hint = near === undefined ? `it is one of ${known.join(", ")}` : `did you mean '${near}'?`;
    throw new InputError("WRONG_CHOICE", `models[${i}] cannot be ${describeGiven(name)}: ${hint}`, { known });
  });
}
