import { readOptions, type Working } from "@tarewatt/units";
import type { BatteryToHeat, CabinClimate, CabinClimateOptions } from "./cabin-climate-options.js";
import { cabinPriors, cellSpecificHeat } from "./climate-priors.js";
import { readSpread, type SpreadNumbers } from "./spread.js";
import { batteryHeatingEnergy, cabinHeatCapacity, cabinStartEnergy } from "./start-energy.js";

/** Energy of the start in Wh, at one end of what is not known. @internal */
export function startOf(
  options: CabinClimateOptions,
  given: { readonly target: number; readonly mode: CabinClimate["mode"]; readonly performance: SpreadNumbers },
): (end: keyof SpreadNumbers, working?: Working) => number {
  const { target, mode, performance } = given;
  const { battery, cabinSize, envelope } = options;
  const soak = options.soak?.in("°C") ?? target;
  const counts = soak < target || (soak > target && mode === "cooling");
  const cells = battery === undefined ? undefined : readBattery(battery);
  const own = envelope === undefined ? undefined : readSpread("envelope", envelope, { unit: "W/K" });
  const size = (end: keyof SpreadNumbers) =>
    cabinSize ?? (own === undefined ? 1 : own[end] / cabinPriors.envelope.likely);
  return (end, working) => {
    // Long tests are those that lost much, a good performance takes little: the ends of these two go the other way.
    const other = ({ low: "high", likely: "likely", high: "low" } as const)[end];
    const cabin = (): number => {
      const numbers = {
        perKelvin: cabinPriors.warmUp[end],
        envelope: cabinPriors.envelope.likely,
        warmUpTime: cabinPriors.warmUpTime[other] / 60,
        size: size(end),
      };
      const heatCapacity = cabinHeatCapacity.of(numbers, working);
      return cabinStartEnergy.of({ heatCapacity, soak, target, performance: performance[other] }, working);
    };
    const forCabin = counts ? cabin() : 0;
    if (cells === undefined) return forCabin;
    const { specificHeat, ...rest } = cells;
    return forCabin + batteryHeatingEnergy.of({ ...rest, specificHeat: specificHeat[end] }, working);
  };
}

function readBattery(battery: BatteryToHeat) {
  const {
    mass,
    from,
    to,
    efficiency = 1,
  } = readOptions(
    "battery",
    battery,
    {
      mass: { unit: "kg", above: 0, atMost: 20_000 },
      from: { unit: "°C", atLeast: -40, atMost: 60 },
      to: { unit: "°C", atLeast: -40, atMost: 60 },
      efficiency: { unit: "1", atLeast: 0.2, atMost: 5, optional: true },
    },
    ["specificHeat?"],
  );
  const rule = { unit: "J/(kg·K)", above: 0, atMost: 5000 } as const;
  return {
    mass,
    from,
    to,
    efficiency,
    specificHeat: readSpread("specificHeat", battery.specificHeat, rule, cellSpecificHeat),
  };
}
