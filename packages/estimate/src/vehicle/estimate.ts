import type { Pack } from "@tarewatt/pack";
import type { BatteryBoundary, DriveResult, SteadyResult } from "@tarewatt/roadload";
import type { Energy, EnergyPerDistance, Length, Mass, Quantity, Working } from "@tarewatt/units";
import type { Spread } from "../propagate/spread.js";
import type { RankedUnknown } from "../rank/rank-unknowns.js";
import type { Solution } from "../solve/solution.js";
import type { Condition } from "./condition.js";

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
  /** Where energy and consumption at the battery are counted, which follows from what the drivetrain contains. */
  readonly batteryBoundary: BatteryBoundary;
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
  readonly between?: readonly [Quantity<Energy>, Quantity<Energy>] | undefined;
  /** Curb mass that must not be exceeded. */
  readonly curbMassAtMost?: MassLimit | undefined;
  /** How many draws; 2048 when left out. */
  readonly draws?: number | undefined;
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
