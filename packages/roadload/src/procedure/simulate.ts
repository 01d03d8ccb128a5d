import {
  type Energy,
  InputError,
  type Mass,
  type Power,
  type Quantity,
  quantity,
  readOptions,
  type Step,
} from "@tarewatt/units";
import type { Cycle } from "../cycle/cycle.js";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import type { BatteryState } from "../energy/battery.js";
import { driveCycle } from "../energy/drive-cycle.js";
import type { DriveResult, Following } from "../energy/drive-result.js";
import { rangeOn } from "../energy/range.js";
import type { Fraction } from "../fraction.js";
import { assertRoadLoad } from "../resistance/assert-road-load.js";
import type { RoadLoad } from "../resistance/road-load.js";
import { type BatteryTest, batteryTest } from "./battery-test.js";
import { assertFollows } from "./break-off.js";
import type { DrivenCycle } from "./driven-cycles.js";
import {
  conditionsOf,
  doubtsOfConditions,
  type ProcedureConditions,
  references,
  type SimulatedProcedure,
} from "./reference-conditions.js";

/** A vehicle as a procedure is simulated with it. */
export interface ProcedureVehicle {
  /** Resistance, at the test mass of the procedure: see {@link wltpTestMass} and {@link equivalentTestWeight}. */
  readonly load: RoadLoad;
  /** What stands between wheels and battery. */
  readonly drivetrain: Drivetrain;
  /** Power of the accessories during the test, drawn all the time. */
  readonly accessories: Quantity<Power>;
  /** Energy that the battery gives from full to the end of the test, at its terminals. Give it, or a battery. */
  readonly usableEnergy?: Quantity<Energy> | undefined;
  /**
   * The battery and how full it is at the start, in place of a usable energy: the test is driven in its order, constant speeds
   * included, until the battery is at its floor or too weak. What it refuses when it is full, and where it ends the test, follow.
   */
  readonly battery?: BatteryState | undefined;
  /** State of charge at which the vehicle is called empty; 0 when left out. Only with a battery. */
  readonly floor?: Fraction | undefined;
  /** Battery energy, at the terminals, per wall energy; without it nothing is said at the wall. */
  readonly chargingEfficiency?: Fraction | undefined;
  /** What the first cycle takes more than the later ones, at the battery: cold fluids and tyres. None when left out. */
  readonly coldStart?: Quantity<Energy> | undefined;
  /** Curb mass, without driver: then the mass of the load is held against the test mass of the procedure. */
  readonly curbMass?: Quantity<Mass> | undefined;
}

/** A simulated vehicle ready to be driven. @internal */
export interface Simulated {
  /** Undefined with a battery. */
  readonly usableEnergy: Quantity<Energy> | undefined;
  /** The battery, ready to be emptied, and the state of charge at which it is empty; undefined with a usable energy. */
  readonly byBattery: { readonly state: BatteryState; readonly floor: number; readonly test: BatteryTest } | undefined;
  /** Energy of the recharge after a usable energy, when the efficiency of charging is known. */
  readonly rechargeOf: (usableEnergy: Quantity<Energy>) => Quantity<Energy> | undefined;
  /** One cycle `times` times; the first one is cold, unless it is said not to be. */
  readonly drive: (cycle: Cycle, times: number, cold?: boolean) => readonly DrivenCycle[];
  /** What drivetrain, load and cycles warn of. */
  readonly warnings: () => readonly string[];
  /** What of the vehicle does not fit the procedure. */
  readonly misfits: readonly string[];
  /** What it is driven with. */
  readonly conditions: ProcedureConditions;
  /** How it followed the cycle that it followed worst; undefined when nothing limits its power. */
  readonly following: () => Following | undefined;
  /** How the cycles came about. */
  readonly steps: () => Step[];
}

/** Reads a vehicle and makes it ready. @internal */
export function simulated(where: string, vehicle: ProcedureVehicle, procedure: SimulatedProcedure): Simulated {
  const {
    accessories: power,
    curbMass,
    usableEnergy,
    chargingEfficiency,
    coldStart = 0,
    floor,
  } = readOptions(
    where,
    vehicle,
    {
      usableEnergy: { unit: "kWh", above: 0, optional: true },
      floor: { unit: "1", atLeast: 0, atMost: 1, optional: true },
      accessories: { unit: "W", atLeast: 0 },
      chargingEfficiency: { unit: "1", above: 0, atMost: 1, optional: true },
      coldStart: { unit: "kWh", atLeast: 0, optional: true },
      curbMass: { unit: "kg", above: 0, atMost: 6000, optional: true },
    },
    ["load", "drivetrain", "battery?"],
  );
  assertOneEnergy(where, usableEnergy, vehicle.battery, floor);
  const { load, drivetrain, accessories, battery } = vehicle;
  assertRoadLoad(load);
  const misfits = doubtsOfConditions(references[procedure], load, power, curbMass);
  const runs: DriveResult[] = [];
  const warnings = new Set<string>();
  const note = (run: DriveResult): void => {
    runs.push(run);
    for (const each of run.warnings) warnings.add(each);
  };
  const drive: Simulated["drive"] = (cycle, times, cold = true) => {
    const options = { cycle, load, drivetrain, accessories };
    const result = driveCycle(options);
    assertFollows(options, result);
    note(result);
    // It refuses a consumption at the wall, and warns of one at the cells.
    const { warnings: ofRange } = rangeOn({ usableEnergy: vehicle.usableEnergy as Quantity<Energy>, result });
    for (const each of ofRange) warnings.add(each);
    const distance = result.distance;
    const energy = result.energy.atBattery.in("kWh");
    return Array.from({ length: times }, (_, i) => ({
      energy: quantity(energy + (cold && i === 0 ? coldStart : 0), "kWh"),
      distance,
    }));
  };
  return {
    usableEnergy: vehicle.usableEnergy,
    byBattery:
      battery === undefined
        ? undefined
        : {
            state: battery,
            floor: floor ?? 0,
            test: batteryTest(where, { load, drivetrain, accessories, battery, floor: floor ?? 0, coldStart, note }),
          },
    rechargeOf: (usable) =>
      chargingEfficiency === undefined ? undefined : quantity(usable.in("kWh") / chargingEfficiency, "kWh"),
    drive,
    warnings: () => [...warnings],
    misfits,
    conditions: conditionsOf(load, accessories),
    following: () => worst(runs.flatMap(({ following }) => following ?? [])),
    steps: () => runs.flatMap((run) => run.working()),
  };
}

/** What empties the vehicle: a usable energy or a battery. */
function assertOneEnergy(where: string, usableEnergy: unknown, battery: unknown, floor: unknown): void {
  if (usableEnergy === undefined && battery === undefined) {
    const message = `${where} must be given a usableEnergy or a battery: got neither`;
    throw new InputError("MISSING_OPTION", message, { option: "usableEnergy" });
  }
  if (usableEnergy !== undefined && battery !== undefined) {
    throw new InputError("INCONSISTENT", `${where} must be given a usableEnergy or a battery: got both`, {});
  }
  if (battery === undefined && floor !== undefined) {
    const message = "floor is a state of charge of a battery: give a battery, or leave it out";
    throw new InputError("INCONSISTENT", message, {});
  }
}

/** Refuses a battery that cannot drive the cycles of a procedure. @internal */
export function assertLastsFor(where: string, needed: readonly DrivenCycle[], usableEnergy: Quantity<Energy>): void {
  const energy = needed.reduce((sum, cycle) => sum + cycle.energy.in("kWh"), 0);
  if (energy <= usableEnergy.in("kWh")) return;
  throw new InputError(
    "NOT_VALID_HERE",
    `the usable energy of ${usableEnergy} does not last for the cycles of ${where}, which take ${Number(energy.toPrecision(4))} kWh`,
    { energy },
  );
}

function worst(all: readonly Following[]): Following | undefined {
  const [first, ...others] = all;
  if (first === undefined) return undefined;
  return others.reduce((a, b) => (b.behind.in("s") > a.behind.in("s") ? b : a), first);
}
