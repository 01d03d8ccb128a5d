import { type DriveResult, driveCycle, roadLoad, type SteadyResult, steadySpeed } from "@tarewatt/roadload";
import {
  type EnergyPerDistance,
  InputError,
  type Length,
  type Mass,
  type Quantity,
  quantity,
  readOptions,
  type Working,
} from "@tarewatt/units";
import { propagate } from "../propagate/propagate.js";
import type { Spread } from "../propagate/spread.js";
import { rankUnknowns } from "../rank/rank-unknowns.js";
import { solveFor } from "../solve/solve-for.js";
import { type Condition, type ConditionRead, readCondition, sameCondition } from "./condition.js";
import type { ConditionEstimate, EvidenceLine, PackTarget, RangeTarget, VehicleEstimate } from "./estimate.js";
import type { VehicleInputs } from "./inputs.js";
import type { VehicleOptions } from "./options.js";
import { readVehicle, type VehicleRead } from "./read-vehicle.js";
import { outputNames, type VehicleModel, vehicleModel } from "./vehicle-model.js";

/**
 * A first whole estimate: masses, pack, consumption and range of a vehicle, with their spread.
 *
 * Base mass and pack give the mass; mass, drag and tyres the road load; the drivetrain, accessories and charging the energies;
 * the usable energy the range. All unknowns are drawn together, independently of each other; one payload and one air hold for
 * all conditions. Ranges are from full to empty on cycles as tabled; they are no label figures.
 *
 * @param options - what is known
 * @returns the estimate; ask it for chances, the pack that a range takes, the unknowns that matter and its working
 * @throws InputError for every input that makes no sense, by name
 * @example
 * const cell = cylindricalCell({
 *   ...{ diameter: q("21 mm"), height: q("70 mm"), mass: q("70 g") },
 *   ...{ capacity: q("5 Ah"), nominalVoltage: q("3.6 V") },
 * });
 * const van = estimateVehicle({
 *   name: "van (invented)",
 *   base: { mass: around(q("1900 kg"), 0.05), referencePackMass: q("550 kg") },
 *   cell,
 *   pack: { energy: q("98 kWh"), nominalVoltage: q("350 V"), cellMassFraction: 0.7, usableFraction: 0.93 },
 *   payload: q("150 kg"),
 *   dragCoefficient: around(0.29, 0.05),
 *   frontalArea: q("2.9 m²"),
 *   rollingResistanceCoefficient: around(0.009, 0.1),
 *   airDensity: q("1.189 kg/m³"),
 *   drivetrain: { efficiency: 0.87, recoveredShare: 0.85, contains: ["gears", "motor", "inverter"] },
 *   accessories: q("400 W"),
 *   chargingEfficiency: 0.89,
 *   conditions: [wltc3b, q("110 km/h")],
 * });
 * van.on(wltc3b).range.p50.format(); // "470 km"
 * van.packFor({ range: q("500 km"), on: wltc3b }).needed.p50?.format(); // "105 kWh"
 */
export function estimateVehicle(options: VehicleOptions): VehicleEstimate {
  const read = readVehicle(options);
  const { evidence, conditions, constants, pack, lines } = read;
  const { name, base } = options;
  const baseWorking = typeof base.working === "function" ? () => base.working?.() ?? [] : () => [];
  const { spread, likely, draws, seed, failed, chanceOfAtLeast } = propagate({
    model: vehicleModel(conditions, constants),
    evidence,
    draws: options.draws,
    seed: options.seed,
  });
  const estimates = conditions.map((condition): ConditionEstimate => {
    const { label, procedure } = condition;
    // The model was made for these conditions, so their outputs are there.
    const atBattery = spread[outputNames.atBattery(label)] as Spread<Quantity<EnergyPerDistance>>;
    const atWall = spread[outputNames.atWall(label)] as Spread<Quantity<EnergyPerDistance>>;
    const driven = driveLikely(condition, read, likely.loadedMass);
    return Object.freeze({
      label,
      procedure,
      batteryBoundary: driven.batteryBoundary,
      consumption: Object.freeze({ atBattery, atWall }),
      range: spread[outputNames.range(label)] as Spread<Quantity<Length>>,
      likely: driven,
    });
  });
  const given = (condition: Condition): number => {
    const asked = readCondition(condition);
    const index = conditions.findIndex((each) => sameCondition(each, asked));
    if (index >= 0) return index;
    const known = conditions.map(({ label }) => label).join(", ");
    throw new InputError("WRONG_CHOICE", `'${asked.label}' is not among the conditions of this estimate: ${known}`, {
      label: asked.label,
    });
  };
  const alone = (condition: Condition): { readonly model: VehicleModel; readonly output: `range, ${string}` } => {
    const asked = readCondition(condition);
    return { model: vehicleModel([asked], constants), output: outputNames.range(asked.label) };
  };
  return Object.freeze({
    name,
    study: Object.freeze({ draws, seed, failed }),
    mass: Object.freeze({
      base: massOf(lines, "baseMass"),
      pack: spread.packMass,
      curb: spread.curbMass,
      runningOrder: spread.massInRunningOrder,
      loaded: spread.loadedMass,
    }),
    pack,
    usableEnergy: spread.usableEnergy,
    conditions: Object.freeze(estimates),
    evidence: lines,
    warnings: Object.freeze([
      ...new Set([
        ...read.warnings,
        ...estimates.flatMap((each) => each.likely.warnings ?? []),
        ...(failed === 0 ? [] : [`${failed} of ${draws} draws gave no result and are left out of the spreads`]),
      ]),
    ]),
    on: (condition: Condition) => estimates[given(condition)] as ConditionEstimate,
    chanceOf: (target: RangeTarget) => {
      readOptions("chanceOf", target, { range: { unit: "km", above: 0 } }, ["on"]);
      const { label } = conditions[given(target.on)] as ConditionRead;
      return chanceOfAtLeast(outputNames.range(label), target.range);
    },
    packFor: (target: PackTarget) => {
      const others = ["on", "between?", "curbMassAtMost?", "draws?"];
      readOptions("packFor", target, { range: { unit: "km", above: 0 } }, others);
      const { curbMassAtMost: limit } = target;
      if (limit !== undefined) readOptions("curbMassAtMost", limit, { mass: { unit: "kg", above: 0 } }, ["because"]);
      return solveFor({
        ...alone(target.on),
        evidence,
        unknown: "packEnergy",
        between: target.between ?? [quantity(10, "kWh"), quantity(300, "kWh")],
        target: target.range,
        limits: limit === undefined ? [] : [{ output: "curbMass", atMost: limit.mass, because: limit.because }],
        seed,
        draws: target.draws,
      });
    },
    rank: (condition: Condition) => rankUnknowns({ ...alone(condition), evidence }),
    working: (condition: Condition) => {
      const working: Working = [...baseWorking()];
      const likelyInputs = Object.fromEntries(lines.map(({ input, likely: value }) => [input, value]));
      alone(condition).model.evaluate(likelyInputs as { readonly [Input in keyof VehicleInputs]: number }, working);
      return working;
    },
  });
}

function massOf(lines: readonly EvidenceLine[], name: keyof VehicleInputs) {
  const { low, likely, high } = lines.find(({ input }) => input === name) as EvidenceLine;
  return Object.freeze({ p10: quantity(low, "kg"), p50: quantity(likely, "kg"), p90: quantity(high, "kg") });
}

/** The same vehicle at likely values through the functions that give a ledger; a test holds both roads together. */
function driveLikely(
  condition: ConditionRead,
  { lines, drivetrain }: VehicleRead,
  mass: Quantity<Mass>,
): DriveResult | SteadyResult {
  const likely = (name: keyof VehicleInputs): number =>
    (lines.find(({ input }) => input === name) as EvidenceLine).likely;
  const shared = {
    load: roadLoad({
      mass,
      massBasis: "curb mass and payload",
      dragCoefficient: likely("dragCoefficient"),
      frontalArea: quantity(likely("frontalArea"), "m²"),
      rollingResistanceCoefficient: likely("rollingResistanceCoefficient"),
      airDensity: quantity(likely("airDensity"), "kg/m³"),
      rotatingMassFraction: likely("rotatingMassFraction"),
    }),
    drivetrain,
    accessories: quantity(likely("accessories"), "W"),
    chargingEfficiency: likely("chargingEfficiency"),
  };
  return condition.form === "cycle"
    ? driveCycle({ cycle: condition.cycle, ...shared })
    : steadySpeed({ speed: condition.speed, ...shared });
}
