import { quantity } from "@tarewatt/units";
import type { CabinClimateOptions } from "./cabin-climate-options.js";
import { cabinPriors } from "./climate-priors.js";
import { heatPumpPerformance } from "./heat-pump.js";

/** In W a heater cannot give more than as a rule: common practice, no source; above it the cabin stays cold. */
const STRONG = 8000;

/** More people than this have a larger cabin than a compact car's. */
const SEATS = 5;

/** @internal */
export function warningsOf(
  options: CabinClimateOptions,
  { need, power }: { readonly need: number; readonly power: number },
  ambient: number,
): string[] {
  const { heater, fans, envelope, freshAir, battery, cabinSize, occupants = 1 } = options;
  return [
    ...(need > 0 && heater === "heat pump"
      ? heatPumpPerformance({ ambient: quantity(Math.min(ambient, 30), "°C") }).warnings
      : []),
    ...(need < 0 ? ["drying the air is not counted: in moist air cooling takes more"] : []),
    ...(need < 0 && options.coolingPerformance === undefined
      ? ["the cooling performance is common practice without a source; one test was seen, 1.8 at 45 °C"]
      : []),
    ...(envelope === undefined || freshAir === undefined ? [lossesOf(cabinSize)] : []),
    ...(occupants > SEATS && cabinSize === undefined && (envelope === undefined || freshAir === undefined)
      ? [`${occupants} people in the cabin of a compact car: give cabinSize, or envelope and freshAir`]
      : []),
    ...startWarnings(options, need),
    ...(fans === undefined ? ["fans are not counted here: have them among the accessories"] : []),
    ...(power > STRONG
      ? [`${(power / 1000).toFixed(1)} kW is more than cabin heaters give as a rule: the cabin may stay cold`]
      : []),
    ...(battery === undefined
      ? []
      : ["the specific heat is that of cells; housing and coolant are in the mass or nowhere"]),
  ];
}

function lossesOf(cabinSize: number | undefined): string {
  if (cabinSize === undefined)
    return "heat losses are those of one compact car, with assumed ends: give cabinSize for a van";
  return `heat losses are those of one compact car times ${cabinSize}, with assumed ends: common practice, no source`;
}

/** What to doubt of the energy of the start. */
function startWarnings({ soak, target }: CabinClimateOptions, need: number): string[] {
  const above = soak === undefined ? 0 : soak.in("°C") - target.in("°C");
  if (above > 0 && need < 0)
    return ["cooling down a hot cabin is taken to move as much heat per kelvin as warming it up: an assumption"];
  if (above >= 0) return [];
  const { likely } = cabinPriors.warmUpTime;
  return [
    `the energy of the start is that of seven parked cars, less what holding takes in an assumed ${likely} min of it, which the power counts`,
  ];
}
