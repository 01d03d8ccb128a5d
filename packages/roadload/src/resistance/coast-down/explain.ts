import { type Quantity, quantity, type Step, type Temperature, type Working } from "@tarewatt/units";
import { effectiveMass } from "../effective-mass.js";
import type { CertifiedRoadLoad } from "../road-load.js";
import { type TyreTemperatureRule, tyreTemperatureFactor } from "../tyre-temperature.js";
import type { RunRead } from "./read-runs.js";

/** Speed that the working shows the force at, in m/s: 80 km/h, which SAE J1263 looks at first (seen in a summary). */
const SHOWN_SPEED = 80 / 3.6;

/** @internal */
export function explain(
  { temperature }: RunRead,
  given: {
    readonly mass: number;
    readonly rotatingMassFraction: number;
    readonly rule: TyreTemperatureRule;
    readonly reference: Quantity<Temperature>;
    readonly load: CertifiedRoadLoad;
  },
): Step[] {
  const { mass, rotatingMassFraction, rule, reference, load } = given;
  const working: Working = [];
  effectiveMass.of({ mass, rotatingMassFraction }, working);
  tyreTemperatureFactor.of(
    { slope: rule.slope, reference: rule.reference, from: reference.in("°C"), to: temperature },
    working,
  );
  return [...working, ...load.at(quantity(SHOWN_SPEED, "m/s")).working()];
}
