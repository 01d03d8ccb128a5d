import { type Energy, InputError, type Power, type Quantity, quantity, readOptions, type Step } from "@tarewatt/units";
import type { Cycle } from "../cycle/cycle.js";
import type { Drivetrain } from "../drivetrain/drivetrain.js";
import { driveCycle } from "../energy/drive-cycle.js";
import type { DriveResult } from "../energy/drive-result.js";
import { rangeOn } from "../energy/range.js";
import type { Fraction } from "../fraction.js";
import type { RoadLoad } from "../resistance/road-load.js";
import type { DrivenCycle } from "./driven-cycles.js";
import type { ProcedureResult } from "./procedure-result.js";

/** A vehicle as a procedure is simulated with it. */
export interface ProcedureVehicle {
  /** Resistance, at the test mass of the procedure: see {@link wltpTestMass} and {@link equivalentTestWeight}. */
  readonly load: RoadLoad;
  /** What stands between wheels and battery. */
  readonly drivetrain: Drivetrain;
  /** Power of the accessories during the test, drawn all the time. */
  readonly accessories: Quantity<Power>;
  /** Energy that the battery gives from full to the end of the test, at its terminals. */
  readonly usableEnergy: Quantity<Energy>;
  /** Battery energy per wall energy; without it nothing is said at the wall. */
  readonly chargingEfficiency?: Fraction | undefined;
  /** What the first cycle takes more than the later ones, at the battery: cold fluids and tyres. None when left out. */
  readonly coldStart?: Quantity<Energy> | undefined;
}

/** A simulated vehicle ready to be driven. @internal */
export interface Simulated {
  /** Energy of the recharge, when the efficiency of charging is known. */
  readonly rechargeEnergy: Quantity<Energy> | undefined;
  /** One cycle `times` times; the first one is cold, unless it is said not to be. */
  readonly drive: (cycle: Cycle, times: number, cold?: boolean) => readonly DrivenCycle[];
  /** What drivetrain, load and cycles warn of. */
  readonly warnings: () => readonly string[];
  /** How the cycles came about. */
  readonly steps: () => Step[];
}

/** Reads a vehicle and makes it ready. @internal */
export function simulated(where: string, vehicle: ProcedureVehicle): Simulated {
  const {
    usableEnergy,
    chargingEfficiency,
    coldStart = 0,
  } = readOptions(
    where,
    vehicle,
    {
      usableEnergy: { unit: "kWh", above: 0 },
      chargingEfficiency: { unit: "1", above: 0, atMost: 1, optional: true },
      coldStart: { unit: "kWh", atLeast: 0, optional: true },
    },
    ["load", "drivetrain", "accessories"],
  );
  const { load, drivetrain, accessories } = vehicle;
  const runs: DriveResult[] = [];
  const warnings = new Set<string>();
  const drive: Simulated["drive"] = (cycle, times, cold = true) => {
    const result = driveCycle({ cycle, load, drivetrain, accessories });
    runs.push(result);
    // It refuses a consumption at the wall, and warns of one at the cells.
    const { warnings: ofRange } = rangeOn({ usableEnergy: vehicle.usableEnergy, result });
    for (const each of [...result.warnings, ...ofRange]) warnings.add(each);
    const distance = result.distance;
    const energy = result.energy.atBattery.in("kWh");
    return Array.from({ length: times }, (_, i) => ({
      energy: quantity(energy + (cold && i === 0 ? coldStart : 0), "kWh"),
      distance,
    }));
  };
  return {
    rechargeEnergy: chargingEfficiency === undefined ? undefined : quantity(usableEnergy / chargingEfficiency, "kWh"),
    drive,
    warnings: () => [...warnings],
    steps: () => runs.flatMap((run) => run.working()),
  };
}

/** A result of simulated cycles, which says so. @internal */
export function asSimulated(result: ProcedureResult, { warnings, steps }: Simulated): ProcedureResult {
  const doubts = warnings();
  return Object.freeze({
    ...result,
    procedure: `${result.procedure}, simulated`,
    warnings: Object.freeze([...doubts, ...result.warnings]),
    working: () => [...steps(), ...result.working()],
  });
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
