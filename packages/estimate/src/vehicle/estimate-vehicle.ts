import { type Cell, composePack, type Pack } from "@tarewatt/pack";
import {
  type DriveResult,
  defaultRotatingMassFraction,
  driveCycle,
  efficiencyDrivetrain,
  type Loss,
  roadLoad,
  type SteadyResult,
  steadySpeed,
} from "@tarewatt/roadload";
import {
  type Area,
  type Density,
  type Energy,
  type EnergyPerDistance,
  InputError,
  type Length,
  type Mass,
  type Power,
  type Quantity,
  quantity,
  readOptions,
  type Voltage,
  type Working,
} from "@tarewatt/units";
import { type Evidence, readEvidence } from "../evidence/evidence.js";
import type { BaseMass } from "../mass/base-mass.js";
import type { EvidenceFor } from "../model/model.js";
import { propagate } from "../propagate/propagate.js";
import type { Spread } from "../propagate/spread.js";
import { type RankedUnknown, rankUnknowns } from "../rank/rank-unknowns.js";
import { type Solution, solveFor } from "../solve/solve-for.js";
import { type Condition, type ConditionRead, readCondition } from "./condition.js";
import { type VehicleInputs, vehicleInputs } from "./inputs.js";
import { outputNames, type VehicleModel, vehicleModel } from "./vehicle-model.js";

/** The pack of a vehicle to be estimated. */
export interface VehiclePack {
  /** Total energy, not the usable share of it. */
  readonly energy: Evidence<Quantity<Energy>>;
  /** Nominal voltage. */
  readonly nominalVoltage: Quantity<Voltage>;
  /** Mass of the cells over mass of the pack. */
  readonly cellMassFraction: Evidence<number>;
  /** Usable energy over total energy. */
  readonly usableFraction: Evidence<number>;
  /** How it is built, in words. */
  readonly construction?: string;
}

/** The drivetrain of a vehicle to be estimated. */
export interface VehicleDrivetrain {
  /** Wheel energy per battery energy while driving, as a mean. */
  readonly efficiency: Evidence<number>;
  /** Part of the braking energy at the wheels that the motors take; it passes the same efficiency back. */
  readonly recoveredShare: Evidence<number>;
  /** The losses that the efficiency holds. */
  readonly contains: readonly Loss[];
}

/** What {@link estimateVehicle} needs. Every figure may be a value or low/likely/high, with grade and source. */
export interface VehicleOptions {
  /** How the vehicle is called in the report. */
  readonly name: string;
  /** Base mass, as `baseMass` gives it. */
  readonly base: Pick<BaseMass, "mass" | "referencePackMass">;
  /** The cell. */
  readonly cell: Cell;
  /** The pack. */
  readonly pack: VehiclePack;
  /** Structure added for each kilogram of pack beyond that of the comparators, 0 to 1; none when left out. */
  readonly secondaryMass?: Evidence<number>;
  /** Driver, passengers and luggage. */
  readonly payload: Evidence<Quantity<Mass>>;
  /** Drag coefficient. */
  readonly dragCoefficient: Evidence<number>;
  /** Frontal area. */
  readonly frontalArea: Evidence<Quantity<Area>>;
  /** Rolling resistance per load. */
  readonly rollingResistanceCoefficient: Evidence<number>;
  /** Density of the air, from `airDensity` or `referenceAir`. */
  readonly airDensity: Evidence<Quantity<Density>>;
  /** Rotating parts as a share of the mass, 0 to 0.5; 0.03 of Regulation (EU) 2017/1151 when left out. */
  readonly rotatingMassFraction?: Evidence<number>;
  /** The drivetrain. */
  readonly drivetrain: VehicleDrivetrain;
  /** Power of lights, controls, pumps and, if it is to count, climate. */
  readonly accessories: Evidence<Quantity<Power>>;
  /** Battery energy per wall energy: charger and charging of the battery. */
  readonly chargingEfficiency: Evidence<number>;
  /** The ways of driving to be estimated: cycles, and steady speeds. */
  readonly conditions: readonly Condition[];
  /** How many draws, 100 to 1,000,000; 10,000 when left out. */
  readonly draws?: number;
  /** Whole number that chooses the draws; 1 when left out. */
  readonly seed?: number;
}

/** Masses of a vehicle, each by its basis. */
export interface VehicleMasses {
  /** Curb mass without the pack. */
  readonly base: Spread<Quantity<Mass>>;
  /** The whole pack. */
  readonly pack: Spread<Quantity<Mass>>;
  /** Ready to drive, without driver. */
  readonly curb: Spread<Quantity<Mass>>;
  /** Curb mass and a driver of 75 kg, as the EU counts. */
  readonly runningOrder: Spread<Quantity<Mass>>;
  /** Curb mass and payload: what consumption and range are for. */
  readonly loaded: Spread<Quantity<Mass>>;
}

/** Consumption and range in one way of driving. */
export interface ConditionEstimate {
  /** Short name: the cycle's, or the speed. */
  readonly label: string;
  /** What was driven, and that no label rule was applied. */
  readonly procedure: string;
  /** Energy per distance, by boundary. */
  readonly consumption: {
    /** At the battery, direct current. */
    readonly atBattery: Spread<Quantity<EnergyPerDistance>>;
    /** At the wall, charging loss included. */
    readonly atWall: Spread<Quantity<EnergyPerDistance>>;
  };
  /** From full to empty: usable energy per consumption at the battery. */
  readonly range: Spread<Quantity<Length>>;
  /** The same at likely values, with its ledger. */
  readonly likely: DriveResult | SteadyResult;
}

/** One line of what an estimate rests on. */
export interface EvidenceLine {
  /** Name of the input. */
  readonly input: string;
  /** What it is, in words. */
  readonly meaning: string;
  /** Unit of the figures; `"1"` for a ratio. */
  readonly unit: string;
  /** 10th percentile. */
  readonly low: number;
  /** Median. */
  readonly likely: number;
  /** 90th percentile. */
  readonly high: number;
  /** Grade. */
  readonly grade: string;
  /** Source as given; empty when none was. */
  readonly source: string;
}

/** A range to be reached in a way of driving. */
export interface RangeTarget {
  /** The range. */
  readonly range: Quantity<Length>;
  /** The way of driving. */
  readonly on: Condition;
}

/** A mass that must not be exceeded. */
export interface MassLimit {
  /** The mass. */
  readonly mass: Quantity<Mass>;
  /** Why, in words that can be printed. */
  readonly because: string;
}

/** A range to be reached, and how large a pack may be. */
export interface PackTarget extends RangeTarget {
  /** Smallest and largest total pack energy to consider; 10 kWh to 300 kWh when left out. */
  readonly between?: readonly [Quantity<Energy>, Quantity<Energy>];
  /** Curb mass that must not be exceeded. */
  readonly curbMassAtMost?: MassLimit;
  /** How many draws; 2,000 when left out. */
  readonly draws?: number;
}

/** How the spreads were made. */
export interface Study {
  /** How many draws were made. */
  readonly draws: number;
  /** The seed that chose them. */
  readonly seed: number;
  /** How many gave no result and are left out. */
  readonly failed: number;
}

/** An estimate of a vehicle. */
export interface VehicleEstimate {
  /** Its name. */
  readonly name: string;
  /** How many draws were made, by which seed. */
  readonly study: Study;
  /** Masses with their spread. */
  readonly mass: VehicleMasses;
  /** The pack at likely values, in whole cells. */
  readonly pack: Pack;
  /** Usable energy of the pack. */
  readonly usableEnergy: Spread<Quantity<Energy>>;
  /** Every way of driving, in the order given. */
  readonly conditions: readonly ConditionEstimate[];
  /** What it rests on. */
  readonly evidence: readonly EvidenceLine[];
  /** What is doubtful; empty when nothing is. */
  readonly warnings: readonly string[];
  /**
   * The estimate for one of the conditions.
   * @param condition - a cycle or speed among those given
   * @throws InputError `WRONG_CHOICE` when it was not among them
   */
  on(condition: Condition): ConditionEstimate;
  /**
   * The chance that the pack, as it is known, reaches a range.
   * @param target - range and way of driving, among those given
   */
  chanceOf(target: RangeTarget): number;
  /**
   * The total pack energy that a range takes, with the mass of the pack fed back, and the chance that a given one is enough.
   * @param target - range, any way of driving, and limits
   */
  packFor(target: PackTarget): Solution<Quantity<Energy>, Quantity<Length>>;
  /**
   * Which unknown moves the range most.
   * @param condition - any way of driving
   */
  rank(condition: Condition): readonly RankedUnknown<Quantity<Length>>[];
  /**
   * The steps from base mass to range, at likely values.
   * @param condition - any way of driving
   */
  working(condition: Condition): Working;
}

/**
 * A first whole estimate: masses, pack, consumption and range of a vehicle, with their spread.
 *
 * Base mass and pack give the mass; mass, drag and tyres the road load; the drivetrain, accessories and charging the energies;
 * the usable energy the range. All unknowns are drawn together. Ranges are from full to empty on cycles as tabled; they are no
 * label figures.
 *
 * @param options - what is known
 * @returns the estimate; ask it for chances, the pack that a range takes, the unknowns that matter and its working
 * @throws InputError for every input that makes no sense, by name
 * @example
 * const van = estimateVehicle({ ...known, conditions: [wltc3b, q("110 km/h")] });
 * van.on(wltc3b).range.p50.in("km");
 * van.packFor({ range: q("500 km"), on: wltc3b }).needed.p50;
 */
export function estimateVehicle(options: VehicleOptions): VehicleEstimate {
  const { evidence, conditions, constants, pack } = readVehicle(options);
  const model = vehicleModel(conditions, constants);
  const { spread, likely, draws, seed, failed, chanceOfAtLeast } = propagate({
    model,
    evidence,
    ...(options.draws === undefined ? {} : { draws: options.draws }),
    ...(options.seed === undefined ? {} : { seed: options.seed }),
  });
  const lines = evidenceLines(evidence);
  const driven = conditions.map((condition) =>
    driveLikely(condition, lines, likely.loadedMass as Quantity<Mass>, options),
  );
  const of = <Q>(name: string): Spread<Q> => spread[name] as Spread<Q>;
  const estimates = conditions.map(
    ({ label, procedure }, i): ConditionEstimate => ({
      label,
      procedure,
      consumption: { atBattery: of(outputNames.atBattery(label)), atWall: of(outputNames.atWall(label)) },
      range: of(outputNames.range(label)),
      likely: driven[i] as DriveResult | SteadyResult,
    }),
  );
  const base = lines.find(({ input }) => input === "baseMass") as EvidenceLine;
  const given = (condition: Condition): number => {
    const { label } = readCondition(condition);
    const index = conditions.findIndex((each) => each.label === label);
    if (index >= 0) return index;
    const known = conditions.map((each) => each.label).join(", ");
    throw new InputError("WRONG_CHOICE", `'${label}' is not among the conditions of this estimate: ${known}`, {
      label,
    });
  };
  const alone = (condition: Condition): { readonly model: VehicleModel; readonly output: string } => {
    const read = readCondition(condition);
    return { model: vehicleModel([read], constants), output: outputNames.range(read.label) };
  };
  return Object.freeze({
    name: options.name,
    study: { draws, seed, failed },
    mass: {
      base: { p10: quantity(base.low, "kg"), p50: quantity(base.likely, "kg"), p90: quantity(base.high, "kg") },
      pack: of<Quantity<Mass>>("packMass"),
      curb: of<Quantity<Mass>>("curbMass"),
      runningOrder: of<Quantity<Mass>>("massInRunningOrder"),
      loaded: of<Quantity<Mass>>("loadedMass"),
    },
    pack,
    usableEnergy: of<Quantity<Energy>>("usableEnergy"),
    conditions: estimates,
    evidence: lines,
    warnings: [
      ...new Set([...pack.warnings, ...driven.flatMap(({ warnings }) => warnings), ...failedDraws(failed, draws)]),
    ],
    on: (condition: Condition) => estimates[given(condition)] as ConditionEstimate,
    chanceOf: (target: RangeTarget) => {
      readOptions("chanceOf", target, { range: { unit: "km", above: 0 } }, ["on"]);
      const { label } = conditions[given(target.on)] as ConditionRead;
      return chanceOfAtLeast(outputNames.range(label), target.range as never);
    },
    packFor: (target: PackTarget) => {
      readOptions("packFor", target, { range: { unit: "km", above: 0 } }, [
        "on",
        "between?",
        "curbMassAtMost?",
        "draws?",
      ]);
      const { model: one, output } = alone(target.on);
      const { curbMassAtMost } = target;
      return solveFor({
        model: one,
        evidence,
        unknown: "packEnergy",
        between: target.between ?? [quantity(10, "kWh"), quantity(300, "kWh")],
        output,
        target: target.range as never,
        limits:
          curbMassAtMost === undefined
            ? []
            : [{ output: "curbMass", atMost: curbMassAtMost.mass as never, because: curbMassAtMost.because }],
        seed,
        ...(target.draws === undefined ? {} : { draws: target.draws }),
      }) as unknown as Solution<Quantity<Energy>, Quantity<Length>>;
    },
    rank: (condition: Condition) => {
      const { model: one, output } = alone(condition);
      return rankUnknowns({ model: one, evidence, output }) as unknown as readonly RankedUnknown<Quantity<Length>>[];
    },
    working: (condition: Condition) => {
      const working: Working = [];
      const { model: one } = alone(condition);
      one.evaluate(Object.fromEntries(lines.map(({ input, likely }) => [input, likely])) as never, working);
      return working;
    },
  });
}

interface VehicleRead {
  readonly evidence: EvidenceFor<VehicleInputs>;
  readonly conditions: readonly ConditionRead[];
  readonly constants: { readonly cellSpecificEnergy: number; readonly referencePackMass: number };
  readonly pack: Pack;
}

function readVehicle(options: VehicleOptions): VehicleRead {
  readOptions("estimateVehicle", options, {}, [
    ...["name", "base", "cell", "pack", "secondaryMass?", "payload", "dragCoefficient", "frontalArea"],
    ...["rollingResistanceCoefficient", "airDensity", "rotatingMassFraction?", "drivetrain", "accessories"],
    ...["chargingEfficiency", "conditions", "draws?", "seed?"],
  ]);
  readOptions("the pack of estimateVehicle", options.pack, {}, [
    ...["energy", "nominalVoltage", "cellMassFraction", "usableFraction", "construction?"],
  ]);
  readOptions("the drivetrain of estimateVehicle", options.drivetrain, {}, [
    "efficiency",
    "recoveredShare",
    "contains",
  ]);
  if (!Array.isArray(options.conditions) || options.conditions.length === 0) {
    throw new InputError("EMPTY", "estimateVehicle needs at least one condition: a cycle or a speed", {});
  }
  const conditions = options.conditions.map(readCondition);
  const repeated = conditions.find(({ label }, i) => conditions.findIndex((each) => each.label === label) < i);
  if (repeated !== undefined) {
    throw new InputError("INCONSISTENT", `the condition '${repeated.label}' is given twice`, { label: repeated.label });
  }
  const { base, cell, pack } = options;
  const evidence: EvidenceFor<VehicleInputs> = {
    baseMass: base.mass,
    packEnergy: pack.energy,
    usableFraction: pack.usableFraction,
    cellMassFraction: pack.cellMassFraction,
    secondaryMass: options.secondaryMass ?? { value: 0, grade: "assumed", source: "no secondary mass counted" },
    payload: options.payload,
    dragCoefficient: options.dragCoefficient,
    frontalArea: options.frontalArea,
    rollingResistanceCoefficient: options.rollingResistanceCoefficient,
    airDensity: options.airDensity,
    rotatingMassFraction: options.rotatingMassFraction ?? {
      value: defaultRotatingMassFraction.value,
      grade: "assumed",
      source: `${defaultRotatingMassFraction.source.document}, ${defaultRotatingMassFraction.source.section}`,
    },
    drivetrainEfficiency: options.drivetrain.efficiency,
    recoveredShare: options.drivetrain.recoveredShare,
    accessories: options.accessories,
    chargingEfficiency: options.chargingEfficiency,
  };
  const likely = (name: keyof VehicleInputs): number => readEvidence(name, evidence[name], vehicleInputs[name]).likely;
  return {
    evidence,
    conditions,
    pack: composePack({
      cell,
      energy: quantity(likely("packEnergy"), "kWh"),
      nominalVoltage: pack.nominalVoltage,
      cellMassFraction: likely("cellMassFraction"),
      usableFraction: likely("usableFraction"),
      ...(pack.construction === undefined ? {} : { construction: pack.construction }),
    }),
    constants: {
      cellSpecificEnergy: cell.specificEnergy.in("Wh/kg"),
      referencePackMass: base.referencePackMass.in("kg"),
    },
  };
}

function evidenceLines(evidence: EvidenceFor<VehicleInputs>): readonly EvidenceLine[] {
  return (Object.keys(vehicleInputs) as (keyof VehicleInputs)[]).map((input) => {
    const { unit, meaning } = vehicleInputs[input];
    return { input, meaning, unit, ...readEvidence(input, evidence[input], vehicleInputs[input]) };
  });
}

/** The same vehicle at likely values through the functions that give a ledger; a test holds both roads together. */
function driveLikely(
  condition: ConditionRead,
  lines: readonly EvidenceLine[],
  mass: Quantity<Mass>,
  { drivetrain: { contains } }: VehicleOptions,
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
    drivetrain: efficiencyDrivetrain({
      efficiency: likely("drivetrainEfficiency"),
      regeneration: { share: likely("recoveredShare") },
      contains,
    }),
    accessories: quantity(likely("accessories"), "W"),
    chargingEfficiency: likely("chargingEfficiency"),
  };
  return condition.form === "cycle"
    ? driveCycle({ cycle: condition.cycle, ...shared })
    : steadySpeed({ speed: condition.speed, ...shared });
}

function failedDraws(failed: number, draws: number): string[] {
  return failed === 0 ? [] : [`${failed} of ${draws} draws gave no result and are left out of the spreads`];
}
