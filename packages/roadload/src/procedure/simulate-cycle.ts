import { type Energy, type Quantity, quantity, type Step, type Working } from "@tarewatt/units";
import { cltcP } from "../cycle/cltc-p.js";
import type { Cycle } from "../cycle/cycle.js";
import { nedc } from "../cycle/nedc.js";
import { driveUntilEmpty } from "../energy/drive-until-empty.js";
import { asSimulated } from "./as-simulated.js";
import { consumptionOverRange, repeatedCycleRange } from "./depletion.js";
import { consumptionsOf, type DrivenCycle, doubtsOfRecharge, wallPerBattery } from "./driven-cycles.js";
import type { ProcedureResult } from "./procedure-result.js";
import type { SimulatedProcedure } from "./reference-conditions.js";
import { doubtsOfRules, type Rule, rules } from "./rule.js";
import { assertLastsFor, type ProcedureVehicle, type Simulated, simulated } from "./simulate.js";

interface Words {
  readonly reference: SimulatedProcedure;
  readonly procedure: string;
  readonly rangeMeans: string;
  readonly rules: readonly Rule[];
}

/** A procedure that repeats one cycle until the battery is empty. */
function repeated(where: string, vehicle: ProcedureVehicle, cycle: Cycle, words: Words): ProcedureResult {
  const ready = simulated(where, vehicle, words.reference);
  const { byBattery } = ready;
  const driven = byBattery === undefined ? byEnergy(ready, cycle) : untilEmpty(vehicle, byBattery, cycle);
  const { usableEnergy } = driven;
  const rechargeEnergy = ready.rechargeOf(quantity(usableEnergy, "kWh"))?.in("kWh");
  const factor = wallPerBattery(usableEnergy, rechargeEnergy);
  const figures = (working?: Working) => {
    const range = driven.range(working);
    const consumption = consumptionOverRange.of({ usableEnergy, range }, working);
    return { range: quantity(range, "km"), consumption: consumptionsOf(consumption, factor, "km", working) };
  };
  const { procedure, rangeMeans, rules: list } = words;
  return asSimulated(
    Object.freeze({
      ...{ procedure, rangeMeans, rules: list },
      ...figures(),
      usableEnergy: quantity(usableEnergy, "kWh"),
      parts: Object.freeze([]),
      warnings: Object.freeze([...doubtsOfRules(list), ...doubtsOfRecharge(factor)]),
      working: () => {
        const working: Working = [];
        wallPerBattery(usableEnergy, rechargeEnergy, working);
        figures(working);
        return working as Step[];
      },
    }),
    ready,
  );
}

/** Energy in kWh, and the range in km that it comes to. */
interface Repeated {
  readonly usableEnergy: number;
  range(working?: Working): number;
}

function byEnergy(ready: Simulated, cycle: Cycle): Repeated {
  const usable = ready.usableEnergy as Quantity<Energy>;
  const usableEnergy = usable.in("kWh");
  const [cold, warm] = ready.drive(cycle, 2) as readonly [DrivenCycle, DrivenCycle];
  assertLastsFor(`one ${cycle.name}`, [cold], usable);
  const [first, later] = [cold, warm].map(({ energy }) => energy.in("kWh")) as [number, number];
  const numbers = { usableEnergy, first, later, distance: cold.distance.in("km") };
  return { usableEnergy, range: (working) => repeatedCycleRange.of(numbers, working) };
}

/** The first cycle tells whether it can be driven at all, and how; then the battery is emptied. */
function untilEmpty(
  { load, drivetrain, accessories, coldStart }: ProcedureVehicle,
  { state: battery, floor, test }: NonNullable<Simulated["byBattery"]>,
  cycle: Cycle,
): Repeated {
  test.drive(cycle);
  const climate = coldStart && { power: quantity(0, "W"), warmUpEnergy: coldStart };
  const { range, energy } = driveUntilEmpty({ cycle, load, drivetrain, accessories, battery, floor, climate });
  return { usableEnergy: energy.atTerminals.in("kWh"), range: () => range.in("km") };
}

const oldEuropean: Words = {
  reference: "nedc",
  procedure: "UN R101 on the NEDC",
  rangeMeans:
    "distance on repeated NEDC until the vehicle cannot follow the curve above 50 km/h; taken here as what the " +
    "usable energy, or the battery, lasts for, the first cycle with the cold start, at 20 to 30 °C, without heating or cooling",
  rules: /* @__PURE__ */ rules(
    {
      rule: "range is driven on repeated NEDC until the vehicle cannot follow the curve above 50 km/h",
      source: { document: "UN R101", section: "annex 9", status: "memory" },
    },
    {
      rule: "consumption is the energy of the recharge at the wall per distance",
      source: { document: "UN R101", section: "annex 7", status: "memory" },
    },
  ),
};

/**
 * The old European procedure (UN R101, NEDC) of a vehicle that is not there yet, by simulation of its cycle. The range is that
 * of the usable energy: that a weak battery may not follow the curve before it is empty is seen with a battery only.
 *
 * @param vehicle - road load at the reference mass of the procedure, drivetrain, accessories, usable energy or battery, charging
 * @returns range and consumption
 * @throws InputError what {@link simulateWltp} throws
 * @example
 * const body = { dragArea: q("0.68 m²"), rollingResistanceCoefficient: 0.009, airDensity: referenceAir.wltp.density };
 * const load = roadLoad({ mass: q("2100 kg"), ...body });
 * const contains = ["gears", "motor", "inverter"] as const;
 * const drivetrain = efficiencyDrivetrain({ efficiency: 0.87, regeneration: { share: 0.85 }, contains });
 * const vehicle = { load, drivetrain, accessories: q("250 W"), usableEnergy: q("80 kWh"), chargingEfficiency: 0.88 };
 * simulateNedc(vehicle).range.in("km"); // 590.5...
 */
export function simulateNedc(vehicle: ProcedureVehicle): ProcedureResult {
  return repeated("simulateNedc", vehicle, nedc, oldEuropean);
}

const chinese: Words = {
  reference: "cltc",
  procedure: "CLTC-P as a cycle, without the rules of its procedure",
  rangeMeans:
    "distance that the usable energy, or the battery, lasts for on the repeated cycle, the first one with the cold start; the Chinese procedure's own rules are not claimed",
  rules: /* @__PURE__ */ rules({
    rule: "the cycle is driven as tabled",
    source: { document: "GB/T 38146.1-2019", section: "annex A", status: "quoted" },
  }),
};

/**
 * The Chinese cycle for passenger cars (CLTC-P) of a vehicle that is not there yet, repeated until its usable energy is spent.
 * The cycle, not the procedure: no rule beside the table is known here.
 *
 * @param vehicle - road load at test mass, drivetrain, accessories, usable energy or battery, charging
 * @returns range and consumption
 * @throws InputError what {@link simulateWltp} throws
 * @example
 * const body = { dragArea: q("0.68 m²"), rollingResistanceCoefficient: 0.009, airDensity: referenceAir.wltp.density };
 * const load = roadLoad({ mass: q("2100 kg"), ...body });
 * const contains = ["gears", "motor", "inverter"] as const;
 * const drivetrain = efficiencyDrivetrain({ efficiency: 0.87, regeneration: { share: 0.85 }, contains });
 * const vehicle = { load, drivetrain, accessories: q("250 W"), usableEnergy: q("80 kWh"), chargingEfficiency: 0.88 };
 * simulateCltc(vehicle).range.in("km"); // 601.9...
 */
export function simulateCltc(vehicle: ProcedureVehicle): ProcedureResult {
  return repeated("simulateCltc", vehicle, cltcP, chinese);
}
