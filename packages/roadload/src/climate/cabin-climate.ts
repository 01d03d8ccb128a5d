import { describeGiven, InputError, quantity, readOptions, type Working } from "@tarewatt/units";
import type { CabinClimate, CabinClimateOptions, Ends } from "./cabin-climate-options.js";
import { cabinEnvelopeHeat, cabinFreshAirHeat, cabinGains } from "./cabin-heat.js";
import { warningsOf } from "./climate-doubts.js";
import { coolingPower, heatingPower } from "./climate-power.js";
import { cabinPriors } from "./climate-priors.js";
import { startOf } from "./climate-start.js";
import { coolingPerformancePrior, heatPumpPerformance } from "./heat-pump.js";
import { corners, readSpread, type SpreadNumbers } from "./spread.js";

/**
 * Electric power and energy that heating or cooling a cabin takes, with their spread.
 *
 * Heat through body and glass and with fresh air, less what sun and people give, divided by the performance of heater or cooler. It
 * is a power, not a share of consumption: the same for any speed, and so dearest per kilometre in slow traffic. Give it to a cycle as
 * it is, and nothing for it among the accessories. Drying the air is not counted, so cooling in moist air takes more.
 *
 * The energy of the start is what seven parked cars took to warm up, less what holding the temperature takes meanwhile, since the power
 * holds it from the start. A trip shorter than the warm-up, some 25 min, takes less than both together. A hot cabin takes as much
 * heat per kelvin to cool down: an assumption.
 *
 * @param options - temperatures, heater, cabin, sun, people, what is cold at the start
 * @returns power and energy, their ends, and how they came about
 * @throws InputError `INCONSISTENT` when a spread is not in order, `WRONG_CHOICE`, `OUT_OF_RANGE`, `NEGATIVE`, and what `readOptions`
 *   throws
 * @example
 * const winter = cabinClimate({ ambient: q("-7 °C"), target: q("21 °C"), heater: "resistance", soak: q("-7 °C") });
 * winter.power; // 3329 W
 * winter.warmUpEnergy.in("kWh"); // 1.058
 */
export function cabinClimate(options: CabinClimateOptions): CabinClimate {
  const read = readOptions(
    "cabinClimate",
    options,
    {
      ambient: { unit: "°C", atLeast: -40, atMost: 50 },
      target: { unit: "°C", atLeast: 10, atMost: 30 },
      freshAirShare: { unit: "1", atLeast: 0, atMost: 1, optional: true },
      cabinSize: { unit: "1", atLeast: 0.3, atMost: 10, optional: true },
      occupants: { unit: "1", atLeast: 0, atMost: 100, optional: true },
      fans: { unit: "W", atLeast: 0, atMost: 5000, optional: true },
      soak: { unit: "°C", atLeast: -40, atMost: 60, optional: true },
    },
    ["heater", "coolingPerformance?", "envelope?", "freshAir?", "solarGain?", "battery?"],
  );
  const { ambient, target, freshAirShare = 1, occupants = 1, fans = 0 } = read;
  const performanceRule = { unit: "1", atLeast: 0.5, atMost: 10 } as const;
  const heater = heaterOf(options.heater, ambient);
  const spreads = {
    envelope: readSpread(
      "envelope",
      options.envelope,
      { unit: "W/K", atLeast: 0, atMost: 1000 },
      scaled(cabinPriors.envelope, read.cabinSize),
    ),
    freshAir: readSpread(
      "freshAir",
      options.freshAir,
      { unit: "kg/s", atLeast: 0, atMost: 2 },
      scaled(cabinPriors.freshAir, read.cabinSize),
    ),
    solarGain: readSpread(
      "solarGain",
      options.solarGain,
      { unit: "W", atLeast: 0, atMost: 20_000 },
      { low: 0, likely: 0, high: 0 },
    ),
    heating: heater,
    cooling: readSpread("coolingPerformance", options.coolingPerformance, performanceRule, coolingPerformancePrior),
  };
  type Values = { readonly [K in keyof typeof spreads]: number };
  const compute = (values: Values, working?: Working) => {
    const envelopeHeat = cabinEnvelopeHeat.of({ envelope: values.envelope, target, ambient }, working);
    const airHeat = cabinFreshAirHeat.of({ freshAir: values.freshAir, freshAirShare, target, ambient }, working);
    const heatPerOccupant = cabinPriors.heatPerOccupant.likely;
    const gains = cabinGains.of({ solarGain: values.solarGain, occupants, heatPerOccupant }, working);
    const need = envelopeHeat + airHeat - gains;
    const [power, performance] = need >= 0 ? [heatingPower, values.heating] : [coolingPower, values.cooling];
    return {
      envelopeHeat,
      airHeat,
      gains,
      need,
      power: power.of({ envelopeHeat, airHeat, gains, performance, fans }, working),
    };
  };
  const likely = compute(corners.likely(spreads));
  // Power goes one way with every input, so its ends lie where all inputs are at theirs; between heating and cooling lies nothing.
  const extremes = corners.all(spreads).map((values) => compute(values));
  const either = extremes.some(({ need }) => need > 0) && extremes.some(({ need }) => need < 0);
  const powers = [...extremes.map(({ power }) => power), ...(either ? [fans] : [])];
  const mode = likely.need > 0 ? "heating" : likely.need < 0 ? "cooling" : "none";
  const start = startOf(options, {
    target,
    mode,
    performance: mode === "cooling" ? spreads.cooling : warming(options, heater),
  });
  return Object.freeze({
    mode,
    power: quantity(likely.power, "W"),
    warmUpEnergy: quantity(start("likely") / 1000, "kWh"),
    spread: Object.freeze({
      power: ends({ low: Math.min(...powers), likely: likely.power, high: Math.max(...powers) }, (watts) =>
        quantity(watts, "W"),
      ),
      warmUpEnergy: ends({ low: start("low"), likely: start("likely"), high: start("high") }, (wattHours) =>
        quantity(wattHours / 1000, "kWh"),
      ),
    }),
    heat: Object.freeze({
      envelope: quantity(likely.envelopeHeat, "W"),
      air: quantity(likely.airHeat, "W"),
      gains: quantity(likely.gains, "W"),
    }),
    warnings: Object.freeze(warningsOf(options, likely, ambient)),
    working: () => {
      const working: Working = [];
      compute(corners.likely(spreads), working);
      start("likely", working);
      return working;
    },
  });
}

function heaterOf(heater: unknown, ambient: number): SpreadNumbers {
  if (heater === "resistance") return { low: 1, likely: 1, high: 1 };
  if (heater === "heat pump") return heatPumpPerformance({ ambient: quantity(Math.min(ambient, 30), "°C") });
  if (typeof heater === "string") {
    throw new InputError(
      "WRONG_CHOICE",
      `heater must be "resistance", "heat pump" or a performance such as 2.1: got ${describeGiven(heater)}`,
      { name: "heater" },
    );
  }
  return readSpread("heater", heater, { unit: "1", atLeast: 0.5, atMost: 10 });
}

/** Parked cars with heat pumps warmed up with no clear advantage: at worst theirs does no more than a resistance heater. */
function warming({ heater }: CabinClimateOptions, performance: SpreadNumbers): SpreadNumbers {
  return heater === "heat pump" ? { ...performance, low: 1 } : performance;
}

/** A prior of a compact car for a cabin of another size. */
function scaled({ low, likely, high }: SpreadNumbers, size = 1): SpreadNumbers {
  return { low: size * low, likely: size * likely, high: size * high };
}

function ends<Value>({ low, likely, high }: SpreadNumbers, make: (value: number) => Value): Ends<Value> {
  return Object.freeze({ low: make(low), likely: make(likely), high: make(high) });
}
