import { quantity } from "@tarewatt/units";
import { cutCycle } from "../cycle/cut-cycle.js";
import { wltc3b } from "../cycle/wltc3b.js";
import { wltc3bCity } from "../cycle/wltc3b-city.js";
import type { DrivenCycle } from "./driven-cycles.js";
import type { ProcedureResult } from "./procedure-result.js";
import { asSimulated, assertLastsFor, type ProcedureVehicle, simulated } from "./simulate.js";
import { wltpRange } from "./wltp-range.js";

/**
 * The shortened test of the world-wide procedure (WLTP) of a vehicle that is not there yet, by simulation of its cycles: whole
 * cycle, city, and the four phases.
 *
 * @param vehicle - road load at the test mass of the procedure, drivetrain, accessories, usable energy, charging
 * @returns range and consumption, as {@link wltpRange} gives them
 * @throws InputError `NOT_VALID_HERE` when the battery does not last for the cycles of the test, the vehicle cannot follow them,
 *   the load is far from the conditions of the procedure (air, temperature, wind, mass), or energy is counted at the wall, and what `driveCycle` throws
 * @example
 * const body = { dragArea: q("0.68 m²"), rollingResistanceCoefficient: 0.009, airDensity: referenceAir.wltp.density };
 * const load = roadLoad({ mass: q("2180 kg"), ...body });
 * const contains = ["gears", "motor", "inverter"] as const;
 * const drivetrain = efficiencyDrivetrain({ efficiency: 0.87, regeneration: { share: 0.85 }, contains });
 * const vehicle = { load, drivetrain, accessories: q("250 W"), usableEnergy: q("80 kWh"), chargingEfficiency: 0.88 };
 * const { range, parts } = simulateWltp(vehicle);
 * range.in("km"); // 504.7...
 * parts.map(({ name }) => name).join(", "); // "city, low, medium, high, extra high"
 */
export function simulateWltp(vehicle: ProcedureVehicle): ProcedureResult {
  const ready = simulated("simulateWltp", vehicle, "wltp");
  const { usableEnergy } = vehicle;
  const cycles = ready.drive(wltc3b, 2);
  const city = ready.drive(wltc3bCity, 4);
  assertLastsFor("the shortened procedure", [...cycles, ...city.slice(2)], usableEnergy);
  const [low, medium, high, extraHigh] = wltc3b.phases.map(({ from, to, name }, index) => {
    const phase = cutCycle({ cycle: wltc3b, from: quantity(from, "s"), to: quantity(to, "s"), name: `WLTC, ${name}` });
    return ready.drive(phase, index < 2 ? 4 : 2, index === 0);
  }) as [readonly DrivenCycle[], readonly DrivenCycle[], readonly DrivenCycle[], readonly DrivenCycle[]];
  const { rechargeEnergy } = ready;
  const parts = { city, low, medium, high, extraHigh };
  return asSimulated(wltpRange({ procedure: "shortened", cycles, parts, usableEnergy, rechargeEnergy }), ready);
}
