import { type Energy, type Quantity, quantity } from "@tarewatt/units";
import { hwfet } from "../cycle/hwfet.js";
import { udds } from "../cycle/udds.js";
import { asSimulated } from "./as-simulated.js";
import { type BatteryTest, heldSpeeds } from "./battery-test.js";
import type { ProcedureResult } from "./procedure-result.js";
import { assertLastsFor, type ProcedureVehicle, type Simulated, simulated } from "./simulate.js";
import { type UsMultiCycleOptions, usMultiCycle } from "./us-multi-cycle.js";

/**
 * The US multi-cycle test of a vehicle that is not there yet, by simulation of its cycles. Give the result to
 * {@link usLabel}.
 *
 * @param vehicle - road load at the equivalent test weight, drivetrain, accessories, usable energy or battery, charging
 * @returns unadjusted figures, as {@link usMultiCycle} gives them
 * @throws InputError `NOT_VALID_HERE` when the battery does not last for the cycles of the test, the vehicle cannot follow them,
 *   the load is far from the conditions of the procedure (air, temperature, wind, mass), or energy is counted at the wall, and what `driveCycle` throws
 * @example
 * const body = { dragArea: q("0.68 m²"), rollingResistanceCoefficient: 0.009, airDensity: referenceAir.us.density };
 * const load = roadLoad({ mass: q("4,750 lb"), ...body });
 * const contains = ["gears", "motor", "inverter"] as const;
 * const drivetrain = efficiencyDrivetrain({ efficiency: 0.87, regeneration: { share: 0.85 }, contains });
 * const vehicle = { load, drivetrain, accessories: q("250 W"), usableEnergy: q("80 kWh"), chargingEfficiency: 0.88 };
 * const test = simulateUsTest(vehicle);
 * usLabel({ test, adjustment: { method: "default" } }).range.in("mi"); // 261.5...
 */
export function simulateUsTest(vehicle: ProcedureVehicle): ProcedureResult {
  const ready = simulated("simulateUsTest", vehicle, "us");
  const { usableEnergy, byBattery } = ready;
  if (byBattery !== undefined) return asSimulated(usMultiCycle(emptied(byBattery.test, ready.rechargeOf)), ready);
  const [city, highway] = [ready.drive(udds, 4), ready.drive(hwfet, 2, false)];
  const usable = usableEnergy as Quantity<Energy>;
  assertLastsFor("the US multi-cycle test", [...city, ...highway], usable);
  const measured = { city, highway, usableEnergy: usable, rechargeEnergy: ready.rechargeOf(usable) };
  return asSimulated(usMultiCycle(measured), ready);
}

/** The parts of the test in their order: see {@link usMultiCycleOrder}. */
function emptied(test: BatteryTest, rechargeOf: Simulated["rechargeOf"]): UsMultiCycleOptions {
  const speed = quantity(heldSpeeds.us, "mph");
  const half = () => [test.drive(udds), test.drive(hwfet), test.drive(udds)] as const;
  const first = half();
  test.holdUntilHalf(speed);
  const second = half();
  test.holdUntilEmpty(speed);
  const usableEnergy = quantity(test.given(), "kWh");
  return {
    city: [first[0], first[2], second[0], second[2]],
    highway: [first[1], second[1]],
    usableEnergy,
    rechargeEnergy: rechargeOf(usableEnergy),
  };
}
