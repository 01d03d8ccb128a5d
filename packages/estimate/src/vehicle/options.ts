import type { Cell } from "@tarewatt/pack";
import type { Loss } from "@tarewatt/roadload";
import type { Area, Density, Energy, Mass, Power, Quantity, Voltage, Working } from "@tarewatt/units";
import type { Evidence } from "../evidence/evidence.js";
import type { Condition } from "./condition.js";

/** Base mass of a vehicle to be estimated: what {@link baseMass} gives, or your own. */
export interface VehicleBase {
  /** Curb mass without the pack. */
  readonly mass: Evidence<Quantity<Mass>>;
  /** Mass of the pack that this base was built to carry. */
  readonly referencePackMass: Quantity<Mass>;
  /** What is doubtful about it. */
  readonly warnings?: readonly string[] | undefined;
  /** How it came about. */
  working?(): Working;
}

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
  readonly construction?: string | undefined;
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
  /** Base mass, as `baseMass` gives it, or your own. */
  readonly base: VehicleBase;
  /** The cell. */
  readonly cell: Cell;
  /** The pack. */
  readonly pack: VehiclePack;
  /** Structure added for each kilogram of pack beyond that of the comparators, 0 to 1; none when left out. */
  readonly secondaryMass?: Evidence<number> | undefined;
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
  readonly rotatingMassFraction?: Evidence<number> | undefined;
  /** The drivetrain. */
  readonly drivetrain: VehicleDrivetrain;
  /** Power of lights, controls, pumps and, if it is to count, climate. */
  readonly accessories: Evidence<Quantity<Power>>;
  /** Battery energy per wall energy: charger and charging of the battery. */
  readonly chargingEfficiency: Evidence<number>;
  /** The ways of driving to be estimated: cycles, and steady speeds. */
  readonly conditions: readonly Condition[];
  /** How many draws, 100 to 1,000,000; 8192 when left out. */
  readonly draws?: number | undefined;
  /** Whole number that chooses the draws; 1 when left out. */
  readonly seed?: number | undefined;
}
