import { type Energy, type Quantity, quantity } from "@tarewatt/units";
import { cutCycle } from "../cycle/cut-cycle.js";
import type { Cycle } from "../cycle/cycle.js";
import { wltc3b } from "../cycle/wltc3b.js";
import { wltc3bCity } from "../cycle/wltc3b-city.js";
import { asSimulated } from "./as-simulated.js";
import { type BatteryTest, heldSpeeds } from "./battery-test.js";
import type { DrivenCycle } from "./driven-cycles.js";
import type { ProcedureResult } from "./procedure-result.js";
import { assertLastsFor, type ProcedureVehicle, type Simulated, simulated } from "./simulate.js";
import { type WltpRangeOptions, wltpRange } from "./wltp-range.js";

/**
 * The shortened test of the world-wide procedure (WLTP) of a vehicle that is not there yet, by simulation of its cycles: whole
 * cycle, city, and the four phases.
 *
 * @param vehicle - road load at the test mass of the procedure, drivetrain, accessories, usable energy or battery, charging
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
  if (ready.byBattery !== undefined)
    return asSimulated(wltpRange(emptied(ready.byBattery.test, ready.rechargeOf)), ready);
  const usableEnergy = ready.usableEnergy as Quantity<Energy>;
  const cycles = ready.drive(wltc3b, 2);
  const city = ready.drive(wltc3bCity, 4);
  assertLastsFor("the shortened procedure", [...cycles, ...city.slice(2)], usableEnergy);
  const [low, medium, high, extraHigh] = phases().map((phase, index) =>
    ready.drive(phase, index < 2 ? 4 : 2, index === 0),
  ) as [readonly DrivenCycle[], readonly DrivenCycle[], readonly DrivenCycle[], readonly DrivenCycle[]];
  const parts = { city, low, medium, high, extraHigh };
  const rechargeEnergy = ready.rechargeOf(usableEnergy);
  return asSimulated(wltpRange({ procedure: "shortened", cycles, parts, usableEnergy, rechargeEnergy }), ready);
}

function phases(): Cycle[] {
  return wltc3b.phases.map(({ from, to, name }) =>
    cutCycle({ cycle: wltc3b, from: quantity(from, "s"), to: quantity(to, "s"), name: `WLTC, ${name}` }),
  );
}

/** The parts of the test in their order: twice the four phases and the city, each with a constant speed after it. */
function emptied(test: BatteryTest, rechargeOf: Simulated["rechargeOf"]): WltpRangeOptions {
  const speed = quantity(heldSpeeds.wltp, "km/h");
  const [low, medium, high, extraHigh] = phases() as [Cycle, Cycle, Cycle, Cycle];
  const segment = () => [low, medium, high, extraHigh, low, medium].map((phase) => test.drive(phase));
  const first = segment();
  test.holdUntilHalf(speed);
  const second = segment();
  test.holdUntilEmpty(speed);
  const usableEnergy = quantity(test.given(), "kWh");
  const both = [first, second];
  const of = (place: number) => both.map((driven) => driven[place] as DrivenCycle);
  const lows = [first[0], first[4], second[0], second[4]] as DrivenCycle[];
  const mediums = [first[1], first[5], second[1], second[5]] as DrivenCycle[];
  return {
    procedure: "shortened",
    cycles: both.map((driven) => together(driven.slice(0, 4))),
    parts: {
      city: lows.map((each, index) => together([each, mediums[index] as DrivenCycle])),
      ...{ low: lows, medium: mediums, high: of(2), extraHigh: of(3) },
    },
    usableEnergy,
    rechargeEnergy: rechargeOf(usableEnergy),
  };
}

function together(parts: readonly DrivenCycle[]): DrivenCycle {
  const sum = (of: (each: DrivenCycle) => number): number => parts.reduce((total, each) => total + of(each), 0);
  return {
    energy: quantity(
      sum(({ energy }) => energy.in("kWh")),
      "kWh",
    ),
    distance: quantity(
      sum(({ distance }) => distance.in("km")),
      "km",
    ),
  };
}
